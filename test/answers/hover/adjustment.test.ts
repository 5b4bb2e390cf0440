import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { bench } from './bench.ts';

test('an adjustment: amount, first step, each load, range, method, titration', () => {
  checkHover(bench`
    batches:
      first: { water: brook, volume: 20 L, mix-in: can, feed: { salt: 0.4 g/L }, adj$0ust: { with: down, to: 5.8 } }
  `).toMatchInlineSnapshot(`
    "  first: { water: brook, volume: 20 L, mix-in: can, feed: { salt: 0.4 g/L }, adjust: { with: down, to: 5.8 } }
                                                                                 ▔▔▔↑▔▔
    About 24.9 mL of down from pH 7.59, predicted, to 5.8
    First 12 mL, then stir and measure: about pH 6.44. Then by small steps.
    In each of the 2 loads 12.5 mL, first 6 mL.
    From 23.4 mL to 26.4 mL, as the pH at the start is predicted and not measured, and tools round.
    Reckoned by its composition.

    ⚠ Causes serious eye irritation. Causes skin irritation. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    | down in all | pH |
    | 0 mL | 7.59 |
    | 6.23 mL | 6.76 |
    | 12.5 mL | 6.42 |
    | 18.7 mL | 6.13 |
    | 24.9 mL | 5.8 |
    | 31.2 mL | 5.22 |

    amount where the charges balance at the aim, × 20 L: 24.9 mL

    - from: 7.59, the pH at which all charges balance
    - to: 5.8, batches › first › adjust › to
    - volume: 20 L, batches › first › volume
    - share: 12 %, adjusters › down › acid › phosphoric in shelf.grow.yaml
    - density: 1.06 kg/L, adjusters › down › density in shelf.grow.yaml

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Common practice in the trade

    adjust

    How the pH is adjusted after mixing: small steps, stir, measure. Acids and bases burn.

    adjust: { with: down, to: 5.8 }"
  `);
});

test('its adjuster and its aim say the same', () => {
  for (const place of [
    bench`
      batches: { first: { water: brook, volume: 20 L, adjust: { with: do$0wn, to: 5.8 } } }
    `,
    bench`
      batches: { first: { water: brook, volume: 20 L, adjust: { with: down, to: 5.$08 } } }
    `,
  ]) {
    checkHover(place).toMatch(/About [\d.]+ mL of down from pH 7\.6, predicted, to 5\.8/);
  }
});

test('an adjuster known by its effect alone', () => {
  checkHover(bench`
    batches: { first: { water: brook, volume: 20 L, adjust: { with: thumb, t$0o: 6 }, readings: [{ pH: 6.8 }] } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { water: brook, volume: 20 L, adjust: { with: thumb, to: 6 }, readings: [{ pH: 6.8 }] } }
                                                                           ▔↑
    About 8 mL of thumb from pH 6.8, measured, to 6.0
    First 4 mL, then stir and measure: about pH 6.4. Then by small steps.
    From 6.75 mL to 9.25 mL, as the meter may be off a little, and tools round.
    Reckoned by the response that is written for it, which holds for one water and one starting pH only.

    ⚠ Burns skin and eyes. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    amount = (aim − pH) ÷ response × 20 L = 8 mL

    - from: 6.8, batches › first › readings › no. 1 › pH
    - to: 6.0, batches › first › adjust › to
    - volume: 20 L, batches › first › volume

    Common practice in the trade · The grow recipe format, version 1

    to

    The pH to reach; the target’s aim where left out.

    to: 5.8"
  `);
});

test('an acid asked to raise the pH is told apart', () => {
  checkHover(bench`
    batches: { first: { water: brook, volume: 20 L, adjust: { with: down, t$0o: 8.5 } } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { water: brook, volume: 20 L, adjust: { with: down, to: 8.5 } } }
                                                                          ▔↑
    How much of down cannot be told; it takes another adjuster: down, as an acid lowers the pH, and 8.50 is above 7.60.

    ⚠ Causes serious eye irritation. Causes skin irritation. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · The grow recipe format, version 1 · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600

    to

    The pH to reach; the target’s aim where left out.

    to: 5.8"
  `);
});

test('two measured steps show what the acid really does', () => {
  checkHover(bench`
    batches:
      first:
        water: brook
        volume: 20 L
        feed: { salt: 0.4 g/L }
        adj$0ust: { with: down, to: 5.8 }
        readings: [{ pH: 7.4 }, { add: { down: 15 mL }, pH: 6.8 }, { add: { down: 9 mL }, pH: 6.4 }]
  `).toMatchInlineSnapshot(`
    "    adjust: { with: down, to: 5.8 }
        ▔▔▔↑▔▔
    About 23.2 mL of down from pH 6.4, measured, to 5.8
    First 11.5 mL, then stir and measure: about pH 6.13. Then by small steps.
    From 19.1 mL to 27.4 mL, as the meter may be off a little, and tools round.
    Learned from 2 measured steps: down acts as 6.95 % phosphoric acid where 12 % is written, give or take 13.7 % of that.

    ⚠ Causes serious eye irritation. Causes skin irritation. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    | down in all | pH |
    | 0 mL | 6.4 |
    | 5.81 mL | 6.26 |
    | 11.6 mL | 6.12 |
    | 17.4 mL | 5.97 |
    | 23.2 mL | 5.8 |
    | 29.1 mL | 5.58 |

    amount where the charges balance at the aim, × 20 L: 23.2 mL

    - from: 6.4, batches › first › readings › no. 3 › pH
    - to: 5.8, batches › first › adjust › to
    - volume: 20 L, batches › first › volume
    - share: 12 %, adjusters › down › acid › phosphoric in shelf.grow.yaml
    - density: 1.06 kg/L, adjusters › down › density in shelf.grow.yaml

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Common practice in the trade · The grow recipe format, version 1

    adjust

    How the pH is adjusted after mixing: small steps, stir, measure. Acids and bases burn.

    adjust: { with: down, to: 5.8 }"
  `);
});

test('a powder is dosed in grams, also for a reader of US units', () => {
  checkHover(bench`
    show: us
    batches: { first: { water: brook, volume: 5 gal, adj$0ust: { with: up, to: 7.9 } } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { water: brook, volume: 5 gal, adjust: { with: up, to: 7.9 } } }
                                                     ▔▔▔↑▔▔
    About 6.25 g of up from pH 7.6, predicted, to 7.9
    First 3.13 g, then stir and measure: about pH 7.8. Then by small steps.
    From 2.48 g to 12.2 g, as the pH at the start is predicted and not measured, and tools round.
    Reckoned by its composition.

    ⚠ Wear gloves and eye protection. Pour the base into water, never water onto the base: it heats up. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    | up in all | pH |
    | 0 g | 7.6 |
    | 1.56 g | 7.72 |
    | 3.13 g | 7.8 |
    | 4.69 g | 7.85 |
    | 6.25 g | 7.9 |
    | 7.82 g | 7.94 |

    amount where the charges balance at the aim, × 5 gal: 6.25 g

    - from: 7.6, the pH at which all charges balance
    - to: 7.9, batches › first › adjust › to
    - volume: 5 gal, batches › first › volume
    - share: 99 %, adjusters › up › base › KHCO3 in shelf.grow.yaml

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · The grow recipe format, version 1 · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Common practice in the trade

    adjust

    How the pH is adjusted after mixing: small steps, stir, measure. Acids and bases burn.

    adjust: { with: down, to: 5.8 }"
  `);
});
