// Laws of units and of the small texts: what is written can be read back, and whatever is typed is answered.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDate } from '../../schema/date.ts';
import { type Dimension, dimensions } from '../../schema/dimensions.ts';
import { findUnit, type Unit, unitOf, unitsFor } from '../../schema/find-unit.ts';
import { nearest, spellingDistance } from '../../schema/nearest.ts';
import { plainNumber, readNumber } from '../../schema/number.ts';
import type { Parsed } from '../../schema/parsed.ts';
import { convert, fromUnit, parseQuantity } from '../../schema/quantity.ts';
import { parseRange } from '../../schema/range.ts';
import { parseBatchVolume } from '../../schema/texts/batch-volume.ts';
import { parseDose } from '../../schema/texts/dose.ts';
import { parseFill } from '../../schema/texts/fill.ts';
import { parseMoney } from '../../schema/texts/money.ts';
import { parseResponse } from '../../schema/texts/response.ts';

const names = Object.keys(dimensions) as Dimension[];
const units: readonly Unit[] = names.flatMap(dimension => unitsFor(dimension));
const anyUnit = fc.constantFrom(...units);
const number = fc.double({ min: 1e-6, max: 1e6, noNaN: true, noDefaultInfinity: true });

describe('laws of units', () => {
  test('there and back is the same number', () => {
    fc.assert(
      fc.property(anyUnit, number, (unit, value) => {
        // A temperature near zero on its own scale carries the rounding of the zero it was moved by.
        const slack = 1e-14 * (value + Math.abs(unit.zero));
        expect(Math.abs(convert(fromUnit(value, unit), unit) - value)).toBeLessThanOrEqual(slack);
      }),
    );
  });

  test('a way round over a third unit is the way itself', () => {
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.nat(), fc.nat(), number, (dimension, a, b, value) => {
        const all = unitsFor(dimension);
        const [from, over] = [all[a % all.length], all[b % all.length]];
        fc.pre(from !== undefined && over !== undefined);
        const quantity = fromUnit(value, from);
        const round = fromUnit(convert(quantity, over), over);
        expect(Math.abs(round.value - quantity.value)).toBeLessThanOrEqual(1e-13 * (Math.abs(quantity.value) + 500));
      }),
    );
  });

  test('a quotient of units is the quotient of their sizes', () => {
    const volumes = unitsFor('volume');
    fc.assert(
      fc.property(fc.constantFrom(...volumes), fc.constantFrom(...volumes), (above, below) => {
        const found = findUnit(`${above.symbol}/${below.symbol}`);
        if (found.kind !== 'found') throw new Error('no such quotient');
        const ours = found.unit.times / found.unit.over;
        const theirs = (1000 * (above.times / above.over)) / (below.times / below.over);
        expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-15 * 4);
      }),
    );
  });
});

