// The one place where a quantity becomes text: a unit of a sensible size for the reader, and no more digits than are known.

import type { Dimension } from '../../schema/dimensions.ts';
import { type Unit, type UnitSymbol, unitOf } from '../../schema/find-unit.ts';
import type { Show } from '../../schema/findings.ts';
import { plainNumber } from '../../schema/number.ts';
import { convert, type Quantity } from '../../schema/quantity.ts';
import type { Range } from '../../schema/range.ts';

/** Whose units a reader wants, as a recipe's `show` says. */
export type Reader = 'metric' | 'us';

/**
 * A quantity as the reader reads it: `40 mL`, `2.22 L`, `64.4 °F`, `5.8`. Three significant digits, a fourth only where nothing
 * is rounded away by it; never an exponent, never `-0`. A pH is its number alone.
 */
export function amountText(quantity: Quantity, reader: Reader): string {
  const step = stepFor(quantity, reader);
  return joined(rounded(numberIn(quantity, step), step), step);
}

/** A quantity in one given unit, with the same care for digits: `5.28 gal`. */
export function amountIn<D extends Dimension>(quantity: Quantity<D>, unit: Unit<NoInfer<D>>): string {
  const step: Step = { unit, from: 0, ...(exactness[unit.dimension] ?? {}) };
  return joined(rounded(convert(quantity, unit), step), step);
}

/** An alkalinity as water reports and test kits give it everywhere: `70 mg/L CaCO3`. Other charges go by their milliequivalents. */
export function alkalinityText(alkalinity: Quantity<'charge-per-volume'>): string {
  return amountIn(alkalinity, asCaCO3);
}

const asCaCO3 = unitOf('mg/L CaCO3');

/** How many of a unit a quantity is, without the unit: for tables and lists that name it once. */
export function countIn<D extends Dimension>(quantity: Quantity<D>, unit: Unit<NoInfer<D>>): string {
  const isSolute = unit.symbol === 'mg/L';
  const step: Step = { unit, from: 0, ...(exactness[unit.dimension] ?? {}), ...(isSolute ? { coarse: true } : {}) };
  return numberText(rounded(convert(quantity, unit), step), step);
}

/** A range with one unit for both ends: `1.0..1.6 mS/cm` becomes `1..1.6 mS/cm`. */
export function rangeText({ dimension, low, high }: Range, reader: Reader): string {
  const step = stepFor({ dimension, value: high === 0 ? low : high }, reader);
  const lowest = numberText(rounded(numberIn({ dimension, value: low }, step), step), step);
  return `${lowest}..${joined(rounded(numberIn({ dimension, value: high }, step), step), step)}`;
}

/** How findings show amounts to a reader. */
export function showIn(reader: Reader): Show {
  return { amount: quantity => amountText(quantity, reader) };
}

/** One unit in which a dimension is shown, from so many of it upwards. */
interface Step {
  readonly unit: Unit;
  /** The least number, as rounded, for which this unit is taken. */
  readonly from: number;
  /** Decimals beyond which nothing is known, however small the number. */
  readonly decimals?: number;
  /** Decimals that are shown even where they are zero. */
  readonly always?: number;
  /** How the unit is printed where it is not by its symbol. */
  readonly as?: string;
  /** Three digits even where a fourth would be exact: no analysis of a solution knows more. */
  readonly coarse?: true;
}

type Digits = Pick<Step, 'decimals' | 'always' | 'coarse'>;

const exactness: Partial<Record<Dimension, Digits>> = {
  temperature: { decimals: 1 },
  pH: { decimals: 2, always: 1 },
};

function step(symbol: UnitSymbol, from = 0, as?: string): Step {
  const unit: Unit = unitOf(symbol);
  return { unit, from, ...(exactness[unit.dimension] ?? {}), ...(as === undefined ? {} : { as }) };
}

function solute(symbol: 'mg/L' | 'µg/L', from = 0): Step {
  return { ...step(symbol, from), coarse: true };
}

const plain: Step = {
  unit: {
    symbol: '',
    title: 'number',
    dimension: 'number',
    times: 1,
    over: 1,
    zero: 0,
    system: 'any',
    sources: [],
    rare: false,
  },
  from: 0,
};

type Ladder = readonly [Step, ...Step[]];

