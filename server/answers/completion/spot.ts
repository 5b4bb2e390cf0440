// What the place of the cursor may take, told from the text and the format: a value, keys, or either of them.

import type { Path } from '../../../schema/place.ts';
import { recipe } from '../../../schema/recipe.ts';
import { schemaAt } from '../../recipe/form.ts';
import type { Cursor } from '../../syntax/cursor.ts';
import type { Range } from '../../syntax/tree.ts';

export interface Spot {
  readonly value?: ValueSpot;
  readonly keys?: KeySpot;
  /** What must stand before whatever is written. */
  readonly lead: string;
}

/** A value may be written here, or a word that stands here goes on being one. */
export interface ValueSpot {
  readonly path: Path;
  readonly replaces: Range;
  readonly typed: string;
  /** What is said by what is typed: without the quote that may stand before it. */
  readonly said: string;
  readonly flow: boolean;
}

/** Keys may be written here. */
export interface KeySpot {
  readonly within: Path;
  readonly present: readonly string[];
  readonly replaces: Range;
  readonly typed: string;
  readonly flow: boolean;
}

/** `before` is the line up to the cursor. */
export function spotOf(cursor: Cursor, before: string): Spot {
  const { on, path, within, present, mayBeKey, replaces, typed, flow } = cursor;
  const value = (at: Path): ValueSpot => ({ path: at, replaces, typed, said: typed.replace(/^["']/, ''), flow });
  const keys = (at: Path, taken: readonly string[]): KeySpot => ({
    within: at,
    present: taken,
    replaces,
    typed,
    flow,
  });
  const beforeWord = before.slice(0, Math.max(0, before.length - typed.length));
  const lead = /[:,]$/.test(beforeWord) || /^\s*(?:- )*-$/.test(beforeWord) ? ' ' : '';
  if (on === 'value') {
    return mayBeKey && !flow ? { value: value(path), keys: keys(path, []), lead } : { value: value(path), lead };
  }
  if (schemaAt(recipe, within)?._zod.def.type !== 'array') return { keys: keys(within, present), lead };
  // An item to come: its number does not matter to what may be written.
  const item = [...within, 0];
  if (flow) return { value: value(item), lead };
  const hasDash = /-\s*$/.test(beforeWord);
  return hasDash ? { value: value(item), keys: keys(item, []), lead } : { value: value(item), lead: '- ' };
}
