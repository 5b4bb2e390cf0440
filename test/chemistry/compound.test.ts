// Formulas as they stand on bags: what they weigh, and the exact place where they go wrong.

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { massFraction, readCompound } from '../../server/chemistry/compound.ts';
import { elementEntries, elements } from '../../server/chemistry/tables/elements.ts';

function read(text: string) {
  const compound = readCompound(text);
  if (compound.kind !== 'compound') throw new Error(`${text}: ${compound.reason}`);
  return compound;
}

/** The text with the slice at fault between angle brackets, and why. */
function complaint(text: string): string {
  const answer = readCompound(text);
  if (answer.kind === 'compound') return 'no complaint';
  return `${text.slice(0, answer.from)}<${text.slice(answer.from, answer.to)}>${text.slice(answer.to)} ${answer.reason}`;
}

describe('a formula', () => {
  // CRC Handbook, physical constants of inorganic compounds: molar masses.
  test.each([
    ['KNO3', 101.103],
    ['Ca(NO3)2', 164.088],
    ['CaSO4·2H2O', 172.171],
    ['MgSO4.7H2O', 246.475],
    ['(NH4)2SO4', 132.14],
    ['KH2PO4', 136.085],
    ['Na2B4O7·10H2O', 381.37],
    ['C6H8O7', 192.124],
  ])('%s weighs %f g/mol', (text, mass) => {
    expect(read(text).molarMass_g_per_mol).toBeCloseTo(mass, 1);
  });

  test('counts the salt that greenhouses call calcium nitrate', () => {
    const compound = read('5Ca(NO3)2.NH4NO3.10H2O');
    expect(compound.elements).toEqual({ Ca: 5, N: 12, O: 43, H: 24 });
    // Trade label: 15.5 % nitrogen, 19 % calcium.
    expect(massFraction(compound, 'N')).toBeCloseTo(0.1555, 3);
    expect(massFraction(compound, 'Ca')).toBeCloseTo(0.1854, 3);
  });

  test('takes any of the usual dots, blanks, subscripts and half molecules of water', () => {
    for (const text of ['CaSO4·2H2O', 'CaSO4.2H2O', 'CaSO4*2H2O', 'CaSO4 • 2 H2O', 'CaSO₄·2H₂O', ' CaSO4⋅2H2O '])
      expect(read(text).elements).toEqual({ Ca: 1, S: 1, O: 6, H: 4 });
    expect(read('CaSO4.0.5H2O').elements).toEqual(read('CaSO4·½H2O').elements);
  });

  test('labels: sulfate of potash is 41.5 % K after 50 % K2O', () => {
    expect(50 * massFraction(read('K2O'), 'K')).toBeCloseTo(41.5, 1);
  });

  test('complains about the very slice that is wrong', () => {
    expect(
      ['kno3', 'K(NO3', 'KNO3)', 'Xx2', 'Caa', 'K0', 'KNO3.', 'K+', '()', 'CaSO4.2', '(K]', 'K99999', '12'].map(
        complaint,
      ),
    ).toEqual([
      '<k>no3 lower-case',
      'K<(>NO3 not-closed',
      'KNO3<)> not-opened',
      '<Xx>2 unknown-element',
      '<Caa> unknown-element',
      'K<0> zero-count',
      'KNO3<.> ends-early',
      'K<+> stray-character',
      '<()> empty-group',
      'CaSO4.<2> ends-early',
      '(K<]> not-opened',
      'K<99999> huge-count',
      '<12> ends-early',
    ]);
    expect(complaint('')).toBe('<> empty');
  });

  test('any text is answered, with a slice inside it', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 160 }), text => {
        const answer = readCompound(text);
        if (answer.kind === 'compound') return answer.molarMass_g_per_mol > 0;
        return 0 <= answer.from && answer.from <= answer.to && answer.to <= text.length;
      }),
    );
  });

  test('spelled from any elements and counts, reads back to them', () => {
    const symbols = elementEntries(Object.fromEntries(Object.keys(elements).map(key => [key, 1]))).map(([key]) => key);
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.constantFrom(...symbols), fc.integer({ min: 1, max: 40 })), {
          minLength: 1,
          maxLength: 6,
          selector: ([symbol]) => symbol,
        }),
        atoms => {
          const text = atoms.map(([symbol, count]) => `${symbol}${count === 1 ? '' : count}`).join('');
          expect(read(text).elements).toEqual(Object.fromEntries(atoms));
        },
      ),
    );
  });
});