describe('laws of texts', () => {
  test('a number and a unit, written with or without a space, are read back', () => {
    fc.assert(
      fc.property(
        anyUnit,
        fc.integer({ min: 1, max: 10 ** 9 }),
        fc.constantFrom('', ' ', '  '),
        (unit, thousandths, gap) => {
          const value = thousandths / 1000;
          const parsed = parseQuantity(`${plainNumber(value)}${gap}${unit.symbol}`, [unit.dimension]);
          if (parsed.kind === 'complaint') throw new Error(JSON.stringify(parsed));
          expect(parsed.number).toBe(value);
          expect(parsed.value).toEqual(fromUnit(value, unit));
        },
      ),
    );
  });

  test('a range is read with its ends in order, and refused with them swapped', () => {
    fc.assert(
      fc.property(number, number, (a, b) => {
        fc.pre(plainNumber(a) !== plainNumber(b));
        const [low, high] = a < b ? [a, b] : [b, a];
        const unit = unitOf('µS/cm');
        const upward = parseRange(`${plainNumber(low)}..${plainNumber(high)} µS/cm`, 'conductivity');
        expect(upward.kind === 'read' && upward.value.low).toBe(fromUnit(Number(plainNumber(low)), unit).value);
        const downward = parseRange(`${plainNumber(high)}..${plainNumber(low)} µS/cm`, 'conductivity');
        expect(downward.kind === 'complaint' && downward.instead).toBe(
          `${plainNumber(low)}..${plainNumber(high)} µS/cm`,
        );
      }),
    );
  });

  const words = [
    '20',
    ' ',
    'L',
    'mL/gal',
    '..',
    '-',
    'label',
    'of',
    '%',
    'net cup',
    'into',
    'pH',
    'at',
    '½',
    '1/2',
    ',',
    'EUR',
    '2027-02',
    '\u{1F331}',
    '\ud800',
    '/',
    '.',
    'e9',
    '9'.repeat(30),
  ];
  const typed = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc.array(fc.constantFrom(...words), { maxLength: 8 }).map(parts => parts.join('')),
  );
  const parsers: Record<string, (text: string) => Parsed<unknown>> = {
    quantity: text => parseQuantity(text, ['volume', 'volume-per-volume', 'charge-per-volume']),
    range: text => parseRange(text, 'conductivity'),
    pH: text => parseRange(text, 'pH'),
    date: parseDate,
    dose: parseDose,
    fill: parseFill,
    response: parseResponse,
    'batch volume': parseBatchVolume,
    money: parseMoney,
  };

  test.each(Object.entries(parsers))(
    'whatever is typed, a %s is read or complained about inside the text',
    (_, parse) => {
      fc.assert(
        fc.property(typed, text => {
          const answer = parse(text);
          if (answer.kind === 'read') {
            expect(JSON.stringify(answer.value)).not.toMatch(/null/u); // what NaN and Infinity turn into
            return;
          }
          const { from, to } = answer.slice;
          expect([0 <= from, from <= to, to <= text.length]).toEqual([true, true, true]);
        }),
        { numRuns: 1000 },
      );
    },
  );

  test.each(Object.entries(parsers))(
    'a rewriting that is offered for a %s mends it, or leaves less to mend',
    (_, parse) => {
      fc.assert(
        fc.property(typed, text => {
          let [now, left] = [text, 20];
          for (
            let answer = parse(now);
            answer.kind === 'complaint' && answer.instead !== undefined;
            answer = parse(now)
          ) {
            const mended = now.slice(0, answer.slice.from) + answer.instead + now.slice(answer.slice.to);
            expect(mended).not.toBe(now);
            now = mended;
            left -= 1;
            expect(left, `still offering after ${text}`).toBeGreaterThan(0);
          }
        }),
        { numRuns: 1000 },
      );
    },
  );

  test('a number as we write it is the number that is read', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true, noDefaultInfinity: true }), value => {
        fc.pre(value === 0 || 1e-9 < Math.abs(value));
        const read = readNumber(plainNumber(value));
        expect(read.kind === 'read' && Math.abs(read.value - value)).toBeLessThanOrEqual(1e-11 * Math.abs(value));
      }),
    );
  });
});

describe('laws of spelling', () => {
  test('the distance is the same both ways, and none from a word to itself', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 8 }), fc.string({ maxLength: 8 }), (a, b) => {
        expect(spellingDistance(a, b)).toBe(spellingDistance(b, a));
        expect(spellingDistance(a, a)).toBe(0);
        expect(spellingDistance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
    );
  });

  test('one slip in a unit of four letters or more is found', () => {
    const letters = fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz');
    fc.assert(
      fc.property(fc.constantFrom('gallon', 'litre', 'teaspoon'), fc.nat(), letters, (word, at, letter) => {
        const place = at % word.length;
        const slipped = word.slice(0, place) + letter + word.slice(place + 1);
        expect(nearest(slipped, [word])).toBe(word);
      }),
    );
  });
});
