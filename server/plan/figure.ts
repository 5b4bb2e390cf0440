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
}

/** A line of what a formula tells of its inner work: what, how much, in which unit. */
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
  /** The same of one call, where the context tells more: "K from leaf". */
  readonly saysOf: (context: unknown) => string;
  /** The formula itself in the words of its inputs: `dose = rate × volume`. */
  readonly statement: string;
  readonly source: SourceKey;
  readonly gives: Dimension;
  /** The names of its inputs, each with its dimension. */
  readonly takes: Readonly<Record<string, Dimension | readonly [Dimension]>>;
  readonly run: (values: InputValues, context: unknown) => Outcome;
  readonly account: (values: InputValues, context: unknown) => readonly AccountLine[];
}

type InputValues = Readonly<Record<string, number | readonly number[]>>;

/** What an evaluation gives: a number in base units, or why there is none. */
export type Outcome = number | { readonly reason: string };

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
 * numbers in base units, and so does `account`, which is asked when somebody wants to know more. Called with figures, it gives a
 * figure; where an input is unknown, so is the answer, with every want.
 */
export function formula<const T extends Takes, const D extends Dimension, C = void>(is: {
  readonly id: string;
  readonly says: string;
  readonly saysOf?: (context: C) => string;
  readonly statement: string;
  readonly source: SourceKey;
  readonly takes: T;
  readonly gives: D;
  readonly evaluate: (values: Values<T>, context: C) => Outcome;
  readonly account?: (values: Values<T>, context: C) => readonly AccountLine[];
}): Formula<T, D, C> {
  const row: FormulaRow = {
    ...is,
    saysOf: context => is.saysOf?.(context as C) ?? is.says,
    run: (values, context) => is.evaluate(values as Values<T>, context as C),
    account: (values, context) => is.account?.(values as Values<T>, context as C) ?? [],
  };
  const call = (inputs: Inputs<T>, context: C): Figure<D> => {
    const from = inputs as Step['from'];
    const values = valuesOf(from);
    if (values === undefined) return unknown(figuresIn(from).flatMap(wantsOf));
    const value = row.run(values, context);
    if (typeof value === 'object') return unknown([{ says: value.reason, at: firstPlace(from) }]);
    return {
      kind: 'known',
      quantity: { dimension: is.gives, value },
      by: { kind: 'step', formula: row, from, context },
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
  if (wants.length < 2) return { kind: 'unknown', wants };
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
  return figuresIn(step.from);
}

/** What a step gives when it is run again from its inputs: the law is that this is the figure itself. */
export function runAgain(step: Step): Outcome {
  return step.formula.run(knownValues(step), step.context);
}

/** What a step's formula tells of its inner work. */
export function accountOf(step: Step): readonly AccountLine[] {
  return step.formula.account(knownValues(step), step.context);
}

function knownValues({ from, formula: { id } }: Step): InputValues {
  const values = valuesOf(from);
  if (values === undefined) throw new Error(`a step of ${id} with an unknown input`);
  return values;
}

/** The numbers of some inputs; undefined where one is unknown. */
function valuesOf(from: Step['from']): InputValues | undefined {
  const values: Record<string, number | readonly number[]> = {};
  for (const name of Object.keys(from)) {
    const input = from[name] ?? [];
    const value = isMany(input) ? numbersOf(input) : numberOf(input);
    if (value === undefined) return undefined;
    values[name] = value;
  }
  return values;
}

function numbersOf(figures: readonly Figure[]): readonly number[] | undefined {
  const numbers: number[] = [];
  for (const figure of figures) {
    if (figure.kind === 'unknown') return undefined;
    numbers.push(figure.quantity.value);
  }
  return numbers;
}

function figuresIn(from: Step['from']): readonly Figure[] {
  return Object.values(from).flatMap(input => (isMany(input) ? [...input] : [input]));
}

function wantsOf(figure: Figure): readonly Want[] {
  return figure.kind === 'unknown' ? figure.wants : [];
}

function isMany(input: Figure | readonly Figure[]): input is readonly Figure[] {
  return Array.isArray(input);
}

/** Where the first of the written figures stands; found without walking through all of them. */
function firstPlace(from: Step['from']): Place {
  return firstWritten(figuresIn(from)) ?? { path: [], part: { kind: 'value' } };
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
