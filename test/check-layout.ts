// Checks answers about the shape of a text: what folds, what is selected step by step, what each word is, what links.

import { type Assertion, expect } from 'vitest';
import { folding } from '../server/answers/navigate/folding.ts';
import { links } from '../server/answers/navigate/links.ts';
import { selection } from '../server/answers/navigate/selection.ts';
import { tokens } from '../server/answers/navigate/tokens.ts';
import { textOf } from '../server/syntax/document.ts';
import { positionAt } from '../server/syntax/position.ts';
import { drawRanges } from './draw.ts';
import type { MarkedRecipe } from './recipe.ts';

/** Each line that can fold, with the number of lines it hides. */
export function checkFolding(recipe: MarkedRecipe): Assertion<string> {
  const { document } = recipe.snapshot();
  const lines = textOf(document).split(/\r?\n/u);
  const drawn = folding(document).map(({ kind, range }) => {
    const first = positionAt(document, range.from).line;
    return `${lines[first]} ⋯ ${positionAt(document, range.to).line - first}${kind === 'comment' ? ' comment' : ''}`;
  });
  return expect(drawn.join('\n'));
}

/** One selection a line, line breaks as `⏎`. */
export function checkSelection(recipe: MarkedRecipe): Assertion<string> {
  const { document } = recipe.snapshot();
  const text = textOf(document);
  const found = selection(document, recipe.cursor?.offset ?? 0);
  return expect(found.map(({ from, to }) => text.slice(from, to).replaceAll('\n', '⏎')).join('\n'));
}

/** The text with every token in brackets, the first letters of its kind before it. */
export function checkTokens(recipe: MarkedRecipe): Assertion<string> {
  const { document } = recipe.snapshot();
  const labelled = tokens(document).map(({ kind, range }) => ({ range, label: kind.slice(0, 3) }));
  return expect(drawRanges(textOf(document), labelled));
}

/** Each linked text with its target. */
export function checkLinks(recipe: MarkedRecipe): Assertion<string> {
  const snapshot = recipe.snapshot();
  const text = textOf(snapshot.document);
  return expect(
    links(snapshot)
      .map(({ range, target }) => `${text.slice(range.from, range.to)} → ${target}`)
      .join('\n'),
  );
}
