// Bottles of acid and base: strength from composition and density, and their hazard statements.

import { describe, expect, test } from 'vitest';
import { readCompound } from '../../server/chemistry/compound.ts';
import { directionOf, hazardsOf, molarity, perGram, perMillilitre } from '../../server/chemistry/reagent.ts';
import { dissolve } from '../../server/chemistry/salt.ts';
import { reagentKeys, reagents } from '../../server/chemistry/tables/acids.ts';

describe('a bottle', () => {
  // Reagent tables: mass share, density in kg/L, mol/L.
  test.each([
    ['phosphoric', 0.85, 1.685, 14.615],
    ['phosphoric', 0.75, 1.579, 12.085],
    ['sulfuric', 0.95, 1.84, 17.822],
    ['sulfuric', 0.35, 1.26, 4.5],
    ['nitric', 0.67, 1.4, 14.89],
    ['KOH', 0.45, 1.456, 11.677],
  ] as const)('%s of %f at %f kg/L is %f mol/L', (key, share, density, molar) => {
    expect(Math.abs((molarity({ [key]: share }, density)[key] ?? 0) / molar - 1)).toBeLessThan(0.002);
  });

  test('adds the sum of its ingredients', () => {
    const mixed = perMillilitre({ phosphoric: 0.2, nitric: 0.1 }, 1.2);
    expect(mixed.PO4).toBeCloseTo((0.2 * 1.2) / 97.994, 5);
    expect(mixed.NO3).toBeCloseTo((0.1 * 1.2) / 63.012, 5);
    expect(perGram({ citric: 1 }).citrate).toBeCloseTo(1 / 192.12, 6);
  });

  test('lowers, raises, or is neither one nor the other', () => {
    expect(directionOf({ phosphoric: 0.1, citric: 0.05 })).toBe('acid');
    expect(directionOf({ KOH: 0.05, K2CO3: 0.1 })).toBe('base');
    expect(directionOf({ KOH: 0.05, nitric: 0.1 })).toBeUndefined();
    expect(directionOf({})).toBeUndefined();
  });

  test('hurts by its strength', () => {
    // CLP Annex VI: phosphoric below 10 % none, 10 to 25 % irritant, above corrosive.
    expect(hazardsOf({ phosphoric: 0.05 })).toEqual([]);
    expect(hazardsOf({ phosphoric: 0.15 })).toEqual(['H315', 'H319']);
    expect(hazardsOf({ phosphoric: 0.3 })).toContain('H314');
    expect(hazardsOf({ nitric: 0.1 })).toContain('H314');
    expect(hazardsOf({ nitric: 0.7 })).toContain('H272');
    expect(hazardsOf({ KOH: 0.05 })).toContain('H314');
    expect(hazardsOf({ citric: 1 })).toContain('H319');
  });

  test('every row adds just what its formula dissolves to', () => {
    for (const key of reagentKeys) {
      const compound = readCompound(reagents[key].formula);
      if (compound.kind !== 'compound') throw new Error(reagents[key].formula);
      expect(dissolve(compound).totals, key).toEqual(reagents[key].adds);
    }
  });
});
