// A figure's explanation: what it is, the formula with the numbers in place, where each number comes from, and the source. First
// as data, so that hovers, `explain` and pages can each print it; then as markdown. Every number printed is one of the figure's.

import { findUnit } from '../../schema/find-unit.ts';
import type { Path, Place } from '../../schema/place.ts';
import { fromUnit } from '../../schema/quantity.ts';
import { type SourceKey, sources } from '../../schema/sources.ts';
import { type AccountLine, accountOf, type Figure, inputsOf, type Known, type Step, stepsOf } from '../plan/figure.ts';
import { alkalinityText, amountText, type Reader } from './amount.ts';

export type Explanation =
  | {
      readonly kind: 'known';
      readonly amount: string;
      /** What it is, as a phrase; of a written or assumed figure, where it comes from. */
      readonly says: string;
      /** The formula with the numbers in place; only of what a formula gave. */
      readonly statement?: string;
      readonly inputs: readonly InputLine[];
      /** What the computing reports of its inner work. */
      readonly account: readonly { readonly what: string; readonly amount: string }[];
      /** The title of the publication. */
      readonly source?: string;
    }
  | { readonly kind: 'unknown'; readonly wants: readonly { readonly says: string; readonly at: Place }[] };

export interface InputLine {
  readonly name: string;
  readonly amount: string;
  /** Where it is written; undefined for what is assumed or computed. */
  readonly at?: Place;
  /** What it is, where it is not written: `assumed: room left to stir`, or what a formula gave. */
  readonly says?: string;
}

/** One level of a figure's derivation. */
export function explain(figure: Figure, reader: Reader): Explanation {
  if (figure.kind === 'unknown') return { kind: 'unknown', wants: figure.wants };
  const amount = knownText(figure, reader);
  const { by } = figure;
  if (by.kind === 'given') return { kind: 'known', amount, says: whereText(by.at), inputs: [], account: [] };
  if (by.kind === 'assumed') {
    const says = `assumed: ${by.says}`;
    return { kind: 'known', amount, says, inputs: [], account: [], source: sources[by.source].title };
  }
  return {
    kind: 'known',
    amount,
    says: by.formula.saysOf(by.context),
    statement: statementText(by, amount, reader),
    inputs: linesOf(by, reader),
    account: accountOf(by).map(line => ({ what: line.what, amount: accountAmount(line, reader) })),
    source: sources[by.formula.source].title,
  };
}

/** An explanation as markdown: the statement, then a line for each input and for each line of the account. */
export function explanationText(figure: Figure, reader: Reader): string {
  const explained = explain(figure, reader);
  if (explained.kind === 'unknown') return wantsText(explained.wants);
  const { statement, inputs, account } = explained;
  if (statement === undefined) return `${explained.amount}: ${explained.says}`;
  const lines = [...inputs.map(inputText), ...account.map(({ what, amount }) => `${what}: ${amount}`)];
  const more = lines.length > mostLines ? [`- and ${lines.length - mostLines} more`] : [];
  return [`\`${statement}\``, '', ...lines.slice(0, mostLines).map(line => `- ${line}`), ...more].join('\n');
}

/** A list that is longer than this is read nowhere but in `explain`. */
const mostLines = 12;

/** Every publication that some figures rest on, in one line of markdown; undefined where they rest on none. */
export function sourcesText(figures: Iterable<Figure>): string | undefined {
  const keys = new Set([...figures].flatMap(stepsOf).flatMap(sourcesOf));
  return keys.size === 0 ? undefined : `*${[...keys].map(key => sources[key].title).join(' · ')}*`;
}

function sourcesOf(step: Step): readonly SourceKey[] {
  const taken = inputsOf(step).flatMap(input =>
    input.kind === 'known' && input.by.kind === 'assumed' ? [input.by.source] : [],
  );
  return [step.formula.source, ...taken];
}

/** A figure's amount, or `?` where it is not known. */
export function figureText(figure: Figure, reader: Reader): string {
  return figure.kind === 'known' ? knownText(figure, reader) : '?';
}

/** The amount of a figure, in the unit that its kind of number goes by. */
export function knownText({ quantity, by }: Known, reader: Reader): string {
  const isAlkalinity = quantity.dimension === 'charge-per-volume' && nameOf(by) === 'alkalinity';
  return isAlkalinity
    ? alkalinityText({ dimension: 'charge-per-volume', value: quantity.value })
    : amountText(quantity, reader);
}

