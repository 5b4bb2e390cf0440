// Checks what completion offers at the cursor of a recipe, and what the text is after one of the offers is taken.

import { expect } from 'vitest';
import { type Completion, completion } from '../server/answers/completion/completion.ts';
import { textOf } from '../server/syntax/document.ts';
import { withChanges } from '../server/syntax/edit.ts';
import type { MarkedRecipe } from './recipe.ts';

/**
 * The offers in their order, one a line: `label | detail`. A last line `…` in `expected` stands for any further ones. Of a first line
 * `«gr»` the text is what is replaced.
 */
export function checkCompletion(recipe: MarkedRecipe, expected: string): void {
  const offers = offersIn(recipe);
  const lines = dedented(expected);
  const isOpen = lines[lines.length - 1] === '…';
  const [first] = offers;
  const replaced =
    first === undefined ? '' : textOf(recipe.snapshot().document).slice(first.replaces.from, first.replaces.to);
  const said = offers.map(({ label, detail }) => ([undefined, ''].includes(detail) ? label : `${label} | ${detail}`));
  const all = lines[0]?.startsWith('«') === true ? [`«${replaced}»`, ...said] : said;
  const shown = isOpen ? [...all.slice(0, lines.length - 1), '…'] : all;
  expect(shown.join('\n')).toBe(lines.join('\n'));
}

/** The labels that are offered. */
export function labelsIn(recipe: MarkedRecipe): readonly string[] {
  return offersIn(recipe).map(({ label }) => label);
}

/** The text after an offer is taken, its snippet as it comes, further lines indented like the first. */
export function checkTaken(recipe: MarkedRecipe, label: string, expected: string): void {
  const offer = offersIn(recipe).find(one => one.label === label);
  if (offer === undefined) throw new Error(`no offer ${label} among ${labelsIn(recipe).join(', ')}`);
  const text = textOf(recipe.snapshot().document);
  const { from, to } = offer.replaces;
  const indent = /^ */u.exec(text.slice(text.lastIndexOf('\n', from - 1) + 1))?.[0] ?? '';
  const put = (offer.snippet ?? offer.text).replaceAll('\n', `\n${indent}`);
  expect(withChanges(text, [{ from, to, text: put }]).trimEnd()).toBe(dedented(expected).join('\n'));
}

export function offersIn(recipe: MarkedRecipe): readonly Completion[] {
  const { cursor } = recipe;
  if (cursor === undefined) throw new Error('a completion wants a cursor, `$0`');
  const offers = completion(recipe.snapshot(), cursor.offset);
  for (const { replaces } of offers) {
    // An editor refuses what does not hold the cursor or runs over a line.
    expect(replaces.from <= cursor.offset && cursor.offset <= replaces.to).toBe(true);
    expect(textOf(recipe.snapshot().document).slice(replaces.from, replaces.to)).not.toContain('\n');
  }
  return offers;
}

/** The lines of a text without the indentation that they share. */
export function dedented(text: string): readonly string[] {
  const lines = text.replace(/^\n/u, '').trimEnd().split('\n');
  const by = Math.min(...lines.filter(line => line.trim() !== '').map(line => line.length - line.trimStart().length));
  return lines.map(line => line.slice(by));
}
