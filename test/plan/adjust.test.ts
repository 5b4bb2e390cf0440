// The amount of acid or base that brings a batch to its aim, the cautious first step, and the range.

import { expect, test } from 'vitest';
import { addTotals } from '../../server/chemistry/totals.ts';
import { herb } from './herb.ts';
import { known, shown } from './worked-out.ts';

test('an acid lowers a measured pH to the aim', () => {
  const { adjustment, final } = herb('adjust: { with: down, to: 5.8 }, readings: [{ pH: 7.4 }]');
  const plan = adjustment('herb');
  expect(plan.method).toBe('composition');
  expect(known(plan.from)).toBe(7.4);
  expect(known(plan.exact)).toBeGreaterThan(0);
  expect(known(final('herb').figures.pH)).toBeCloseTo(5.8, 4);
  // CO2 that the acid set free leaves, and the pH climbs.
  expect(known(final('herb').inAir.pH)).toBeGreaterThan(6.5);
});

test('a base raises it', () => {
  const { adjustment, final } = herb('adjust: { with: up, to: 6.2 }, readings: [{ pH: 5.2 }]');
  expect(known(adjustment('herb').exact)).toBeGreaterThan(0);
  expect(adjustment('herb').does).toBe('base');
  expect(known(final('herb').figures.pH)).toBeCloseTo(6.2, 4);
});

test('a powder is weighed', () => {
  const { adjustment } = herb('adjust: { with: crystals, to: 5.8 }');
  const { exact } = adjustment('herb');
  expect(exact.kind === 'known' && exact.quantity.dimension).toBe('mass');
  expect(adjustment('herb').unit).toBe('g');
});

test('the first step is half of it, down to what the tools measure, and leads half the way', () => {
  const tools = 'tools:\n  syringe: { smallest: 0.5 mL, largest: 20 mL }\n';
  const { adjustment } = herb('adjust: { with: down, to: 5.8 }, readings: [{ pH: 7.4 }]', tools);
  const { exact, firstStep, firstStepPH } = adjustment('herb');
  const step = known(firstStep, 1000);
  expect(step * 2).toBe(Math.round(step * 2));
  expect(step).toBeLessThanOrEqual(known(exact, 500) + 1e-9);
  expect(step).toBeGreaterThan(known(exact, 500) - 0.5);
  expect(known(firstStepPH)).toBeLessThan(7.4);
  expect(known(firstStepPH)).toBeGreaterThan(5.8);
});

test.each(['down', 'crystals', 'thumb'])('low, exact and high of %s stand in order', name => {
  const tools = 'tools:\n  syringe: { smallest: 1 mL, largest: 20 mL }\n';
  const { adjustment } = herb(`adjust: { with: ${name}, to: 5.8 }, readings: [{ pH: 7.0 }]`, tools);
  const { low, exact, high } = adjustment('herb');
  expect(known(low)).toBeGreaterThanOrEqual(0);
  expect(known(low)).toBeLessThan(known(exact));
  expect(known(exact)).toBeLessThan(known(high));
});

test('a measured pH narrows the range that a predicted one leaves', () => {
  const range = (readings: string) => {
    const { low, high } = herb(`adjust: { with: down, to: 5.8 }${readings}`).adjustment('herb');
    return known(high) - known(low);
  };
  expect(range(', readings: [{ pH: 7.6 }]')).toBeLessThan(range(''));
});

test('a stated response is a rule of three', () => {
  const { adjustment } = herb('adjust: { with: thumb, to: 6.0 }, readings: [{ pH: 7.0 }]');
  expect(adjustment('herb').method).toBe('response');
  expect(known(adjustment('herb').exact, 1000)).toBeCloseTo(4, 9);
  expect(known(adjustment('herb').firstStepPH)).toBeCloseTo(6.5, 9);
});

test('where the aim is reached nothing is to be added', () => {
  const { adjustment } = herb('adjust: { with: down, to: 5.8 }, readings: [{ pH: 5.8 }]');
  expect(known(adjustment('herb').exact)).toBe(0);
  expect(known(adjustment('herb').low)).toBe(0);
});

test('an acid that is to raise the pH gives no amount, but a finding', () => {
  const { adjustment, codes } = herb('adjust: { with: down, to: 6.5 }, readings: [{ pH: 5.4 }]');
  expect(shown(adjustment('herb').exact)).toBe(
    'wants another adjuster: down, as an acid lowers the pH, and 6.50 is above 5.40',
  );
  expect(codes).toContain('adjuster-wrong-way');
  expect(codes).not.toContain('not-computed');
});

test('an adjuster of unknown strength gives no amount', () => {
  const { adjustment, codes } = herb('adjust: { with: bottle, to: 5.8 }');
  expect(shown(adjustment('herb').exact)).toBe('wants the strength of bottle');
  expect(codes).toContain('adjuster-without-strength');
  expect(codes).not.toContain('not-computed');
});

test('an acid that can only be a liquid needs a density', () => {
  const { adjustment, codes } = herb('adjust: { with: bare, to: 5.8 }, readings: [{ add: { bare: 2 mL } }]');
  expect(shown(adjustment('herb').exact)).toMatch(/^wants the density of bare/);
  expect(codes).toContain('density-missing');
  expect(codes).not.toContain('not-computed');
});

test('the aim is the target’s where none is written, and the middle of its band where that has none', () => {
  const target = (is: string) => `targets:\n  leafy: ${is}\n`;
  const aim = (is: string) => known(herb('target: leafy, adjust: { with: down }', target(is)).adjustment('herb').to);
  expect(aim('{ pH: 5.5..6.5, pH-aim: 5.8 }')).toBe(5.8);
  expect(aim('{ pH: 5.6..6.4 }')).toBeCloseTo(6, 9);
});

test('the curve goes through start and aim', () => {
  const { adjustment } = herb('adjust: { with: down, to: 5.8 }, readings: [{ pH: 7.4 }]');
  const { curve, exact } = adjustment('herb');
  expect(curve[0]?.pH).toBeCloseTo(7.4, 6);
  const atAim = curve.find(({ amount }) => Math.abs(amount - known(exact, 1000)) < 1e-9);
  expect(atAim?.pH).toBeCloseTo(5.8, 4);
});

test('what a batch ends as is the solution with the amount in it, however strong the readings show the acid to be', () => {
  const { adjustment, final, state, batch } = herb(
    'adjust: { with: down, to: 5.8 }, readings: [{ pH: 7.4 }, { add: { down: 5 mL }, pH: 6.9 }]',
  );
  const { method, learned, exact } = adjustment('herb');
  expect(method).toBe('learned');
  const { question } = state('herb');
  const perLitre = known(exact, 1000) / known(batch('herb').volume);
  const { solution } = final('herb');
  expect(solution?.pH).toBe(5.8);
  const poured = addTotals(question?.totals ?? {}, learned?.perUnit ?? {}, perLitre);
  expect(solution?.totals.PO4).toBeCloseTo(poured.PO4 ?? 0, 10);
  expect(known(final('herb').figures.EC)).toBeGreaterThan(0);
});

test('a batch that stands at its aim ends as it stands', () => {
  const { adjustment, final } = herb('adjust: { with: down, to: 5.8 }, readings: [{ pH: 5.803 }]');
  expect(known(adjustment('herb').exact)).toBe(0);
  expect(known(final('herb').figures.pH)).toBe(5.803);
});
