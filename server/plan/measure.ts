// What the tools on the bench can measure of an exact amount: which tool, how often, and the error it brings.

import type { Tool } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { latest, memo } from './memo.ts';

/** One way to measure: a tool filled so many times to an amount (litres or grams, as the dose). */
export interface Measure {
  readonly tool: string;
  readonly times: number;
  readonly amount: number;
  /** The finest step of the scale on which the amount is read; undefined where it is one of the sizes of a set. */
  readonly step?: number;
}

export type Measured =
  | { readonly kind: 'measured'; readonly amount: number; readonly with: readonly Measure[] }
  /** Less than the finest step of any tool. */
  | { readonly kind: 'too-small'; readonly tool: string; readonly smallest: number }
  /** No tool measures this kind of amount. */
  | { readonly kind: 'no-tool' };

/**
 * The nearest amount that the tools can measure, by one tool or by a coarse one for the bulk and a fine one for the rest. Of
 * ways whose errors differ by less than a thousandth of the dose, the one with the fewest fillings is taken.
 */
export function measure(exact: number, dimension: 'volume' | 'mass', tools: readonly Sourced<Tool>[]): Measured {
  return measureBy(tools, dimension, exact);
}

// Asked twice in a row: how it is measured, and how much that is.
const measureBy = latest((tools: readonly Sourced<Tool>[], dimension: 'volume' | 'mass', exact: number): Measured => {
  const scales = scalesOf(tools, dimension);
  if (scales.length === 0) return { kind: 'no-tool' };
  const finest = scales.reduce((fine, scale) => (smallestOf(scale) < smallestOf(fine) ? scale : fine));
  if (exact < smallestOf(finest) * (1 - slack)) {
    return { kind: 'too-small', tool: finest.tool, smallest: smallestOf(finest) };
  }
  const ways: Way[] = [];
  for (const bulk of scales) {
    const alone = nearestBy(bulk, exact);
    if (alone.length > 0) ways.push(wayOf(alone, exact));
    for (const rest of scales) {
      const both = rest === bulk ? undefined : bulkAndRest(bulk, rest, exact);
      if (both !== undefined) ways.push(wayOf(both, exact));
    }
  }
  ways.sort((a, b) => (Math.abs(a.error - b.error) > exact / 1000 ? a.error - b.error : a.fillings - b.fillings));
  const [{ measures } = { measures: [] }] = ways;
  return { kind: 'measured', amount: sum(measures), with: measures };
});

interface Way {
  readonly measures: readonly Measure[];
  readonly error: number;
  readonly fillings: number;
}

function wayOf(measures: readonly Measure[], exact: number): Way {
  return { measures, error: Math.abs(sum(measures) - exact), fillings: fillings(measures) };
}

/** The finest step that any tool measures, in litres or grams; undefined where no tool measures this kind of amount. */
export function finestStep(dimension: 'volume' | 'mass', tools: readonly Sourced<Tool>[]): number | undefined {
  const steps = scalesOf(tools, dimension).map(smallestOf);
  return steps.length === 0 ? undefined : Math.min(...steps);
}

/** Rounding noise of a division by a step, far below anything that can be poured. */
const slack = 1e-9;

interface Continuous {
  readonly kind: 'continuous';
  readonly tool: string;
  readonly step: number;
  readonly largest: number;
}
interface Stepped {
  readonly kind: 'stepped';
  readonly tool: string;
  /** Largest first. */
  readonly sizes: readonly number[];
}
type Scale = Continuous | Stepped;

const scalesOf = memo((tools: readonly Sourced<Tool>[], dimension: 'volume' | 'mass'): readonly Scale[] =>
  tools.flatMap(tool => scaleOf(tool, dimension) ?? []),
);

function scaleOf({ name, value }: Sourced<Tool>, dimension: 'volume' | 'mass'): Scale | undefined {
  const sizes = (value.steps ?? []).flatMap(size => (size?.dimension === dimension ? [size.value] : []));
  if (sizes.length > 0) return { kind: 'stepped', tool: name, sizes: sizes.sort((a, b) => b - a) };
  const { smallest, largest } = value;
  if (smallest?.dimension !== dimension) return undefined;
  const most = largest?.dimension === dimension ? largest.value : Number.POSITIVE_INFINITY;
  return { kind: 'continuous', tool: name, step: smallest.value, largest: Math.max(most, smallest.value) };
}

function smallestOf(scale: Scale): number {
  return scale.kind === 'continuous' ? scale.step : (scale.sizes[scale.sizes.length - 1] ?? Number.POSITIVE_INFINITY);
}

/** The nearest amount by one tool alone. */
function nearestBy(scale: Scale, exact: number): readonly Measure[] {
  if (scale.kind === 'continuous') return withContinuous(scale, Math.round(exact / scale.step + slack));
  const least = smallestOf(scale);
  const below = withSizes(scale, exact);
  const left = exact - sum(below);
  return left > least / 2 + slack * exact ? withSizes(scale, sum(below) + least) : below;
}

function withContinuous(scale: Continuous, steps: number): readonly Measure[] {
  const perFilling = Math.max(1, Math.floor(scale.largest / scale.step + slack));
  const full = Math.floor(steps / perFilling);
  // A tool without a largest mark has no end: none of its fillings is full.
  const rest = full === 0 ? steps : steps - full * perFilling;
  return [
    ...(full > 0 ? [{ tool: scale.tool, times: full, amount: perFilling * scale.step, step: scale.step }] : []),
    ...(rest > 0 ? [{ tool: scale.tool, times: 1, amount: rest * scale.step, step: scale.step }] : []),
  ];
}

/** As many of the large sizes as fit, then of the smaller ones. */
function withSizes(scale: Stepped, upTo: number): readonly Measure[] {
  const measures: Measure[] = [];
  let left = upTo;
  for (const size of scale.sizes) {
    const times = Math.floor(left / size + slack);
    if (times === 0) continue;
    measures.push({ tool: scale.tool, times, amount: size });
    left -= times * size;
  }
  return measures;
}

/** The bulk by one tool's whole fillings, the rest by another; undefined where one of them has nothing to fill. */
function bulkAndRest(bulk: Scale, rest: Scale, exact: number): readonly Measure[] | undefined {
  const first =
    bulk.kind === 'stepped' ? withSizes(bulk, exact) : withContinuous(bulk, Math.floor(exact / bulk.step + slack));
  if (first.length === 0) return undefined;
  const left = exact - sum(first);
  const second = left > smallestOf(rest) / 2 ? nearestBy(rest, left) : [];
  return second.length === 0 ? undefined : [...first, ...second];
}

function sum(measures: readonly Measure[]): number {
  return measures.reduce((total, { times, amount }) => total + times * amount, 0);
}

function fillings(measures: readonly Measure[]): number {
  return measures.reduce((total, { times }) => total + times, 0);
}
