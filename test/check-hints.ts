// Checks the hints of a recipe, drawn where they stand in the text.

import { type Assertion, expect } from 'vitest';
import { hints } from '../server/answers/hints.ts';
import { textOf } from '../server/syntax/document.ts';
import { drawHints } from './draw.ts';
import type { MarkedRecipe } from './recipe.ts';

/** The text with its hints in place; where the recipe has a selection, those of its lines alone. */
export function checkHints(recipe: MarkedRecipe): Assertion<string> {
  const snapshot = recipe.snapshot();
  const text = textOf(snapshot.document);
  const range = recipe.selection ?? { from: 0, to: text.length };
  return expect(drawHints(text, hints(snapshot, range)));
}
