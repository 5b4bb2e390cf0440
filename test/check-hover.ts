// Checks what a hover says, as it looks in the editor: the line, what is underlined, and the text without its markup.

import { type Assertion, expect } from 'vitest';
import { hover } from '../server/answers/hover/hover.ts';
import { textOf } from '../server/syntax/document.ts';
import { drawAtCursor, drawMarkdown } from './draw.ts';
import type { MarkedRecipe } from './recipe.ts';

/** The hover at the cursor, to be compared with an inline snapshot. */
export function checkHover(recipe: MarkedRecipe): Assertion<string> {
  const { cursor } = recipe;
  if (cursor === undefined) throw new Error('no `$0` in the recipe');
  const snapshot = recipe.snapshot();
  const text = textOf(snapshot.document);
  const found = hover(snapshot, cursor.offset);
  if (found === undefined) return expect(drawAtCursor(text, cursor.offset, { from: 0, to: 0 }, 'nothing'));
  return expect(drawAtCursor(text, cursor.offset, found.range, drawMarkdown(found.markdown)));
}
