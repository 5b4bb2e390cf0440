import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { bench } from './bench.ts';

test('a batch of salts: pH as mixed, adjusted and after standing in air, EC, and why the pH does not hold', () => {
  checkHover(bench`
    batches:
      fir$0st:
        water: brook
        volume: 20 L
        target: low
        feed: { lime: 0.6 g/L, salt: 0.3 g/L }
        adjust: { with: down }
  `).toMatchInlineSnapshot(`
    "  first:
      ▔▔▔↑▔
    first: 20 L of brook

    1. lime: 12 g
    2. salt: 6 g

    |  | pH | pH after standing in air | EC at 25 °C |
    | as mixed | 7.55 | 8.39 | 1.24 mS/cm |
    | adjusted | 5.8 | 6.66 | 1.22 mS/cm |
    | low | 5.5..6.5: in band |  | 1..1.6 mS/cm: in band |

    A pH of 5.8 does not hold: CO₂ leaves fresh solution as it stands, and the pH climbs to 6.66. Measure again then.
    As mixed it may cloud with calcium carbonate (calcite, index 0.2).
    In the end all stays dissolved.

    A litre holds N 113, K 116, Ca 140, Mg 6, S 5.34, Cl 14, Na 9 mg/L.

    About 24.2 mL of down from pH 7.55, predicted, to 5.8
    First 12 mL, then stir and measure: about pH 6.4. Then by small steps.
    From 22.6 mL to 25.7 mL, as the pH at the start is predicted and not measured, and tools round.
    Reckoned by its composition.

    ⚠ Causes serious eye irritation. Causes skin irritation. Wear gloves and eye protection. Pour acid into water, never water into acid. Add a little, stir, and measure again before adding more. Never mix an acid with a chlorine product, such as bleach: poisonous gas forms. Keep it away from children and food. Follow the label and the safety data sheet; they overrule the recipe. Dispose of it by your local rules. The amounts are estimates; the meter decides.

    The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Robinson, R.A. and Stokes, R.H.: Electrolyte Solutions, 2nd edition. Butterworths, London"
  `);
});

test('a labelled feed leaves ions open, and the hover says so', () => {
  checkHover(bench`
    batches: { fi$0rst: { water: brook, volume: 20 L, feed: { moss: label } } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { water: brook, volume: 20 L, feed: { moss: label } } }
               ▔▔↑▔▔
    first: 20 L of brook

    1. moss: 40 mL

    |  | pH | pH after standing in air | EC at 25 °C |
    | as mixed | 6.88 | 8.15 | 1.18 mS/cm |

    A pH of 6.88 does not hold: CO₂ leaves fresh solution as it stands, and the pH climbs to 8.15. Measure again then.
    What is stated leaves some ions open, so this pH is an estimate; a measured pH overrules it.
    As mixed it is near to clouding with calcium hydrogen phosphate (brushite, index -0.2).

    A litre holds N 115, P 30.1, K 115, Ca 38, Mg 6, S 5.34, Cl 14, Na 9 mg/L.

    The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Robinson, R.A. and Stokes, R.H.: Electrolyte Solutions, 2nd edition. Butterworths, London"
  `);
});

test('a batch that stood in air has one pH, and what may cloud is named', () => {
  checkHover(bench`
    batches: { fi$0rst: { water: brook, volume: 20 L, air: open, feed: { lime: 0.9 g/L, phos: 0.3 g/L } } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { water: brook, volume: 20 L, air: open, feed: { lime: 0.9 g/L, phos: 0.3 g/L } } }
               ▔▔↑▔▔
    first: 20 L of brook

    1. lime: 18 g
    2. phos: 6 g

    |  | pH | EC at 25 °C |
    | as mixed | 7.55 | 1.22 mS/cm |

    As mixed it may cloud with calcium hydrogen phosphate (brushite, index 0.9).

    A litre holds N 107, P 68.3, K 86.2, Ca 191, Mg 6, S 5.34, Cl 14, Na 9 mg/L.

    The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Robinson, R.A. and Stokes, R.H.: Electrolyte Solutions, 2nd edition. Butterworths, London"
  `);
});
