// What compounds become in water: known ions, protons, and what is left over.

import { describe, expect, test } from 'vitest';
import { readCompound } from '../../server/chemistry/compound.ts';
import { dissolve } from '../../server/chemistry/salt.ts';
import { chargeOfTotals } from '../../server/chemistry/totals.ts';

function dissolved(text: string) {
  const compound = readCompound(text);
  if (compound.kind !== 'compound') throw new Error(`${text}: ${compound.reason}`);
  return dissolve(compound);
}

describe('a compound in water', () => {
  test.each([
    ['KNO3', { K: 1, NO3: 1 }],
    ['5Ca(NO3)2.NH4NO3.10H2O', { Ca: 5, NO3: 11, NH4: 1 }],
    ['(NH4)2HPO4', { NH4: 2, PO4: 1 }],
    ['Ca(H2PO4)2.H2O', { Ca: 1, PO4: 2 }],
    ['MgSO4.7H2O', { Mg: 1, SO4: 1 }],
    ['Na2B4O7.10H2O', { Na: 2, B: 4 }],
    ['K2SiO3', { K: 2, Si: 1 }],
    ['K2CO3', { K: 2, CO3: 1 }],
    ['CO(NH2)2', { urea: 1 }],
    ['C6H8O7.H2O', { citrate: 1 }],
    ['K3C6H5O7', { K: 3, citrate: 1 }],
    ['Ca(CH3COO)2', { Ca: 1, acetate: 2 }],
    ['MgO', { Mg: 1 }],
    ['NH4NO3', { NH4: 1, NO3: 1 }],
  ])('%s is ions we know', (text, totals) => {
    const salt = dissolved(text);
    expect(salt.kind).toBe('ions');
    expect(salt.totals).toEqual(totals);
  });

  test('acids give protons, bases take them', () => {
    const protons = [
      'HNO3',
      'H2SO4',
      'H3PO4',
      'C6H8O7',
      'KH2PO4',
      'KHCO3',
      'KOH',
      'Ca(OH)2',
      'K2SiO3',
      'Na2B4O7.10H2O',
    ];
    expect(protons.map(text => dissolved(text).protons)).toEqual([1, 2, 3, 3, 2, 1, -1, -2, -2, -2]);
  });

  test('a minor element keeps its atoms and the charge that neutrality leaves it', () => {
    expect(dissolved('FeSO4.7H2O')).toMatchObject({ kind: 'in-part', other: { elements: { Fe: 1 }, charge: 2 } });
    expect(dissolved('MnCl2.4H2O')).toMatchObject({ kind: 'in-part', other: { elements: { Mn: 1 }, charge: 2 } });
    expect(dissolved('(NH4)6Mo7O24.4H2O')).toMatchObject({ other: { elements: { Mo: 7 }, charge: -14 }, protons: 8 });
    expect(dissolved('C10H12N2NaFeO8').other).toMatchObject({ elements: { Fe: 1, N: 2, C: 10 }, charge: -1 });
  });

  test('a compound whose charges do not add up is not trusted', () => {
    expect(dissolved('K2S2O5').kind).toBe('inconsistent');
    expect(dissolved('KNO2').kind).toBe('in-part');
  });

  test('what is dissolved is neutral with its protons', () => {
    for (const text of ['KH2PO4', 'ZnSO4.7H2O', 'Na2MoO4.2H2O', 'NH4Cl', 'Fe(NO3)3.9H2O', 'K2SiO3']) {
      const salt = dissolved(text);
      expect(chargeOfTotals(salt.totals) + salt.protons).toBeCloseTo(0, 9);
    }
  });
});
