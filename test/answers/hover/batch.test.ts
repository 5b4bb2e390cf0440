import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { recipe } from '../../recipe.ts';

test('a batch: loads, doses in order, elements against the target, what it serves', () => {
  checkHover(recipe`
    recipe: 1
    waters: { rain: { ions: { Ca: 4 mg/L } } }
    feeds:
      moss: { label: 2 mL/L, analysis: { N: 5 %, K2O: 6 % }, density: 1.15 kg/L }
      salt: { formula: KNO3 }
    tools: { can: { holds: 12 L } }
    containers: { tub: { inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } } } }
    targets: { low: { N: 120..200 mg/L, K: 50..90 mg/L, Fe: 1..2 mg/L } }
    stages: { start: { lasts: 20 d, target: low, batch: first } }
    plantings: { cress: { container: tub, fill: 5 cm, stages: [start] } }
    batches:
      fir$0st:
        water: rain
        volume: 20 L
        mix-in: can
        feed: { moss: label, salt: 2 g }
  `).toMatchInlineSnapshot(`
    "  first:
      ▔▔▔↑▔
    first: 20 L of rain, 2 loads of 10 L in can

    1. moss: 40 mL, 20 mL a load
    2. salt: 2 g, 1 g a load

    pH and EC: Not known yet; missing: the alkalinity (or air: open, where the pH was measured after standing in air) (waters › rain › alkalinity).

    |  | mg/L | low |  |
    | N | 129 | 120..200 | in band |
    | K | 153 | 50..90 | above |
    | Fe | ? | 1..2 | not stated |

    Besides Ca 4 mg/L.

    - cress, first fill: 6 L

    The fills take 6 L; 14 L left.

    The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600"
  `);
});

test('a batch with an acid comes with its cautions', () => {
  checkHover(recipe`
    recipe: 1
    adjusters: { down: { acid: { nitric: 40 % }, density: 1.25 kg/L } }
    waters: { rain: {} }
    batches:
      $0first:
        water: rain
        volume: 20 L
        adjust: { with: down, to: 5.8 }
  `).toMatchInlineSnapshot(`
    "  first:
      ↑▔▔▔▔
    first: 20 L of rain

    pH and EC: Not known yet; missing: the alkalinity (or air: open, where the pH was measured after standing in air) (waters › rain › alkalinity).

    Adjusted with down; how much follows from the pH.

    ⚠ Burns skin and eyes. Toxic if inhaled. Causes severe skin burns and eye damage. Corrosive to the respiratory tract. May be corrosive to metals. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides."
  `);
});

test('a volume as needed shows the fills it adds up', () => {
  checkHover(recipe`
    recipe: 1
    containers: { tub: { inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } } } }
    stages: { start: { lasts: 20 d, batch: first } }
    plantings:
      cress: { container: tub, count: 2, fill: 5 cm, stages: [start] }
      mint: { container: tub, fill: 10 cm, stages: [start] }
    batches:
      first: { volume: as nee$0ded }
  `).toMatchInlineSnapshot(`
    "  first: { volume: as needed }
                       ▔▔▔▔▔▔↑▔▔
    first: 25.2 L

    volume = (12 L + 12 L) × (1 + 5 %) = 25.2 L

    - fills: 12 L, what the containers of the planting take together
    - fills: 12 L, what the containers of the planting take together
    - spare: 5 %, assumed: spare for spills and wet walls

    - cress, first fill: 2 × 6 L = 12 L
    - mint, first fill: 12 L

    The fills take 24 L; 1.2 L left.

    The grow recipe format, version 1 · Common practice in the trade · Volumes of cylinder, box, frustum and prismatoid (elementary geometry)"
  `);
});
