// The lines of a plan as text: a label in a column of fixed width and what is said of it. The width does not depend on other
// lines, so that a change in one place changes one line of a comparison.

import type { Quantity } from '../../../schema/quantity.ts';
import type { Figure } from '../../plan/figure.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { knownText, pathText } from '../../words/figure.ts';
import { padded, printable } from '../print/terminal.ts';

export type Lines = readonly string[];

/** One fact on one line: `  water         mains`. */
export function row(label: string, fact: string, depth = 1): string {
  const indent = '  '.repeat(depth);
  return `${padded(`${indent}${printable(label)}`, labelWidth)}  ${printable(fact)}`.trimEnd();
}

const labelWidth = 18;

/** A block with a heading, or nothing where it has no lines. */
export function block(heading: string, lines: Lines): Lines {
  return lines.length === 0 ? [] : ['', `  ${heading}`, ...lines];
}

/** A figure as the reader reads it, or what is missing for it. */
export function figureText(figure: Figure, reader: Reader): string {
  return figure.kind === 'known' ? knownText(figure, reader) : `not known: ${missingText(figure.wants)}`;
}

/** `the density of green (feeds › green › density)`, and so on. */
export function missingText(
  wants: readonly { readonly says: string; readonly at: { readonly path: readonly (string | number)[] } }[],
): string {
  return wants.map(({ says, at }) => (at.path.length === 0 ? says : `${says} (${pathText(at.path)})`)).join(', ');
}

/** A number of litres or grams, whichever the dose counts, as the reader reads it. */
export function amountOf(value: number, dimension: Quantity['dimension'], reader: Reader): string {
  return amountText({ dimension, value }, reader);
}
