// Conductivity against certified and tabulated solutions.

import { describe, expect, test } from 'vitest';
import { conductivityAsIs, conductivityAt25 } from '../../server/chemistry/conduct.ts';
import { solve } from '../../server/chemistry/solution.ts';
import { solventAt } from '../../server/chemistry/solvent.ts';
import type { Totals } from '../../server/chemistry/totals.ts';
import { addTotals } from '../../server/chemistry/totals.ts';

const solved = (totals: Totals, temperature_C = 25) => solve({ totals, temperature_C, air: 'closed' });

describe('conductivity', () => {
  // CRC Handbook, Standard KCl solutions for calibrating conductivity cells (Pratt et al. 2001), µS/cm, molal.
  test.each([
    [0.01, 10, 1013.95],
    [0.01, 20, 1273.03],
    [0.01, 25, 1408.23],
    [0.01, 35, 1687.79],
    [0.1, 20, 11615.9],
    [0.1, 25, 12824.6],
    [0.1, 35, 15316.0],
  ])('%f m KCl at %f °C meets its certificate within 1 %%', (molality, temperature, certified) => {
    const perLitre = molality * solventAt(temperature).density_kg_per_L;
    const ours = conductivityAsIs(solved({ K: perLitre, Cl: perLitre }, temperature)) * 1000;
    expect(Math.abs(ours / certified - 1)).toBeLessThan(0.01);
  });

  // Robinson and Stokes 1959, equivalent conductivities at 25 °C, S cm²/eq (from memory); tolerance 1 %.
  test.each([
    ['CaCl2', { Ca: 0.005, Cl: 0.01 }, 0.01, 120.36],
    ['MgCl2', { Mg: 0.005, Cl: 0.01 }, 0.01, 114.55],
    ['Na2SO4', { Na: 0.01, SO4: 0.005 }, 0.01, 112.44],
    ['NaCl', { Na: 0.01, Cl: 0.01 }, 0.01, 118.51],
    ['KNO3', { K: 0.001, NO3: 0.001 }, 0.001, 141.84],
  ])('%s conducts as tabulated', (_, totals, equivalents, tabulated) => {
    expect(Math.abs(conductivityAt25(solved(totals)) / equivalents / tabulated - 1)).toBeLessThan(0.01);
  });

  test('Hoagland’s second solution reads about 2 mS/cm', () => {
    const full: Totals = { NH4: 1e-3, PO4: 1e-3, K: 6e-3, NO3: 14e-3, Ca: 4e-3, Mg: 2e-3, SO4: 2e-3 };
    const ec = conductivityAt25(solved(full));
    expect(ec).toBeGreaterThan(1.85);
    expect(ec).toBeLessThan(2.2);
    // Half the strength conducts a little more than half as well: less crowding, fewer pairs.
    expect(conductivityAt25(solved(addTotals({}, full, 0.5))) / ec).toBeGreaterThan(0.5);
  });

  test('rises about 2 % a degree', () => {
    const totals: Totals = { K: 6e-3, NO3: 10e-3, Ca: 2e-3 };
    const rise = conductivityAsIs(solved(totals, 30)) / conductivityAsIs(solved(totals, 20));
    expect(rise).toBeGreaterThan(1.18);
    expect(rise).toBeLessThan(1.24);
  });

  test('unknown ions conduct, a mere imbalance does not', () => {
    const base: Totals = { K: 2e-3, NO3: 1e-3 };
    const at = (totals: Totals): number =>
      conductivityAt25(solve({ totals, temperature_C: 25, air: 'closed', near: 7 }));
    expect(at({ ...base, unknownCharge: -1e-3 })).toBeGreaterThan(at({ ...base, imbalance: -1e-3 }));
  });
});
