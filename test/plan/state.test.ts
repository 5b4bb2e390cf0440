// Readings: predicted from the last measured pH before them, and re-anchored by what was measured.

import { expect, test } from 'vitest';
import { recipe } from '../recipe.ts';
import { herb } from './herb.ts';
import { known, shown, workedOut } from './worked-out.ts';

test('what is added is predicted, and a measured pH starts the next prediction', () => {
  const { state } = herb(
    'readings: [{ pH: 7.5 }, { add: { down: 2 mL } }, { add: { down: 5 mL }, pH: 6.3 }, { add: { down: 2 mL } }]',
  );
  const [first, second, third, last] = state('herb').readings;
  expect(known(first?.predicted)).toBeCloseTo(7.6, 6);
  expect(known(second?.predicted)).toBeLessThan(7.5);
  expect(known(third?.predicted)).toBeLessThan(known(second?.predicted));
  expect(known(last?.predicted)).toBeLessThan(6.3);
  expect(known(last?.predicted)).toBeGreaterThan(5.9);
  expect(state('herb').isMeasured).toBe(false);
});

test('in a vessel that is open, what was predicted before a measured pH does not matter after it', () => {
  const after = (before: string) =>
    known(
      herb(`air: open, readings: [{ ${before} }, { pH: 6.5 }, { add: { down: 2 mL } }]`).state('herb').readings.at(-1)
        ?.predicted,
    );
  expect(after('pH: 8')).toBeCloseTo(after('pH: 6'), 3);
});

test('a feed added later, and one by a stated response', () => {
  const { state } = herb('readings: [{ add: { salt: 5 g } }, { pH: 6.8 }, { add: { thumb: 2 mL } }]');
  const [salted, , shifted] = state('herb').readings;
  expect(known(salted?.predicted)).toBeLessThan(7.2);
  expect(known(shifted?.predicted)).toBeCloseTo(6.3, 6);
});

test('an addition of unknown strength leaves the pH unknown until it is measured again', () => {
  const { state } = herb(
    'readings: [{ add: { bottle: 5 mL } }, { add: { down: 1 mL }, pH: 6.9 }, { add: { down: 1 mL } }]',
  );
  const [unknown, still, again] = state('herb').readings;
  expect(shown(unknown?.predicted)).toBe('wants the strength of bottle');
  expect(shown(still?.predicted)).toBe('wants the strength of bottle');
  expect(known(again?.predicted)).toBeLessThan(6.9);
});

test('without an alkalinity nothing is predicted, and what was measured stays', () => {
  const { state } = workedOut(recipe`
    recipe: 1
    waters:
      mains: { pH: 7.6 }
    batches:
      herb: { water: mains, volume: 10 L, readings: [{ pH: 7.1 }] }
  `);
  const [only] = state('herb').readings;
  expect(shown(only?.predicted)).toMatch(/^wants the alkalinity/);
  expect(known(only?.measured)).toBe(7.1);
  expect(known(state('herb').pH)).toBe(7.1);
});
