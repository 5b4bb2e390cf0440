import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { bench } from './bench.ts';

test('a reading: what was added, predicted, measured, how far apart', () => {
  checkHover(bench`
    batches:
      first:
        water: brook
        volume: 20 L
        feed: { salt: 0.4 g/L }
        readings: [{ pH: 7.4, EC: 0.7 mS/cm }, { add: { down: 15 mL }, p$0H: 6.8 }]
  `).toMatchInlineSnapshot(`
    "    readings: [{ pH: 7.4, EC: 0.7 mS/cm }, { add: { down: 15 mL }, pH: 6.8 }]
                                                                       ▔↑
    Reading 2 of first

    Added before it: 15 mL of down.

    |  | pH |
    | predicted | 6.26 |
    | measured | 6.8 |
    | difference | 0.54 |

    pH where charges balance again, with what was added: 6.26

    - from: 7.4, batches › first › readings › no. 1 › pH
    - volumes: 15 mL, batches › first › readings › no. 2 › add › down
    - temperature: 15 °C, waters › brook › temperature in shelf.grow.yaml

    ⚠ Causes serious eye irritation. Causes skin irritation. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat

    pH

    The measured pH.

    pH: 6.6"
  `);
});

test('the first reading stands beside the batch as mixed, its EC too', () => {
  checkHover(bench`
    batches:
      first: { water: brook, volume: 20 L, feed: { salt: 0.4 g/L }, readings: [{ pH: 7.4, EC: 0.7 mS/cm$0 }] }
  `).toMatchInlineSnapshot(`
    "  first: { water: brook, volume: 20 L, feed: { salt: 0.4 g/L }, readings: [{ pH: 7.4, EC: 0.7 mS/cm }] }
                                                                                              ▔▔▔▔▔▔▔▔▔↑
    Reading 1 of first

    |  | pH |
    | predicted | 7.59 |
    | measured | 7.4 |
    | difference | -0.19 |

    EC: 0.7 mS/cm measured, 0.817 mS/cm predicted as mixed.

    pH where cations = anions, over all dissolved forms and ion pairs: 7.59

    - pH: 7.6, waters › brook › pH in shelf.grow.yaml
    - alkalinity: 110 mg/L CaCO3, waters › brook › alkalinity in shelf.grow.yaml
    - dissolved: 55.4 mg/L, N in the batch
    - dissolved: 155 mg/L, K in the batch
    - dissolved: 38 mg/L, Ca in the batch
    - dissolved: 6 mg/L, Mg in the batch
    - dissolved: 5.34 mg/L, S in the batch
    - dissolved: 14 mg/L, Cl in the batch
    - dissolved: 9 mg/L, Na in the batch
    - temperature: 15 °C, waters › brook › temperature in shelf.grow.yaml
    - NO₃⁻: 3.96 mmol/L
    - K⁺: 3.95 mmol/L
    - and 11 more

    Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600"
  `);
});
