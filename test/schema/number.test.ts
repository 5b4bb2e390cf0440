import { expect, test } from 'vitest';
import { plainNumber, readNumber } from '../../schema/number.ts';
import { draw } from './draw-complaint.ts';

test.each([
  ['20', 20],
  ['0.5', 0.5],
  ['.5', 0.5],
  ['+5', 5],
  ['-0.6', -0.6],
  ['\u22120.6', -0.6],
  ['1/2', 0.5],
  ['1 1/2', 1.5],
  ['½', 0.5],
  ['1½', 1.5],
  ['-1 ½', -1.5],
  ['⅔ cup', 2 / 3],
  ['20L', 20],
  ['010', 10],
  ['5.5..6.5', 5.5],
])('%s is %d', (text, value) => {
  const number = readNumber(text);
  expect(number.kind === 'read' && number.value).toBe(value);
});

test.each([
  ['1,000', '1000'],
  ['1 000', '1000'],
  ["1'000", '1000'],
  ['1_000', '1000'],
  ['12,345,678', '12345678'],
  ['1.234,5', '1234.5'],
  ['1,5', '1.5'],
  ['0,500', '0.500'],
  ['1e3', '1000'],
  ['2.5e-3', '0.0025'],
  ['5.', '5'],
  ['about 5', '5'],
  ['~5', '5'],
])('%s is refused, and %s offered', (text, instead) => {
  const number = readNumber(text);
  if (number.kind === 'read') throw new Error(`${text} was read`);
  const { from, to } = number.slice;
  expect(text.slice(0, from) + number.instead + text.slice(to)).toBe(instead);
});

test.each(['', ' ', '-', '.', 'x', '1/0', '1.2.3', '1e999', '9'.repeat(400), 'NaN', 'Infinity', '١'])(
  '%j is no number, and nothing is guessed',
  text => {
    const number = readNumber(text);
    expect(number.kind === 'complaint' && number.instead).toBeUndefined();
    expect(number.kind).toBe('complaint');
  },
);

test('the comma is underlined with its digits and nothing else', () => {
  expect(draw(' 1,5 L', readNumber)).toMatchInlineSnapshot(`
    "
     1,5 L
     ^^^ value-invalid: \`1,5\`: the number has a decimal comma. Write \`1.5\`?
     1.5 L
    "
  `);
});

test('numbers are written without exponents or noise', () => {
  expect([0.1 + 0.2, 1e-7, 1e21, 1200, -0.6].map(plainNumber)).toEqual([
    '0.3',
    '0.0000001',
    '1000000000000000000000',
    '1200',
    '-0.6',
  ]);
});

test('the numbers that are read at once are read the same the long way', () => {
  const long = (text: string) => readNumber(` ${text}`);
  for (const number of ['0', '7.2', '12', '0.50', '007', '999999999999999', '0.123456789012345']) {
    for (const rest of ['', ' mL', ' %', ' °C', ' µg', ' of label', ' e3', ' to 6']) {
      const read = readNumber(`${number}${rest}`);
      const asLong = long(`${number}${rest}`);
      if (read.kind !== 'read' || asLong.kind !== 'read') throw new Error(number + rest);
      expect(read.value).toBe(asLong.value);
      expect(read.slice).toEqual({ from: asLong.slice.from - 1, to: asLong.slice.to - 1 });
    }
  }
});