/** What a number is called: by the key that it is written under, or on the left side of its formula. */
function nameOf(by: Known['by']): string | undefined {
  if (by.kind === 'given') return String(by.at.path.at(-1));
  return by.kind === 'step' ? /^[^=]+(?= = )/u.exec(by.formula.statement)?.[0] : undefined;
}

/** What is missing for a figure to be known: `Not known: the density of green (feeds › green › density).` */
export function wantsText(wants: readonly { readonly says: string; readonly at: Place }[]): string {
  const said = wants.map(({ says, at }) => (at.path.length === 0 ? says : `${says} (${pathText(at.path)})`));
  return `Not known yet; missing: ${said.join(', ')}.`;
}

/** A place as a person reads it: `batches › opening › volume`, with its file where it is another one. */
export function whereText({ path, file }: Place): string {
  const way = pathText(path);
  return file === undefined ? way : `${way} in ${decodeURIComponent(file.slice(file.lastIndexOf('/') + 1))}`;
}

/** A path as a person reads it; items of lists count from 1. */
export function pathText(path: Path): string {
  return path.map(key => (typeof key === 'number' ? `no. ${key + 1}` : key)).join(' › ');
}

function inputText({ name, amount, at, says }: InputLine): string {
  const from = at === undefined ? says : whereText(at);
  return from === undefined || from === '' ? `${name}: ${amount}` : `${name}: ${amount}, ${from}`;
}

/** The figures that a step was given, each once, by the names of its formula. */
function linesOf(step: Step, reader: Reader): readonly InputLine[] {
  return Object.entries(step.from).flatMap(([name, input]) => {
    const figures = 'kind' in input ? [input] : input;
    return figures.flatMap(figure => (figure.kind === 'known' ? [lineOf(spelled(name), figure, reader)] : []));
  });
}

function lineOf(name: string, figure: Known, reader: Reader): InputLine {
  const { by } = figure;
  const amount = knownText(figure, reader);
  if (by.kind === 'given') return { name, amount, at: by.at };
  return { name, amount, says: by.kind === 'assumed' ? `assumed: ${by.says}` : by.formula.saysOf(by.context) };
}

/**
 * A formula's statement with amounts in place of the names on its right side, and what it gives behind it. What a solver does is
 * told in words, so that amounts stand in it only where it names an input.
 */
function statementText(step: Step, amount: string, reader: Reader): string {
  const { statement } = step.formula;
  const gives = /^(?!.*\bwhere\b)[^=]+ = /u.exec(statement)?.[0] ?? '';
  const inPlace = new Map<string, string>();
  for (const [name, input] of Object.entries(step.from)) {
    const figures = 'kind' in input ? [input] : input;
    const amounts = figures.flatMap(figure => (figure.kind === 'known' ? [knownText(figure, reader)] : []));
    const word = spelled(name);
    if ('kind' in input) inPlace.set(word, amounts[0] ?? word);
    else inPlace.set(`sum of the ${word}`, amounts.length > 1 ? `(${amounts.join(' + ')})` : (amounts[0] ?? word));
  }
  for (const line of accountOf(step)) inPlace.set(line.what, accountAmount(line, reader));
  const words = [...inPlace.keys()].sort((a, b) => b.length - a.length).map(escaped);
  const pattern = new RegExp(`(?<![\\p{L}-])(?:${words.join('|')})(?![\\p{L}-])`, 'gu');
  const right = statement.slice(gives.length).replace(pattern, word => inPlace.get(word) ?? word);
  return gives === '' ? `${right}: ${amount}` : `${gives}${withoutOuterBrackets(right)} = ${amount}`;
}

/** `molarMass` as a statement spells it: `molar mass`; `pH` and `EC` stay what they are. */
function spelled(name: string): string {
  return name.replace(/(?<=\p{Ll})\p{Lu}(?=\p{Ll})/gu, letter => ` ${letter.toLowerCase()}`);
}

function escaped(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&');
}

function withoutOuterBrackets(text: string): string {
  return /^\([^()]*\)$/u.test(text) ? text.slice(1, -1) : text;
}

function accountAmount({ value, unit }: AccountLine, reader: Reader): string {
  const found = findUnit(unit);
  const quantity = found.kind === 'found' ? fromUnit(value, found.unit) : ({ dimension: 'number', value } as const);
  const text = amountText(quantity, reader);
  return found.kind === 'found' ? text : `${text} ${unit}`.trimEnd();
}
