// How an amount is measured on the bench, in words: which tool, how often, and how far off that is.

import { type Unit, unitOf } from '../../schema/find-unit.ts';
import { convert, type Quantity } from '../../schema/quantity.ts';
import type { Figure } from '../plan/figure.ts';
import type { Measured } from '../plan/measure.ts';
import { amountIn, amountText, type Reader } from './amount.ts';

type Poured = 'volume' | 'mass';

/** `2 × 10 mL and 5 mL with syringe`; undefined where no tool measures it. */
export function measuredText(measured: Measured, dimension: Poured, reader: Reader): string | undefined {
  if (measured.kind !== 'measured') return undefined;
  const byTool = new Map<string, string[]>();
  for (const { tool, times, amount } of measured.with) {
    const size = scaleText({ dimension, value: amount }, reader);
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

/**
 * An amount as it stands on the scale of a tool. For a reader of US units the customary one if it is a whole number of quarters,
 * as on spoons and cups; a syringe is graduated in millilitres and a scale in grams.
 */
export function scaleText(quantity: Quantity<Poured>, reader: Reader): string {
  if (reader === 'metric' || quantity.dimension === 'mass') return amountText(quantity, 'metric');
  const volume: Quantity<'volume'> = { dimension: 'volume', value: quantity.value };
  const unit = customary.find(each => isQuarters(convert(volume, each)));
  return unit === undefined ? amountText(volume, 'metric') : amountIn(volume, unit).replace('_', ' ');
}

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
