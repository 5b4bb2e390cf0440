// How a solution answers to a small change: near enough to what the solver says when the change is made.

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { bufferOf, chargeBrought } from '../../server/chemistry/buffer.ts';
import { contentsOf } from '../../server/chemistry/pool.ts';
import { poolFor, type Question } from '../../server/chemistry/solution.ts';
import { fillAt } from '../../server/chemistry/speciate.ts';
import { addTotals, type Totals } from '../../server/chemistry/totals.ts';
import { anyAir, anySolution, anyTemperature } from './waters.ts';

const anyPH = fc.double({ min: 3, max: 10, noNaN: true });

test('the buffer value is the charge that falls away as pH rises', () => {
  fc.assert(
    fc.property(anySolution, anyTemperature, anyAir, anyPH, (totals, temperature_C, air, pH) => {
      const question = { totals, temperature_C, air };
      const pool = poolFor(question);
      fillAt(pool, pH);
      const fallen = (fillAt(poolFor(question), pH - 5e-4) - fillAt(poolFor(question), pH + 5e-4)) / 1e-3;
      expect(bufferOf(pool) / fallen).toBeGreaterThan(0.6);
      expect(bufferOf(pool) / fallen).toBeLessThan(1.6);
    }),
  );
});

test('without pairs it is that of the text books', () => {
  // Van Slyke 1922: ln 10 times the proton, the hydroxide, and each acid's amount × share × (1 − share).
  const pool = poolFor({ totals: { acetate: 1e-3, K: 1e-3 }, temperature_C: 25, air: 'closed' });
  fillAt(pool, 5);
  const [acid = 0] = pool.forms.members.flatMap(({ key }, i) => (key === 'HAc' ? [(pool.amounts[i] ?? 0) / 1e-3] : []));
  const expected = Math.LN10 * (pool.protons + 1e-3 * acid * (1 - acid));
  expect(bufferOf(pool) / expected).toBeCloseTo(1, 5);
});

test('what is added brings its charge, where it drives no protons out of pairs', () => {
  const reagents: readonly Totals[] = [{ NO3: 1 }, { PO4: 1 }, { SO4: 1 }, { K: 1, CO3: 0.5 }];
  fc.assert(
    fc.property(anySolution, fc.constantFrom(...reagents), anyPH, (totals, reagent, pH) => {
      const question: Question = { totals, temperature_C: 20, air: 'closed' };
      const pool = poolFor(question, reagent);
      const before = fillAt(pool, pH);
      const brought = chargeBrought(pool, contentsOf(pool.forms, reagent));
      const after = fillAt(poolFor({ ...question, totals: addTotals(totals, reagent, 1e-6) }), pH);
      expect(Math.abs((after - before) / 1e-6 - brought)).toBeLessThan(0.6);
    }),
  );
});
