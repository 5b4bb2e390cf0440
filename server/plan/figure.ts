// A figure is a number that knows where it came from, or a gap that knows what is missing. A formula is called like a
// function, and the call is the record: what a hover explains is the very step that ran.

import type { Dimension } from '../../schema/dimensions.ts';
import type { Place } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import type { SourceKey } from '../../schema/sources.ts';

export type Figure<D extends Dimension = Dimension> = Known<D> | Unknown;

export interface Known<D extends Dimension = Dimension> {
  readonly kind: 'known';
  readonly quantity: Quantity<D>;
  readonly by: Origin;
}

/** A number that cannot be had, and the places or reasons that stand in its way. */
export interface Unknown {
  readonly kind: 'unknown';
  readonly wants: readonly Want[];
}

/** What is missing, in words, and where it would be written. */
export interface Want {
  readonly says: string;
  readonly at: Place;
}

export type Origin =
  /** It stands in the recipe. */
  | { readonly kind: 'given'; readonly at: Place }
  /** It is taken as such where the recipe is silent. */
  | { readonly kind: 'assumed'; readonly says: string; readonly source: SourceKey }
  /** A formula gave it. */
  | Step;

export interface Step {
  readonly kind: 'step';
  readonly formula: FormulaRow;
  readonly from: Readonly<Record<string, Figure | readonly Figure[]>>;
  /** What the formula was told beside its figures, such as a composition; plain data. */
  readonly context: unknown;
  /** What a solver reports of its inner work. */
  readonly account: readonly AccountLine[];
}

/** A line of a solver's account: what, how much, in which unit. */
export interface AccountLine {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
}

/** What a formula is, for pages, hovers and laws. */
export interface FormulaRow {
  readonly id: string;
  /** What it gives, as a phrase: "the dose for the whole batch". */
  readonly says: string;
  /** The formula itself in the words of its inputs: `dose = rate × volume`. */
  readonly statement: string;
  readonly source: SourceKey;
  readonly gives: Dimension;
  /** The names of its inputs, each with its dimension. */
  readonly takes: Readonly<Record<string, Dimension | readonly [Dimension]>>;
  readonly run: (values: Readonly<Record<string, number | readonly number[]>>, context: unknown) => Outcome;
}

/** What an evaluation gives: a number in base units, a number with the solver's account, or why there is none. */
export type Outcome =
  | number
  | { readonly value: number; readonly account: readonly AccountLine[] }
  | { readonly reason: string };

type Takes = Readonly<Record<string, Dimension | readonly [Dimension]>>;

type Inputs<T extends Takes> = {
  readonly [K in keyof T]: T[K] extends readonly [infer D extends Dimension]
    ? readonly Figure<D>[]
    : T[K] extends Dimension
      ? Figure<T[K]>
      : never;
};

type Values<T extends Takes> = {
  readonly [K in keyof T]: T[K] extends readonly [Dimension] ? readonly number[] : number;
};

export interface Formula<T extends Takes, D extends Dimension, C> {
  (inputs: Inputs<T>, context: C): Figure<D>;
  readonly row: FormulaRow;
}

/**
 * Declares a formula. `takes` names its inputs with their dimensions (in brackets: as many as there are), `evaluate` sees plain
 * numbers in base units. Called with figures, it gives a figure; where an input is unknown, so is the answer, with every want.
 */
export function formula<const T extends Takes, const D extends Dimension, C = void>(is: {
  readonly id: string;
  readonly says: string;
  readonly statement: string;
  readonly source: SourceKey;
  readonly takes: T;
  readonly gives: D;
  readonly evaluate: (values: Values<T>, context: C) => Outcome;
}): Formula<T, D, C> {
  const row: FormulaRow = { ...is, run: (values, context) => is.evaluate(values as Values<T>, context as C) };
  const call = (inputs: Inputs<T>, context: C): Figure<D> => {
    const from = inputs as Readonly<Record<string, Figure | readonly Figure[]>>;
    const values: Record<string, number | readonly number[]> = {};
    const wants: Want[] = [];
    for (const [name, input] of Object.entries(from)) {
      if (isMany(input)) values[name] = input.map(figure => valueOr(figure, wants));
      else values[name] = valueOr(input, wants);
    }
    if (wants.length > 0) return unknown(wants);
    const outcome = row.run(values, context);
    if (typeof outcome === 'object' && 'reason' in outcome) {
      return unknown([{ says: outcome.reason, at: firstPlace(from) }]);
    }
    const value = typeof outcome === 'number' ? outcome : outcome.value;
    const account = typeof outcome === 'number' ? [] : outcome.account;
    return {
      kind: 'known',
      quantity: { dimension: is.gives, value },
      by: { kind: 'step', formula: row, from, context, account },
    };
  };
  return Object.assign(call, { row });
}

