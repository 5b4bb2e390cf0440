import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, civil, type Day, dayOf, daysBetween, formatDate, parseDate, weekday } from '../../schema/date.ts';
import { drawEach } from './draw-complaint.ts';

const day = (text: string): Day => {
  const parsed = parseDate(text);
  if (parsed.kind === 'complaint') throw new Error(`${text} is not read`);
  return parsed.value;
};

test.each([
  ['1970-01-01', 0],
  ['1969-12-31', -1],
  ['2000-03-01', 11017],
  ['2027-02-01', 20850],
])('%s is day %d', (text, count) => {
  expect(day(text)).toBe(count);
});

test('days add across months, leap days and years', () => {
  expect(formatDate(addDays(day('2028-02-28'), 1))).toBe('2028-02-29');
  expect(formatDate(addDays(day('2027-02-28'), 1))).toBe('2027-03-01');
  expect(formatDate(addDays(day('2027-12-31'), 1))).toBe('2028-01-01');
  expect(formatDate(addDays(day('2027-01-01'), -1))).toBe('2026-12-31');
});

test('days between two dates count forwards', () => {
  expect(daysBetween(day('2027-02-01'), day('2027-02-20'))).toBe(19);
});

test.each([
  ['2027-02-01', 'Monday'],
  ['2024-02-29', 'Thursday'],
  ['1969-12-28', 'Sunday'],
])('%s is a %s', (text, name) => {
  expect(weekday(day(text))).toBe(name);
});

test('every day agrees with the calendar of the language', () => {
  fc.assert(
    fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), count => {
      const date = new Date(count * 86_400_000);
      const ours = civil(addDays(day('1970-01-01'), count));
      expect(ours).toEqual({ year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() });
      expect(dayOf(ours.year, ours.month, ours.day)).toBe(count);
    }),
  );
});

describe('complaints', () => {
  test('underlined, with their rewriting', () => {
    expect(
      drawEach(
        [
          '2027-02-30',
          '2027-02-29',
          '2027-13-01',
          '2027-00-10',
          '2027-01-00',
          '2027-2-1',
          '2027/02/01',
          '20270201',
          '13/02/2027',
          '02/13/2027',
          '01/02/2027',
          '2027-02-01T10:00Z',
          '2027-02',
          'tomorrow',
          '',
        ],
        parseDate,
      ),
    ).toMatchInlineSnapshot(`
    "
    2027-02-30
            ^^ value-invalid: \`30\`: February 2027 has 28 days. Write \`28\`?
    2027-02-28

    2027-02-29
            ^^ value-invalid: \`29\`: February 2027 has 28 days. Write \`28\`?
    2027-02-28

    2027-13-01
         ^^ value-invalid: \`13\`: there are months 01 to 12.

    2027-00-10
         ^^ value-invalid: \`00\`: there are months 01 to 12.

    2027-01-00
            ^^ value-invalid: \`00\`: a month begins with day 01. Write \`01\`?
    2027-01-01

    2027-2-1
    ^^^^^^^^ value-invalid: \`2027-2-1\`: a date is written year-month-day, as in 2027-02-01. Write \`2027-02-01\`?
    2027-02-01

    2027/02/01
    ^^^^^^^^^^ value-invalid: \`2027/02/01\`: a date is written year-month-day, as in 2027-02-01. Write \`2027-02-01\`?
    2027-02-01

    20270201
    ^^^^^^^^ value-invalid: \`20270201\`: a date is written year-month-day, as in 2027-02-01. Write \`2027-02-01\`?
    2027-02-01

    13/02/2027
    ^^^^^^^^^^ value-invalid: \`13/02/2027\`: a date is written year-month-day. Write \`2027-02-13\`?
    2027-02-13

    02/13/2027
    ^^^^^^^^^^ value-invalid: \`02/13/2027\`: a date is written year-month-day. Write \`2027-02-13\`?
    2027-02-13

    01/02/2027
    ^^^^^^^^^^ value-invalid: \`01/02/2027\`: a date is written year-month-day.

    2027-02-01T10:00Z
              ^^^^^^^ value-invalid: \`T10:00Z\`: only the day counts, not the time.
    2027-02-01

    2027-02
    ^^^^^^^ value-invalid: \`2027-02\`: a date is written year-month-day, as in 2027-02-01.

    tomorrow
    ^^^^^^^^ value-invalid: \`tomorrow\`: a date is written year-month-day, as in 2027-02-01.


     value-invalid: A date is missing here.
    "
  `);
  });
});
