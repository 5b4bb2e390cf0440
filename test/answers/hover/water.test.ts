import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { recipe } from '../../recipe.ts';
import { bench } from './bench.ts';

test('a water: as drawn and in air, carbon, EC, what the report lacks', () => {
  checkHover(bench`
    batches: { first: { water: br$0ook, volume: 20 L } }
  `).toMatchInlineSnapshot(`
    "batches: { first: { water: brook, volume: 20 L } }
                               ▔▔↑▔▔
    brook, a water: pH 7.6, alkalinity 110 mg/L CaCO3, 15 °C

    Alkalinity: 2.2 meq/L · 110 mg/L CaCO3 · 6.16 dKH · 134 mg/L HCO3
    Brings Ca 38, Mg 6, S 5.34, Cl 14, Na 9 mg/L.

    |  | as drawn | after standing in air |
    | pH | 7.6 | 8.43 |

    It holds more CO₂ than air gives: its pH climbs as that leaves.
    EC at 25 °C: 0.282 mS/cm computed
    CO₂ 0.133, HCO₃⁻ 2.16, CO₃²⁻ 0.00394 mmol/L
    The report is short of cations by 0.145 meq/L (2.59 %).
    As drawn it is near to clouding with calcium carbonate (calcite, index -0.2).
    After standing in air it may cloud with calcium carbonate (calcite, index 0.6).

    Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Robinson, R.A. and Stokes, R.H.: Electrolyte Solutions, 2nd edition. Butterworths, London

    Borrowed from shelf.grow.yaml."
  `);
});

test('a lab report without alkalinity, open to air', () => {
  checkHover(recipe`
    recipe: 1
    waters: { po$0nd: { pH: 7.9, air: open, EC: 0.3 mS/cm, ions: { Ca: 40 mg/L, NO3-N: 8 mg/L } } }
  `).toMatchInlineSnapshot(`
    "waters: { pond: { pH: 7.9, air: open, EC: 0.3 mS/cm, ions: { Ca: 40 mg/L, NO3-N: 8 mg/L } } }
              ▔▔↑▔
    pond, a water: pH 7.9, EC 0.3 mS/cm

    Brings N 8, Ca 40 mg/L.

    |  | as drawn | after standing in air |
    | pH | 7.9 | 7.9 |

    EC at 25 °C: 0.173 mS/cm computed, 0.3 mS/cm stated
    CO₂ 0.0164, HCO₃⁻ 0.573, CO₃²⁻ 0.00226 mmol/L
    Alkalinity: 29.4 mg/L CaCO3
    The report is short of anions by 0.837 meq/L (26.7 %); a good report is within 5 %, so look it through.

    Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600 · Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat · Common practice in the trade · Robinson, R.A. and Stokes, R.H.: Electrolyte Solutions, 2nd edition. Butterworths, London"
  `);
});

test('a water that is not known well enough says what is missing', () => {
  checkHover(recipe`
    recipe: 1
    waters: { we$0ll: { pH: 7.2 } }
  `).toMatchInlineSnapshot(`
    "waters: { well: { pH: 7.2 } }
              ▔▔↑▔
    well, a water: pH 7.2

    pH and EC: Not known yet; missing: the alkalinity (or air: open, where the pH was measured after standing in air) (waters › well › alkalinity)."
  `);
});