/** The units of each dimension, largest first; an amount too small for all of them is shown in the last, and zero in the one from 0. */
const metric: Readonly<Record<Dimension, Ladder>> = {
  volume: [step('L', 1), step('mL')],
  length: [step('m', 10), step('cm', 1), step('mm')],
  area: [step('m2', 1, 'm²'), step('cm2', 0, 'cm²')],
  mass: [step('kg', 1), step('g', 0.1), step('mg')],
  duration: [step('d', 1), step('h', 1), step('min')],
  temperature: [step('°C')],
  conductivity: [step('mS/cm', 0.1), step('µS/cm')],
  fraction: [step('%')],
  'volume-per-volume': [step('mL/L')],
  'mass-per-volume': [step('kg/L', 0.1), step('g/L', 1), solute('mg/L', 0.01), solute('µg/L')],
  'amount-per-volume': [step('mol/L', 1), step('mmol/L', 0.01), step('µmol/L')],
  'charge-per-volume': [step('meq/L')],
  'volume-per-time': [step('L/d', 1), step('mL/d')],
  light: [step('mol/m2/d', 0, 'mol/m²/d')],
  'mass-per-amount': [step('g/mol')],
  number: [plain],
  pH: [step('pH', 0, '')],
};

// A grower in the United States measures small volumes in millilitres and small masses in grams: what customary units are too
// coarse for stays metric.
const us: Readonly<Record<Dimension, Ladder>> = {
  ...metric,
  volume: [step('gal', 1), step('qt', 1), step('fl_oz', 1, 'fl oz'), step('tsp', 0.25), step('mL')],
  length: [step('ft', 10), step('in')],
  area: [step('ft2', 1, 'ft²'), step('in2', 0, 'in²')],
  mass: [step('lb', 1), step('oz', 1), step('g', 0.1), step('mg')],
  temperature: [step('°F')],
  'volume-per-volume': [step('fl_oz/gal', 1, 'fl oz/gal'), step('tsp/gal', 0.25), step('mL/gal')],
  'mass-per-volume': [step('lb/gal', 1), step('g/gal', 2), solute('mg/L', 0.01), solute('µg/L')],
  'volume-per-time': [step('gal/d', 1), step('fl_oz/d', 1, 'fl oz/d'), step('mL/d')],
};

const ladders: Readonly<Record<Reader, Readonly<Record<Dimension, Ladder>>>> = { metric, us };

function stepFor(quantity: Quantity, reader: Reader): Step {
  const ladder = ladders[reader][quantity.dimension];
  // 999.7 mL is 1 L when rounded, so each step looks at its own rounded number.
  const fits = ladder.find(step => step.from <= Math.abs(rounded(numberIn(quantity, step), step)));
  return quantity.value === 0
    ? (zeroIn[quantity.dimension] ?? ladder[ladder.length - 1] ?? ladder[0])
    : (fits ?? ladder[0]);
}

/** Nothing at all is said in the unit in which little is said. */
const zeroIn: Partial<Record<Dimension, Step>> = {
  mass: step('g'),
  conductivity: step('mS/cm'),
  'mass-per-volume': step('mg/L'),
  'amount-per-volume': step('mmol/L'),
  duration: step('d'),
};

function numberIn(quantity: Quantity, { unit }: Step): number {
  return unit.dimension === 'number' ? quantity.value : convert(quantity, unit);
}

/** Three significant digits, or four where that is exact to the noise of computing; never beyond what a step knows. */
function rounded(value: number, { decimals, coarse }: Digits): number {
  if (Math.abs(value) < nothing) return 0;
  const fourth = significant(value, 4);
  const isExact = coarse !== true && Math.abs(fourth - value) <= 1e-9 * Math.abs(value);
  const near = isExact || 1000 <= Math.abs(value) ? fourth : significant(value, 3);
  return decimals === undefined ? near : Number(value.toFixed(decimals));
}

/** A millionth of the smallest unit is what computing leaves over, not an amount. */
const nothing = 1e-6;

function significant(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}

function numberText(value: number, { always }: Digits): string {
  const text = plainNumber(value === 0 ? 0 : value);
  if (always === undefined || (text.split('.')[1]?.length ?? 0) >= always) return text;
  return value.toFixed(always);
}

function joined(value: number, step: Step): string {
  return `${numberText(value, step)} ${step.as ?? step.unit.symbol}`.trimEnd();
}
