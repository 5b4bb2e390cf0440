import { expect, test } from 'vitest';
import { assumed } from '../../server/plan/figure.ts';
import { errorText, measuredText, scaleText } from '../../server/words/measured.ts';

const spoons = {
  kind: 'measured',
  amount: 0.0225,
  with: [
    { tool: 'cup', times: 1, amount: 0.015 },
    { tool: 'cup', times: 1, amount: 0.005 },
    { tool: 'pipe', times: 2, amount: 0.00125 },
  ],
} as const;

test('the fillings of each tool, one tool after the other', () => {
  expect(measuredText(spoons, 'volume', 'metric')).toBe('15 mL and 5 mL with `cup`, then 2 × 1.25 mL with `pipe`');
  expect(measuredText(spoons, 'volume', 'us')).toBe('1 tbsp and 1 tsp with `cup`, then 2 × 0.25 tsp with `pipe`');
  expect(measuredText({ kind: 'no-tool' }, 'volume', 'metric')).toBeUndefined();
});

test('a scale stays in grams and a syringe in millilitres', () => {
  expect(scaleText({ dimension: 'mass', value: 28 }, 'us')).toBe('28 g');
  expect(scaleText({ dimension: 'volume', value: 0.0033 }, 'us')).toBe('3.3 mL');
  expect(scaleText({ dimension: 'volume', value: 3.785411784 }, 'us')).toBe('1 gal');
});

test('the error in words', () => {
  const error = (value: number) => assumed({ dimension: 'fraction', value } as const, '', 'from-memory');
  expect(errorText(error(-0.0151), 'metric')).toBe('1.51 % too little');
  expect(errorText(error(0.05), 'metric')).toBe('5 % too much');
  expect(errorText(error(1e-12), 'metric')).toBe('exactly');
});
