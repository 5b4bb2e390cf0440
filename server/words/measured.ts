// How an amount is measured on the bench, in words: which tool, how often, and how far off that is.

import { type Unit, unitOf } from '../../schema/find-unit.ts';
import { convert, type Quantity } from '../../schema/quantity.ts';
import type { AdjustStep } from '../plan/adjust-steps.ts';
import type { Figure } from '../plan/figure.ts';
import type { Measured } from '../plan/measure.ts';
import { amountIn, amountText, type Reader } from './amount.ts';
import { figureText } from './figure.ts';

type Poured = 'volume' | 'mass';

/** `2 × 10 mL and 5 mL with syringe`; undefined where no tool measures it. */
export function measuredText(measured: Measured, dimension: Poured, reader: Reader): string | undefined {
  if (measured.kind !== 'measured') return undefined;
  const byTool = new Map<string, string[]>();
  for (const { tool, times, amount, step } of measured.with) {
    const size = scaleText({ dimension, value: amount }, reader, step);
    byTool.set(tool, [...(byTool.get(tool) ?? []), times === 1 ? size : `${times} × ${size}`]);
  }
  return [...byTool].map(([tool, fillings]) => `${fillings.join(' and ')} with \`${tool}\``).join(', then ');
}

/** `1.5 % too much`, `exactly` where measuring changes nothing that shows; undefined where it is not known. */
export function errorText(error: Figure<'fraction'>, reader: Reader): string | undefined {
  if (error.kind === 'unknown') return undefined;
  const text = amountText(error.quantity, reader);
  if (!isFelt(error)) return 'exactly';
  return text.startsWith('-') ? `${text.slice(1)} too little` : `${text} too much`;
}

/** Whether measuring changes a dose by more than a thousandth. */
export function isFelt(error: Figure<'fraction'>): boolean {
  return error.kind === 'known' && 0.001 <= Math.abs(error.quantity.value);
}

/** What is measured in all: in customary units only where every tool has their marks, so that it adds up as it is read. */
export function measuredAmountText(
  measured: Extract<Measured, { kind: 'measured' }>,
  dimension: Poured,
  reader: Reader,
): string {
  return scaleText({ dimension, value: measured.amount }, hasMetricMarks(measured) ? 'metric' : reader);
}

/** The units in which an adjustment is worked: those of its tools, so that the whole and its steps can be compared. */
export function benchReader(steps: readonly AdjustStep[], reader: Reader): Reader {
  return steps.some(({ measured }) => hasMetricMarks(measured)) ? 'metric' : reader;
}

function hasMetricMarks(measured: Measured): boolean {
  return measured.kind === 'measured' && measured.with.some(({ step }) => step !== undefined && isMetricMark(step));
}

/** What a step of an adjustment adds, as its tools are marked. */
export function stepText({ add, measured }: AdjustStep, reader: Reader): string {
  if (add.kind === 'unknown' || measured.kind !== 'measured') return figureText(add, reader);
  return measuredAmountText(measured, add.quantity.dimension, reader);
}

/**
 * An amount as it stands on a tool. For a reader of US units the customary one if it is a whole number of quarters, as on spoons and
 * cups; but in millilitres on a scale whose finest `step` (in litres) is one of those that such scales have, and in grams always.
 */
export function scaleText(quantity: Quantity<Poured>, reader: Reader, step?: number): string {
  const isMetric = reader === 'metric' || (step !== undefined && isMetricMark(step));
  if (isMetric || quantity.dimension === 'mass') return amountText(quantity, 'metric');
  const volume: Quantity<'volume'> = { dimension: 'volume', value: quantity.value };
  const unit = customary.find(each => isQuarters(convert(volume, each)));
  return unit === undefined ? amountText(volume, 'metric') : amountIn(volume, unit).replace('_', ' ');
}

/** Syringes, cylinders and jugs are graduated in 1, 2, 2.5 or 5 millilitres, tens or tenths of them (common practice). */
function isMetricMark(step: number): boolean {
  const [digits] = (step * 1000).toExponential(6).split('e');
  return metricMarks.includes(Number(digits));
}

const metricMarks: readonly number[] = [1, 2, 2.5, 5];

const customary: readonly Unit<'volume'>[] = [
  unitOf('gal'),
  unitOf('qt'),
  unitOf('cup'),
  unitOf('fl_oz'),
  unitOf('tbsp'),
  unitOf('tsp'),
];

function isQuarters(count: number): boolean {
  return 0.2 < count && Math.abs(count * 4 - Math.round(count * 4)) < 1e-6;
}
