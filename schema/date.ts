// Days, never clocks: a date is a count of days, so there are no zones and no hours to go wrong.

import { invalid, type Parsed, read } from './parsed.ts';

declare const counted: unique symbol;

/** Whole days since 1970-01-01, negative before it, in the proleptic Gregorian calendar (ISO 8601). */
export type Day = number & { readonly [counted]: 'day' };

/** The day a text states as `2027-02-01`, or what exactly is wrong with it. */
export function parseDate(text: string): Parsed<Day> {
  const from = text.length - text.trimStart().length;
  const written = text.trim();
  const iso = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(written);
  if (iso === null) return otherForm(text, from, written);
  const [year, month, day] = [Number(iso[1]), Number(iso[2]), Number(iso[3])];
  if (month < 1 || 12 < month) return invalid(text, from + 5, from + 7, 'there are months 01 to 12');
  const last = daysInMonth(year, month);
  if (last < day)
    return invalid(text, from + 8, from + 10, `${monthNames[month - 1]} ${year} has ${last} days`, `${last}`);
  if (day < 1) return invalid(text, from + 8, from + 10, 'a month begins with day 01', '01');
  return read(dayOf(year, month, day));
}

/** The day of a date that exists; months and days count from 1. */
export function dayOf(year: number, month: number, day: number): Day {
  // Years are taken to begin in March, so that the leap day is the last of the year and months have one formula.
  const marchYear = month <= 2 ? year - 1 : year;
  const monthsFromMarch = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * monthsFromMarch + 2) / 5) + day - 1;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return (marchYear * 365 + leapDays + dayOfYear - daysToEpoch) as Day;
}

/** From 1 March of the year 0 to 1 January 1970. */
const daysToEpoch = 719468;

export interface CivilDate {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

/** Year, month and day of a day. */
export function civil(day: Day): CivilDate {
  const sinceMarch0 = day + daysToEpoch;
  // 146,097 days make 400 years, 36,524 most centuries, 1,460 most groups of four years.
  const era = Math.floor(sinceMarch0 / 146097);
  const ofEra = sinceMarch0 - era * 146097;
  const yearOfEra = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36524) - Math.floor(ofEra / 146096)) / 365,
  );
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthsFromMarch = Math.floor((5 * ofYear + 2) / 153);
  const month = monthsFromMarch < 10 ? monthsFromMarch + 3 : monthsFromMarch - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: ofYear - Math.floor((153 * monthsFromMarch + 2) / 5) + 1,
  };
}

/** The day that lies a number of whole days later, or earlier where it is negative. */
export function addDays(day: Day, days: number): Day {
  return (day + Math.round(days)) as Day;
}

/** Whole days from one day to another; negative where the other is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return to - from;
}

/** `2027-02-01`. */
export function formatDate(day: Day): string {
  const { year, month, day: ofMonth } = civil(day);
  const sign = year < 0 ? '-' : '';
  return `${sign}${two(Math.abs(year), 4)}-${two(month)}-${two(ofMonth)}`;
}

export const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

export type Weekday = (typeof weekdays)[number];

export function weekday(day: Day): Weekday {
  // 1970-01-01 was a Thursday.
  return weekdays[(((day + 3) % 7) + 7) % 7] ?? 'Monday';
}

export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** Dates in other orders and with other marks; the rewriting is offered only where the order is beyond doubt. */
function otherForm(text: string, from: number, written: string): Parsed<Day> {
  const to = from + written.length;
  if (written === '') return invalid(text, 0, text.length, 'a date is missing here');
  const clock = /^(\d{4}-\d{2}-\d{2})([T ].*)$/u.exec(written);
  if (clock !== null) {
    return invalid(text, from + 10, to, 'only the day counts, not the time', '');
  }
  const yearFirst = /^(\d{4})[-./ ]?(\d{1,2})[-./ ]?(\d{1,2})$/u.exec(written);
  const instead = yearFirst === null ? undefined : existing(yearFirst[1], yearFirst[2], yearFirst[3]);
  const dayFirst = /^(\d{1,2})[-./ ](\d{1,2})[-./ ](\d{4})$/u.exec(written);
  if (dayFirst !== null) {
    const [, a, b, year] = dayFirst;
    const sure = 12 < Number(a) ? existing(year, b, a) : 12 < Number(b) ? existing(year, a, b) : undefined;
    return invalid(text, from, to, 'a date is written year-month-day', sure);
  }
  return invalid(text, from, to, 'a date is written year-month-day, as in 2027-02-01', instead);
}

function existing(year = '', month = '', day = ''): string | undefined {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const fits = 1 <= Number(month) && Number(month) <= 12 && 1 <= Number(day);
  return fits && Number(day) <= daysInMonth(Number(year), Number(month)) ? date : undefined;
}

function two(number: number, width = 2): string {
  return String(number).padStart(width, '0');
}
