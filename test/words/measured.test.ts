import { expect, test } from 'vitest';
import { assumed } from '../../server/plan/figure.ts';
import { errorText, measuredAmountText, measuredText, scaleText } from '../../server/words/measured.ts';

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

test('a syringe is read in millilitres by everybody, also where the amount would be whole spoons', () => {
  const syringe = {
    kind: 'measured',
    amount: 0.05,
    with: [{ tool: 'syringe', times: 1, amount: 0.05, step: 0.001 }],
  } as const;
  expect(measuredText(syringe, 'volume', 'us')).toBe('50 mL with `syringe`');
  expect(measuredAmountText(syringe, 'volume', 'us')).toBe('50 mL');
  expect(scaleText({ dimension: 'volume', value: 0.06 }, 'us', 0.0005)).toBe('60 mL');
});

test('a jug that is marked in fluid ounces is read in them, and what it adds up to too', () => {
  const ounce = 0.0295735295625;
  const jug = {
    kind: 'measured',
    amount: 5 * ounce,
    with: [{ tool: 'jug', times: 1, amount: 5 * ounce, step: ounce / 2 }],
  } as const;
  expect(measuredText(jug, 'volume', 'us')).toBe('5 fl oz with `jug`');
  expect(measuredAmountText(jug, 'volume', 'us')).toBe('5 fl oz');
});

test('spoons and a syringe together add up in millilitres', () => {
  const both = {
    kind: 'measured',
    amount: 0.063,
    with: [
      { tool: 'spoons', times: 4, amount: 0.015 },
      { tool: 'syringe', times: 1, amount: 0.003, step: 0.0005 },
    ],
  } as const;
  expect(measuredText(both, 'volume', 'us')).toBe('4 × 1 tbsp with `spoons`, then 3 mL with `syringe`');
  expect(measuredAmountText(both, 'volume', 'us')).toBe('63 mL');
});

test('the error in words', () => {
  const error = (value: number) => assumed({ dimension: 'fraction', value } as const, '', 'from-memory');
  expect(errorText(error(-0.0151), 'metric')).toBe('1.51 % too little');
  expect(errorText(error(0.05), 'metric')).toBe('5 % too much');
  expect(errorText(error(1e-12), 'metric')).toBe('exactly');
});
