// A quantity: a number with its dimension. Text becomes a quantity here, or an exact complaint about it.

import { type Dimension, dimensions } from './dimensions.ts';
import { findUnit, mendUnit, type Unit, unitOf, unitsFor } from './find-unit.ts';
import { plainNumber, readNumber } from './number.ts';
import { type Complaint, complain, invalid, type Read, type Slice } from './parsed.ts';

/** A number of one dimension, counted in that dimension's base unit (see `dimensions.ts`). */
export interface Quantity<D extends Dimension = Dimension> {
  readonly dimension: D;
  readonly value: number;
}

/** A quantity of any one of several dimensions, so that asking for its `dimension` tells which. */
export type AnyQuantity<D extends Dimension> = D extends Dimension ? Quantity<D> : never;

export type ParsedQuantity<D extends Dimension> = ReadQuantity<D> | Complaint;

export interface ReadQuantity<D extends Dimension> extends Read<AnyQuantity<D>> {
  /** The number as written, before conversion. */
  readonly number: number;
  readonly unit: Unit;
  readonly numberSlice: Slice;
  /** Where the unit is written; where it is written otherwise than `unit.symbol`, a tolerant spelling was read. */
  readonly unitSlice: Slice;
}

export interface Limits {
  /** Zero is refused too. Below zero only a temperature or a change of pH can be. */
  readonly aboveZero?: boolean;
  /** The largest that is accepted, in the base unit. */
  readonly atMost?: number;
}

/** The quantity a text states, of one of the accepted dimensions, or what exactly is wrong with it. */
export function parseQuantity<const D extends Dimension>(
  text: string,
  accepted: readonly D[],
  limits: Limits = {},
): ParsedQuantity<D> {
  const number = readNumber(text);
  if (number.kind === 'complaint') return number;
  const end = text.trimEnd().length;
  const written = text.slice(number.slice.to, end).trimStart();
  const unitSlice = { from: end - written.length, to: end };
  const unit = written === '' ? withoutUnit(text, number.slice, accepted) : readUnit(text, unitSlice, accepted);
  if (unit.kind === 'complaint') {
    return isRangeRest(written) ? invalid(text, number.slice.from, end, 'one amount belongs here, not a range') : unit;
  }
  const value = fromUnit(number.value, unit.value);
  if (!isOneOf(value, accepted)) throw new Error(`a unit of ${value.dimension} passed for another`);
  const fault = outside(text, number.slice, value, limits);
  if (fault !== undefined) return fault;
  return {
    kind: 'read',
    value,
    number: number.value,
    unit: unit.value,
    numberSlice: number.slice,
    unitSlice,
  };
}

/** A quantity from a number of some unit. */
export function fromUnit<D extends Dimension>(number: number, unit: Unit<D>): Quantity<D> {
  return { dimension: unit.dimension, value: (number * unit.times - unit.zero * unit.times) / unit.over };
}

/** How many of a unit a quantity is. A unit of another dimension cannot be asked for. */
export function convert<D extends Dimension>(quantity: Quantity<D>, unit: Unit<NoInfer<D>>): number {
  if (quantity.dimension !== unit.dimension) throw new Error(`${quantity.dimension} is not counted in ${unit.symbol}`);
  return (quantity.value * unit.over) / unit.times + unit.zero;
}

/** A quantity from a number of its dimension's base unit. */
export function quantity<D extends Dimension>(dimension: D, value: number): Quantity<D> {
  return { dimension, value };
}

/** The unit a text names, if it is of an accepted dimension. `slice` is where the unit is written. */
export function readUnit(text: string, slice: Slice, accepted: readonly Dimension[]): Read<Unit> | Complaint {
  const written = text.slice(slice.from, slice.to);
  const found = findUnit(written);
  if (found.kind === 'found') {
    if (accepted.includes(found.unit.dimension)) return { kind: 'read', value: found.unit };
    // An ounce where a volume belongs is a fluid ounce.
    const instead = found.unit.symbol === 'oz' && accepted.includes('volume') ? 'fl_oz' : undefined;
    return complain('unit-mismatch', slice, { unit: written, got: found.unit.dimension, wanted: accepted }, instead);
  }
  const junk = afterUnit(written, accepted);
  if (junk !== undefined) {
    const more = /\d/u.test(written.slice(junk));
    const why = more ? 'one amount belongs here' : 'nothing belongs after the unit';
    return invalid(text, slice.from + junk, slice.to, why, more ? undefined : '');
  }
  if (/^[+\-\u2212]?\d/u.test(written)) {
    return invalid(text, slice.from, slice.to, 'a unit belongs here, not a second number');
  }
  const { at, symbol } = mendUnit(written, found.wrong, accepted);
  const word = { from: slice.from + at.from, to: slice.from + at.to };
  return complain('unit-unknown', word, { unit: text.slice(word.from, word.to), nearest: symbol }, symbol);
}

/** pH alone is a bare number; anything else without a unit is a complaint that offers some. */
function withoutUnit(text: string, slice: Slice, accepted: readonly Dimension[]): Read<Unit> | Complaint {
  if (accepted.includes('pH')) return { kind: 'read', value: unitOf('pH') };
  const number = text.slice(slice.from, slice.to);
  const each = Math.max(1, Math.floor(4 / accepted.length));
  const units = accepted.flatMap(dimension => unitsFor(dimension).slice(0, each)).map(unit => unit.symbol);
  const only = units.length === 1 ? `${number} ${units[0]}` : undefined;
  return complain('unit-missing', slice, { number, wanted: accepted, units }, only);
}

/** Where words begin that follow an accepted unit, as in `20 L of water`; their leading space is included. */
function afterUnit(written: string, accepted: readonly Dimension[]): number | undefined {
  for (let at = written.length - 1; 0 < at; at--) {
    if (!/[\s,;.()]/u.test(written[at] ?? '')) continue;
    const found = findUnit(written.slice(0, at).trimEnd());
    if (found.kind === 'found' && accepted.includes(found.unit.dimension)) return written.slice(0, at).trimEnd().length;
  }
  return undefined;
}

function isRangeRest(written: string): boolean {
  return /^(?:\.\.|…|[-–—]|to\b)\s*[+\-\u2212]?[.\d½¼¾]/u.test(written) || /(?:\.\.|…)/u.test(written);
}

function outside(text: string, slice: Slice, { dimension, value }: Quantity, limits: Limits): Complaint | undefined {
  const { title, base } = dimensions[dimension];
  const number = text.slice(slice.from, slice.to);
  if (!Number.isFinite(value)) return invalid(text, slice.from, slice.to, 'this number is too large');
  if (value < 0 && dimension !== 'temperature' && dimension !== 'pH') {
    const instead = number.replace(/^[-\u2212] ?/u, '');
    return invalid(text, slice.from, slice.to, `${title} cannot be below zero`, instead);
  }
  if (limits.aboveZero === true && value <= 0) {
    return invalid(text, slice.from, slice.to, 'this must be above zero');
  }
  if (limits.atMost !== undefined && limits.atMost < value) {
    const most =
      dimension === 'fraction' ? `${plainNumber(limits.atMost * 100)} %` : `${plainNumber(limits.atMost)} ${base}`;
    return invalid(text, slice.from, slice.to, `the most that can be meant here is ${most}`);
  }
  return undefined;
}

function isOneOf<D extends Dimension>(value: Quantity, accepted: readonly D[]): value is AnyQuantity<D> {
  return accepted.some(one => one === value.dimension);
}
