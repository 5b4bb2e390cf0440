// A range of one dimension, both ends included: `5.5..6.5`, `0.8..1.2 mS/cm`.

import type { Dimension } from './dimensions.ts';
import type { Unit } from './find-unit.ts';
import { plainNumber, readNumber } from './number.ts';
import { type Complaint, invalid, type Read, shifted } from './parsed.ts';
import { fromUnit, type ParsedQuantity, parseQuantity } from './quantity.ts';

/** Two ends in the dimension's base unit; `low` is never above `high`. */
export interface Range<D extends Dimension = Dimension> {
  readonly dimension: D;
  readonly low: number;
  readonly high: number;
}

export interface ReadRange<D extends Dimension> extends Read<Range<D>> {
  /** The unit in which the ends are written; where each has its own, the second's. */
  readonly unit: Unit;
}

/** The range a text states, or what exactly is wrong with it. One unit serves both ends. */
export function parseRange<D extends Dimension>(text: string, dimension: D): ReadRange<D> | Complaint {
  const dots = text.indexOf('..');
  if (dots < 0) return noDots(text, dimension);
  const more = /^\.{3,}/u.exec(text.slice(dots))?.[0];
  // `1...5` may be a slip for two dots or an end written `.5`: two dots are meant far more often.
  if (more !== undefined) return invalid(text, dots, dots + more.length, 'a range has two dots', '..');
  const low = { from: 0, text: text.slice(0, dots) };
  const high = { from: dots + 2, text: text.slice(dots + 2) };
  const third = text.indexOf('..', dots + 2);
  if (third !== -1) return invalid(text, third, text.length, 'a range has two ends');
  if (low.text.trim() === '' && high.text.trim() === '') return invalid(text, 0, text.length, 'a range has two ends');
  if (low.text.trim() === '') return invalid(text, 0, dots + 2, 'the lower end of the range is missing');
  if (high.text.trim() === '') return invalid(text, dots, text.length, 'the upper end of the range is missing');
  return twoEnds(text, dimension, low, high);
}

interface End {
  readonly from: number;
  readonly text: string;
}

function twoEnds<D extends Dimension>(text: string, dimension: D, low: End, high: End): ReadRange<D> | Complaint {
  const lowNumber = readNumber(low.text);
  if (lowNumber.kind === 'complaint') return shifted(lowNumber, low.from);
  const highNumber = readNumber(high.text);
  if (highNumber.kind === 'complaint') return shifted(highNumber, high.from);
  const highBare = high.text.slice(highNumber.slice.to).trim() === '';
  const lowBare = low.text.slice(lowNumber.slice.to).trim() === '';
  const upper = highBare && !lowBare ? undefined : parseEnd(high, dimension);
  if (upper?.kind === 'complaint') return bareRange(upper, text, highBare && lowBare);
  const lower = lowBare && upper !== undefined ? undefined : parseEnd(low, dimension);
  if (lower?.kind === 'complaint') return lower;
  const unit = (upper ?? lower)?.unit;
  if (unit === undefined) throw new Error('a range without a unit was not complained about');
  const ends = {
    low: lower?.value.value ?? fromUnit(lowNumber.value, unit).value,
    high: upper?.value.value ?? fromUnit(highNumber.value, unit).value,
  };
  if (ends.low < 0 && dimension !== 'pH' && dimension !== 'temperature') {
    const { from, to } = lowNumber.slice;
    return invalid(text, from, to, 'the lower end cannot be below zero');
  }
  if (ends.high < ends.low) return reversed(text, low, high);
  return { kind: 'read', value: { dimension, ...ends }, unit };
}

function parseEnd<D extends Dimension>(end: End, dimension: D): ParsedQuantity<D> {
  const parsed = parseQuantity<D>(end.text, [dimension]);
  return parsed.kind === 'complaint' ? shifted(parsed, end.from) : parsed;
}

/** Where neither end has a unit, the whole range lacks it. */
function bareRange(complaint: Complaint, text: string, bare: boolean): Complaint {
  if (complaint.code !== 'unit-missing' || !bare) return complaint;
  const number = text.trim();
  const from = text.indexOf(number);
  const only = complaint.params.units.length === 1 ? { instead: `${number} ${complaint.params.units[0]}` } : {};
  return { ...complaint, slice: { from, to: from + number.length }, params: { ...complaint.params, number }, ...only };
}

function reversed(text: string, low: End, high: End): Complaint {
  const unitOf = (end: End) => {
    const number = readNumber(end.text);
    return number.kind === 'complaint' ? '' : end.text.slice(number.slice.to).trim();
  };
  const numberOf = (end: End) =>
    end.text
      .trim()
      .slice(0, end.text.trim().length - unitOf(end).length)
      .trim();
  const [lowUnit, highUnit] = [unitOf(low), unitOf(high)];
  const swapped =
    lowUnit === '' || highUnit === ''
      ? `${numberOf(high)}..${numberOf(low)} ${lowUnit}${highUnit}`.trim()
      : `${high.text.trim()}..${low.text.trim()}`;
  return invalid(text, 0, text.length, 'the range runs downwards', swapped);
}

/** One value, a hyphen, the word `to`, a tolerance: other ways to write a range, each with its rewriting. */
function noDots(text: string, dimension: Dimension): Complaint {
  const first = readNumber(text);
  if (first.kind === 'complaint') return first;
  const rest = text.slice(first.slice.to);
  const joint = joinedPattern.exec(rest);
  if (joint !== null) {
    const from = first.slice.to + (joint.groups?.before?.trimEnd().length ?? 0);
    return invalid(text, from, first.slice.to + joint[0].length, 'a range is written with two dots', '..');
  }
  const tolerance = /^\s*(?:±|\+\/-|\+-)\s*(?<by>[\d.]+)\s*(?<unit>.*)$/u.exec(rest);
  if (tolerance !== null) {
    const by = Number.parseFloat(tolerance.groups?.by ?? '');
    const unit = tolerance.groups?.unit?.trim() ?? '';
    const ends = `${plainNumber(first.value - by)}..${plainNumber(first.value + by)}`;
    return invalid(text, 0, text.length, 'a range is written with its two ends', `${ends} ${unit}`.trim());
  }
  const one = parseQuantity(text, [dimension]);
  if (one.kind === 'complaint' && one.code !== 'unit-missing') return one;
  const number = text.slice(first.slice.from, first.slice.to);
  const unit = one.kind === 'read' ? ` ${text.slice(one.unitSlice.from, one.unitSlice.to)}`.trimEnd() : '';
  const suggestion = one.kind === 'read' ? `${number}..${number}${unit}` : undefined;
  return invalid(text, 0, text.length, 'a range has two ends', suggestion);
}

/** The unit of the lower end, where it is written, and what joins it to the upper end. */
const joinedPattern = /^(?<before>\s*[^\d\s±+–—\u2212-]*)(?<mark>\s*(?:-|\u2212|–|—|…|~|\bto\b)\s*)(?=[.\d½¼¾])/u;
