// How numbers are written in a recipe: `20`, `0.5`, `-0.6`, `1/2`, `1 1/2`, `½`, `1½`. No exponents and no separators
// of thousands, because readers in different countries would read them differently.

import { type Complaint, invalid, type Read, type Slice } from './parsed.ts';

export interface WrittenNumber extends Read<number> {
  readonly slice: Slice;
}

/** The number at the start of a text, after any spaces; what follows it is the caller's. Never NaN or infinite. */
export function readNumber(text: string): WrittenNumber | Complaint {
  const usual = usualNumber.exec(text)?.[0];
  if (usual !== undefined) return { kind: 'read', value: Number(usual), slice: { from: 0, to: usual.length } };
  const start = text.length - text.trimStart().length;
  const written = numberPattern.exec(text.slice(start))?.[0] ?? '';
  if (!/[\d½⅓¼⅛⅔¾⅜⅝⅞⅕⅖⅗⅘⅙⅚]/u.test(written)) return noNumber(text, start);
  const separated = separators(text, start);
  if (separated !== undefined) return separated;
  const to = start + written.length;
  const value = evaluate(written);
  if (value === undefined) return invalid(text, start, to, 'a number cannot be divided by zero');
  if (!Number.isFinite(value)) return invalid(text, start, to, 'this number is too large');
  return { kind: 'read', value, slice: { from: start, to } };
}

/** A number as a person would write it: no exponent, no noise after the twelfth digit. */
export function plainNumber(value: number): string {
  const rounded = Number(value.toPrecision(12));
  const text = String(rounded);
  if (!text.includes('e')) return text;
  return 1 < Math.abs(rounded) ? BigInt(rounded).toString() : rounded.toFixed(20).replace(/\.?0+$/u, '');
}

/** What nearly all numbers look like: digits alone, or before a unit. Nothing of what is looked for in others can be in it. */
const usualNumber = /^\d{1,15}(?:\.\d{1,15})?(?=$| [A-Za-zµ%°])/u;

const numberPattern = new RegExp(
  [
    '^[+\\-\\u2212]? ?', // a sign
    '(?:',
    '\\d+ +\\d+/\\d+(?![\\d.])|', // 1 1/2
    '\\d+/\\d+(?![\\d.])|', // 1/2
    '\\d+ ?[½⅓¼⅛⅔¾⅜⅝⅞⅕⅖⅗⅘⅙⅚]|', // 1½
    '[½⅓¼⅛⅔¾⅜⅝⅞⅕⅖⅗⅘⅙⅚]|',
    '\\d+(?:\\.\\d+)?|\\.\\d+', // 0.5, .5; `1..2` is a 1 before a range
    ')?',
  ].join(''),
  'u',
);

/** The value of a text that has the form of a number; `undefined` where it divides by zero. */
function evaluate(written: string): number | undefined {
  const sign = /^[-\u2212]/u.test(written) ? -1 : 1;
  const body = written.replace(/^[+\-\u2212] ?/u, '');
  const vulgar = /^(\d*) ?([½⅓¼⅛⅔¾⅜⅝⅞⅕⅖⅗⅘⅙⅚])$/u.exec(body);
  if (vulgar !== null) return sign * (Number(vulgar[1] ?? '0') + ratio((vulgar[2] ?? '').normalize('NFKC')));
  const mixed = /^(?:(\d+) +)?(\d+)\/(\d+)$/u.exec(body);
  if (mixed === null) return sign * Number.parseFloat(body);
  if (Number(mixed[3]) === 0) return undefined;
  return sign * (Number(mixed[1] ?? '0') + Number(mixed[2]) / Number(mixed[3]));
}

/** The value of ½ and its like, which come apart into `1⁄2` with a fraction stroke. */
function ratio(fraction: string): number {
  const [above = '0', below = '1'] = fraction.split('\u2044');
  return Number(above) / Number(below);
}

/** Commas, spaces, apostrophes and underscores inside a number, and exponents: never guessed, but rewritten. */
function separators(text: string, start: number): Complaint | undefined {
  const rest = text.slice(start);
  const sign = /^[+\-\u2212]? ?/u.exec(rest)?.[0] ?? '';
  const body = rest.slice(sign.length);
  const from = start + sign.length;
  const exponent = /^[\d.]+[eE][+-]?\d+/u.exec(body)?.[0];
  if (exponent !== undefined) {
    const value = Number(exponent);
    const instead = 1e-9 <= value && value < 1e15 ? plainNumber(value) : undefined;
    return invalid(text, from, from + exponent.length, 'the number has an exponent', instead);
  }
  const grouped = /^\d{1,3}(?:([,' \u00a0\u202f’_.])\d{3})(?:\1\d{3})*(?:[.,]\d+)?(?![\d/])/u.exec(body);
  if (grouped !== null && isGrouped(grouped[0], grouped[1] ?? '')) {
    const plain = grouped[0].replaceAll(grouped[1] ?? '', '').replace(',', '.');
    return invalid(text, from, from + grouped[0].length, 'the thousands are separated', plain);
  }
  const comma = /^\d+,\d+(?![\d,])/u.exec(body)?.[0];
  if (comma !== undefined) {
    return invalid(text, from, from + comma.length, 'the number has a decimal comma', comma.replace(',', '.'));
  }
  const joined = /^\d+(?:[,_'’]\d+)+(?:\.\d+)?/u.exec(body)?.[0];
  if (joined !== undefined) {
    const plain = joined.replace(/[,_'’]/gu, '');
    return invalid(text, from, from + joined.length, 'the digits are separated', plain);
  }
  const dots = /^\d+(?:\.\d+){2,}/u.exec(body)?.[0];
  if (dots !== undefined) return invalid(text, from, from + dots.length, 'a number has one decimal point');
  const pointLast = /^\d+\.(?![\d.])/u.exec(body)?.[0];
  if (pointLast !== undefined) {
    return invalid(text, from, from + pointLast.length, 'no digit follows the decimal point', pointLast.slice(0, -1));
  }
  return undefined;
}

/** Whether a mark groups thousands: `0,500` is a decimal comma, and `1.500` is one and a half. */
function isGrouped(number: string, mark: string): boolean {
  if (mark === '.') return number.includes(',') || number.split('.').length > 2;
  return mark !== ',' || !number.startsWith('0');
}

function noNumber(text: string, start: number): Complaint {
  const end = text.trimEnd().length;
  if (end <= start) return invalid(text, 0, text.length, 'an amount is missing here');
  const about = /^(?:[~≈<>=≤≥]+|(?:about|circa|approx|ca)\b\.?)\s*(?=[\d.½⅓¼])/iu.exec(text.slice(start))?.[0];
  if (about !== undefined) return invalid(text, start, start + about.length, 'the number stands alone here', '');
  const turned = /^([^\d\s.+\-\u2212][^\d]*?)\s*([+\-\u2212]?\d+(?:\.\d+)?)$/u.exec(text.slice(start, end));
  if (turned === null) return invalid(text, start, end, 'this does not begin with a number');
  const [, word = '', number = ''] = turned;
  return invalid(text, start, end, 'the number comes first, then the unit', `${number} ${word}`);
}
