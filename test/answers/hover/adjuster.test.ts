import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { recipe } from '../../recipe.ts';

test('an adjuster: its strength, what it is used for, what readings show of it', () => {
  checkHover(recipe`
    recipe: 1
    waters: { brook: { pH: 7.6, alkalinity: 110 mg/L CaCO3, temperature: 15 °C } }
    adjusters: { do$0wn: { acid: { phosphoric: 12 % }, density: 1.06 kg/L, package: 250 mL, price: 9 EUR } }
    batches:
      first:
        water: brook
        volume: 20 L
        adjust: { with: down, to: 5.8 }
        readings: [{ pH: 7.6 }, { add: { down: 12 mL }, pH: 6.8 }]
      second: { water: brook, volume: 10 L, adjust: { with: down, to: 6 } }
  `).toMatchInlineSnapshot(`
    "adjusters: { down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L, package: 250 mL, price: 9 EUR } }
                 ▔▔↑▔
    down, an adjuster: phosphoric acid 12 %

    Lowers the pH.
    Holds 1.3 mol/L phosphoric acid.
    At pH 5.8 it counts for 1.35 meq in a mL.

    - first: about 38.2 mL to pH 5.8. Learned from one measured step: down acts as 6.54 % phosphoric acid where 12 % is written, give or take 16.6 % of that.
    - second: about 11.1 mL to pH 6.0.

    Over the plan: 61.3 mL, 1 package, 9 EUR.

    ⚠ Causes serious eye irritation. Causes skin irritation. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600"
  `);
});
