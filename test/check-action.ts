// Checks what can be done at the cursor or selection of a recipe, and the text after it is done.

import { expect } from 'vitest';
import { type Action, actions } from '../server/answers/actions/actions.ts';
import { textOf } from '../server/syntax/document.ts';
import { withChanges } from '../server/syntax/edit.ts';
import { dedented } from './check-completion.ts';
import type { MarkedRecipe } from './recipe.ts';

/** The text of the file after the action of a title is taken. Lines of carets in the recipe stay, they are comments. */
export function checkAction(recipe: MarkedRecipe, title: string, expected: string): void {
  const action = actionsIn(recipe).find(one => one.title === title);
  if (action === undefined) throw new Error(`no action “${title}” among ${titlesIn(recipe).join(' · ')}`);
  const text = textOf(recipe.snapshot().document);
  expect(withChanges(text, action.edits).trimEnd()).toBe(dedented(expected).join('\n'));
}

/** The titles of the actions, those for the whole file left out. */
export function titlesIn(recipe: MarkedRecipe): readonly string[] {
  return actionsIn(recipe).flatMap(({ kind, title }) => (kind === 'fix-all' ? [] : [title]));
}

export function actionsIn(recipe: MarkedRecipe): readonly Action[] {
  const { cursor, selection } = recipe;
  if (cursor === undefined) throw new Error('an action wants a cursor, `$0`');
  return actions(recipe.snapshot(), selection ?? { from: cursor.offset, to: cursor.offset });
}
