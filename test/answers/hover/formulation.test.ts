import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { recipe } from '../../recipe.ts';

test('amounts for the target, how near they come, and why not nearer', () => {
  checkHover(recipe`
    recipe: 1
    waters: { rain: { alkalinity: 5 mg/L CaCO3 } }
    feeds:
      lime: { formula: Ca(NO3)2·4H2O }
      salt: { formula: KNO3 }
      phos: { formula: KH2PO4 }
      moss: { label: 1 mL/L, analysis: { Fe: 0.1 % }, density: 1.1 kg/L }
    targets: { low: { N: 120..160 mg/L, K: 150..200 mg/L, P: 25..40 mg/L, Fe: 2..3 mg/L, Mg: 20..40 mg/L } }
    batches: { first: { water: rain, volume: 20 L, target: low, sol$0ve: to target } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { water: rain, volume: 20 L, target: low, solve: to target } }
                                                                ▔▔▔↑▔
    Best for the target, written only when you take it:

    - lime: 15.5 g, 776 mg/L
    - salt: 6.93 g, 346 mg/L
    - phos: 2.86 g, 143 mg/L
    - moss: 20 mL, 1 mL/L, all that its label allows

    |  | mg/L | band |  |
    | N | 140 | 120..160 | in band |
    | P | 32.5 | 25..40 | in band |
    | K | 175 | 150..200 | in band |
    | Mg | 0 | 20..40 | 20 short |
    | Fe | 1.1 | 2..3 | 0.9 short |

    Mg: none of these feeds brings Mg.
    Fe: the label of moss allows no more.
    EC 1.33 mS/cm.

    solve

    Asks for the amounts of the feeds in from that best meet the target. They are shown, and written only when you take them.

    solve: to target"
  `);
});

test('without a target it says what it takes', () => {
  checkHover(recipe`
    recipe: 1
    feeds: { salt: { formula: KNO3 } }
    batches: { first: { volume: 20 L, sol$0ve: to target } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { volume: 20 L, solve: to target } }
                                      ▔▔▔↑▔
    Amounts for the target: Not known yet; missing: a target (batches › first › solve), the water (batches › first › solve).

    solve

    Asks for the amounts of the feeds in from that best meet the target. They are shown, and written only when you take them.

    solve: to target"
  `);
});
