import { expect, test } from 'vitest';
import { adjustmentOf } from '../../server/plan/adjust.ts';
import { loadAdjustmentOf } from '../../server/plan/adjust-loads.ts';
import { adjustStepsOf } from '../../server/plan/adjust-steps.ts';
import { type Figure, numberOf } from '../../server/plan/figure.ts';
import { recipe } from '../recipe.ts';

const batchOf = (acid: string, volume = '20 L', extra = '') => {
  const { plan } = recipe`
    recipe: 1
    waters:
      brook: { pH: 7.8, alkalinity: 140 mg/L CaCO3 }
    adjusters:
      down: ${acid}
    tools:
      syringe: { smallest: 0.5 mL, largest: 10 mL }
      can: { holds: 12 L }
    batches:
      b: { water: brook, volume: ${volume}, adjust: { with: down, to: 5.8 }${extra} }
  `.snapshot();
  const batch = plan.batches.get('b');
  if (batch === undefined) throw new Error('no batch');
  return batch;
};
const phosphoric = '{ acid: { phosphoric: 12 % }, density: 1.06 kg/L }';
const mL = (figure: Figure): number => Math.round((numberOf(figure) ?? Number.NaN) * 1e6) / 1e3;

test('half of what is left at a time, then the rest', () => {
  const batch = batchOf(phosphoric);
  const steps = adjustStepsOf(batch);
  const exact = mL(adjustmentOf(batch)?.exact ?? { kind: 'unknown', wants: [] });
  // Of 32.04 mL half is 16 to the half millilitre, of the 16.04 left 8, of the 8.04 left 4, and the rest 4.
  expect(exact).toBeCloseTo(32.04, 1);
  expect(steps.map(({ add }) => mL(add))).toEqual([16, 8, 4, 4]);
  const total = steps.reduce((sum, { add }) => sum + mL(add), 0);
  expect(Math.abs(total - exact)).toBeLessThanOrEqual(0.25);
});

test('the pH to expect falls from step to step and ends at the aim', () => {
  const pHs = adjustStepsOf(batchOf(phosphoric)).map(({ pH }) => numberOf(pH) ?? Number.NaN);
  expect(pHs).toEqual([...pHs].sort((a, b) => b - a));
  expect(pHs.at(-1)).toBeCloseTo(5.8, 1);
});

test('the first step of a load is one that the tools measure, the first at the bench', () => {
  const batch = batchOf(phosphoric, '21 L', ', mix-in: can');
  const first = loadAdjustmentOf(batch)?.firstStep;
  expect(first && mL(first)).toBe(8);
  expect(first && mL(first)).toBe(mL(adjustStepsOf(batch)[0]?.add ?? { kind: 'unknown', wants: [] }));
});

test('a load is adjusted by itself: half the batch takes half the acid and shows the same pH', () => {
  const whole = adjustStepsOf(batchOf(phosphoric));
  const load = adjustStepsOf(batchOf(phosphoric, '20 L', ', mix-in: can'));
  expect(mL(load[0]?.add ?? { kind: 'unknown', wants: [] })).toBe(8);
  expect(mL(whole[0]?.add ?? { kind: 'unknown', wants: [] })).toBe(16);
  expect(numberOf(load[0]?.pH)).toBeCloseTo(numberOf(whole[0]?.pH) ?? 0, 6);
});

test('by a written response, each step moves the pH by its share', () => {
  // -0.6 pH at 0.3 mL/L: from 7.8 to 5.8 are 20 mL in 20 L, and half of it moves the pH half the way.
  const steps = adjustStepsOf(batchOf('{ response: -0.6 pH at 0.3 mL/L }'));
  expect(mL(steps[0]?.add ?? { kind: 'unknown', wants: [] })).toBe(10);
  expect(numberOf(steps[0]?.pH)).toBeCloseTo(6.8, 6);
});

test('an amount below the finest tool is one step, rounded to it', () => {
  const steps = adjustStepsOf(batchOf(phosphoric, '200 mL'));
  expect(steps.map(({ add }) => mL(add))).toEqual([0.5]);
});

test('nothing to add, or nothing known, is no step', () => {
  expect(adjustStepsOf(batchOf(phosphoric, '20 L', ', readings: [{ pH: 5.8 }]'))).toEqual([]);
  expect(adjustStepsOf(batchOf('{ density: 1.06 kg/L }'))).toEqual([]);
});
