// Saturation indices of the solids a tank may drop.

import { describe, expect, test } from 'vitest';
import { saturationIndex } from '../../server/chemistry/saturate.ts';
import { solve, solveAt } from '../../server/chemistry/solution.ts';
import type { Totals } from '../../server/chemistry/totals.ts';

const closed = (totals: Totals) => solve({ totals, temperature_C: 25, air: 'closed' });

describe('saturation', () => {
  test('gypsum is saturated at its handbook solubility', () => {
    // 2.4 to 2.67 g/L (CRC; the USGS constants give 2.67 g/L): 15.5 mmol/L.
    expect(saturationIndex(closed({ Ca: 0.0155, SO4: 0.0155 }), 'gypsum')).toBeCloseTo(0, 1);
  });

  test('calcite: limestone water in air stands near pH 8.3 with half a millimole of calcium', () => {
    // Stumm and Morgan, Aquatic Chemistry: calcite in balance with 10^-3.5 atm CO2, pH 8.3 and 5e-4 M Ca (from memory).
    const solution = solve({ totals: { Ca: 0.5e-3 }, temperature_C: 25, air: { CO2_atm: 10 ** -3.5 } });
    expect(saturationIndex(solution, 'calcite')).toBeCloseTo(0, 1);
    expect(solution.pH).toBeCloseTo(8.3, 1);
  });

  test('an index needs every ion of its solid', () => {
    expect(saturationIndex(closed({ Ca: 1e-3, Cl: 2e-3 }), 'gypsum')).toBeUndefined();
  });

  test('calcium and sulfate that are safe in the tank cloud in a common stock a hundred times as strong', () => {
    const index = (times: number) =>
      saturationIndex(closed({ Ca: 4e-3 * times, NO3: 8e-3 * times, Mg: 2e-3 * times, SO4: 2e-3 * times }), 'gypsum') ??
      -9;
    expect(index(1)).toBeLessThan(-1);
    expect(index(100)).toBeGreaterThan(0);
  });

  test('brushite comes nearer as pH rises', () => {
    const totals: Totals = { Ca: 4e-3, PO4: 1.5e-3, NO3: 8e-3 };
    const at = (pH: number) =>
      saturationIndex(solveAt({ totals, temperature_C: 20, air: 'closed' }, pH), 'brushite') ?? -9;
    expect(at(5.5)).toBeLessThan(0);
    expect(at(7)).toBeGreaterThan(0);
  });
});
