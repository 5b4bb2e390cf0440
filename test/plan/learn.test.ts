// What a batch's own readings say of the acid in the bottle. The readings are what a bottle of 9.4 % would give where the label
// says 12 %, with the error of a hand meter on each.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { markedRecipe } from '../recipe.ts';
import { known, type WorkedOut, workedOut } from './worked-out.ts';

const label_percent = 12;
const true_percent = 9.4;

function bench(share_percent: number, readings: readonly string[], adjust = ''): WorkedOut {
  return workedOut(
    markedRecipe(`recipe: 1
waters:
  mains: { pH: 7.6, alkalinity: 120 mg/L CaCO3, temperature: 20 °C }
feeds:
  salt: { formula: KH2PO4 }
adjusters:
  down: { acid: { phosphoric: ${share_percent} % }, density: 1.06 kg/L }
batches:
  herb: { water: mains, volume: 20 L, feed: { salt: 0.14 g/L }, readings: [${readings.join(', ')}]${adjust} }
`),
  );
}

const steps_mL = [6, 5];

/** The true pH at the start and after each step. */
const truth: readonly number[] = bench(true_percent, [
  '{ pH: 7.2 }',
  ...steps_mL.map(mL => `{ add: { down: ${mL} mL } }`),
])
  .state('herb')
  .readings.map(({ reading, predicted }) => reading?.pH ?? known(predicted));

/** The recipe as it is written, with the label's strength and readings that are off by these errors. */
function recorded(errors: readonly number[], steps = steps_mL.length): WorkedOut {
  const pH = (index: number) => ((truth[index] ?? 0) + (errors[index] ?? 0)).toFixed(2);
  const readings = [
    `{ pH: ${pH(0)} }`,
    ...steps_mL.slice(0, steps).map((mL, i) => `{ add: { down: ${mL} mL }, pH: ${pH(i + 1)} }`),
  ];
  return bench(label_percent, readings, ', adjust: { with: down, to: 5.8 }');
}

test('without error two steps show the true strength, and it is said', () => {
  const plan = recorded([0, 0, 0]).adjustment('herb');
  expect(plan.method).toBe('learned');
  const learned = plan.learned;
  expect(learned?.steps).toBe(2);
  const percent = label_percent * (learned?.factor ?? 1);
  // The label counts for something too, as one more witness.
  expect(percent).toBeGreaterThan(true_percent - 0.1);
  expect(percent).toBeLessThan(true_percent + 0.4);
});

test('each step narrows what is learned', () => {
  const one = recorded([0, 0, 0], 1).adjustment('herb').learned;
  const two = recorded([0, 0, 0]).adjustment('herb').learned;
  expect(two?.spread).toBeLessThan(one?.spread ?? 0);
});

test('with a meter that is off by up to 0.05 either way, two readings beat the thumb rule and the label', () => {
  const error = fc.double({ min: -0.05, max: 0.05, noNaN: true });
  const right = rightAmount();
  let ours = 0;
  let label = 0;
  let thumb = 0;
  fc.assert(
    fc.property(fc.tuple(error, error, error), errors => {
      const plan = recorded(errors).adjustment('herb');

      ours += Math.abs(known(plan.exact, 1000) / right - 1);
      label += Math.abs(true_percent / label_percent - 1);
      thumb += Math.abs(thumbRule(errors) / right - 1);
    }),
    { seed: 11, numRuns: 40 },
  );
  expect(ours).toBeLessThan(0.6 * thumb);
  expect(ours).toBeLessThan(label);
});

/** What the true bottle needs from the true last pH, mL. */
function rightAmount(): number {
  const readings = [`{ pH: ${truth[truth.length - 1]?.toFixed(4)} }`];
  return known(bench(true_percent, readings, ', adjust: { with: down, to: 5.8 }').adjustment('herb').exact, 1000);
}

/** The rule of three from the last step: so many mL moved the pH so far. */
function thumbRule(errors: readonly number[]): number {
  const [, before = 0, last = 0] = truth.map((pH, index) => pH + (errors[index] ?? 0));
  return ((last - 5.8) / (before - last)) * (steps_mL[1] ?? 0);
}

test('an acid that says nothing of itself is learned from what it did', () => {
  const text = `recipe: 1
waters:
  mains: { pH: 7.6, alkalinity: 120 mg/L CaCO3 }
adjusters:
  jar: { density: 1.1 kg/L }
batches:
  herb: { water: mains, volume: 10 L, adjust: { with: jar, to: 5.8 }, readings: [{ pH: 7.4 }, { add: { jar: 5 mL }, pH: 6.6 }] }
`;
  const plan = workedOut(markedRecipe(text)).adjustment('herb');
  expect(plan.method).toBe('learned');
  expect(plan.does).toBe('acid');
  expect(plan.learned?.factor).toBeUndefined();
  expect(plan.learned?.meqPerUnit).toBeLessThan(0);
  expect(known(plan.exact)).toBeGreaterThan(0);
});

test('a step that moved the pH the wrong way teaches nothing', () => {
  const plan = bench(
    label_percent,
    ['{ pH: 6.6 }', '{ add: { down: 4 mL }, pH: 6.8 }'],
    ', adjust: { with: down, to: 5.8 }',
  );
  expect(plan.adjustment('herb').method).toBe('composition');
});