/** A figure that stands in the recipe. */
export function given<D extends Dimension>(quantity: Quantity<D>, at: Place): Known<D> {
  return { kind: 'known', quantity, by: { kind: 'given', at } };
}

/** A written figure, or the want of it where it is not written. */
export function givenOr<D extends Dimension>(quantity: Quantity<D> | undefined, at: Place, says: string): Figure<D> {
  return quantity === undefined ? unknown([{ says, at }]) : given(quantity, at);
}

/** A figure taken where the recipe is silent. */
export function assumed<D extends Dimension>(quantity: Quantity<D>, says: string, source: SourceKey): Known<D> {
  return { kind: 'known', quantity, by: { kind: 'assumed', says, source } };
}

/** A gap, with what would close it; equal wants are said once. */
export function unknown(wants: readonly Want[]): Unknown {
  const seen = new Map(wants.map(want => [`${want.at.file ?? ''}/${want.at.path.join('/')}/${want.says}`, want]));
  return { kind: 'unknown', wants: [...seen.values()] };
}

/** The number in base units, or undefined where it is unknown. */
export function numberOf(figure: Figure | undefined): number | undefined {
  return figure?.kind === 'known' ? figure.quantity.value : undefined;
}

/** Every step that led to a figure, itself first, each once. */
export function stepsOf(figure: Figure): readonly Step[] {
  const steps = new Set<Step>();
  const visit = (at: Figure): void => {
    if (at.kind === 'unknown' || at.by.kind !== 'step' || steps.has(at.by)) return;
    steps.add(at.by);
    for (const input of inputsOf(at.by)) visit(input);
  };
  visit(figure);
  return [...steps];
}

/** The figures a step was called with, in order. */
export function inputsOf(step: Step): readonly Figure[] {
  return Object.values(step.from).flatMap(input => (isMany(input) ? [...input] : [input]));
}

/** What a step gives when it is run again from its inputs: the law is that this is the figure itself. */
export function runAgain(step: Step): Outcome {
  const values: Record<string, number | readonly number[]> = {};
  for (const [name, input] of Object.entries(step.from)) {
    values[name] = isMany(input)
      ? input.map(figure => numberOf(figure) ?? Number.NaN)
      : (numberOf(input) ?? Number.NaN);
  }
  return step.formula.run(values, step.context);
}

function isMany(input: Figure | readonly Figure[]): input is readonly Figure[] {
  return Array.isArray(input);
}

function valueOr(figure: Figure, wants: Want[]): number {
  if (figure.kind === 'known') return figure.quantity.value;
  wants.push(...figure.wants);
  return 0;
}

/** Where the first of the written figures stands; found without walking through all of them. */
function firstPlace(from: Readonly<Record<string, Figure | readonly Figure[]>>): Place {
  const inputs = Object.values(from).flatMap(input => (isMany(input) ? [...input] : [input]));
  return firstWritten(inputs) ?? { path: [], part: { kind: 'value' } };
}

function firstWritten(figures: readonly Figure[]): Place | undefined {
  for (const figure of figures) {
    const found =
      figure.kind === 'unknown'
        ? figure.wants[0]?.at
        : figure.by.kind === 'given'
          ? figure.by.at
          : figure.by.kind === 'step'
            ? firstWritten(inputsOf(figure.by))
            : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The written places that a figure rests on, in the order in which they were used. */
export function writtenPlaces(figure: Figure): readonly Place[] {
  if (figure.kind === 'unknown') return figure.wants.map(want => want.at);
  if (figure.by.kind === 'given') return [figure.by.at];
  return figure.by.kind === 'step' ? inputsOf(figure.by).flatMap(writtenPlaces) : [];
}
