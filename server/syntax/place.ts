// Place -> range. The one door from what a recipe means back to where it is written.

import type { Part, Path, Place } from '../../schema/place.ts';
import { type Found, find, shifted } from './address.ts';
import type { Document } from './document.ts';
import { sliceRange } from './slice.ts';
import type { Range } from './tree.ts';

/**
 * Where a place is written, counted from the start of the file; undefined where nothing stands at its path. The value of
 * a key without one is the empty range behind its colon; the key of a list item is the item.
 */
export function rangeOf(document: Document, place: Pick<Place, 'path' | 'part'>): Range | undefined {
  const { path, part } = place;
  const found = find(document, path, part.kind === 'key' ? part.nth : 0);
  if (found === undefined) return undefined;
  if (part.kind === 'key' && found.pair !== undefined) return shifted(found.pair.key.range, found.start);
  if (part.kind === 'slice' && found.tree.kind === 'scalar') {
    return shifted(sliceRange(found.entry.text, found.tree, part.from, part.to), found.start);
  }
  return valueRange(document, found, path.length === 0);
}

/**
 * A range to show for a place even where nothing is written there: the key of the nearest map above it that is, or the
 * file's first line. Never empty, unless the file is.
 */
export function nearestRange(document: Document, place: Pick<Place, 'path' | 'part'>): Range {
  const exact = rangeOf(document, place);
  if (exact !== undefined && exact.to > exact.from) return exact;
  for (let path: Path = place.path; path.length > 0; path = path.slice(0, -1)) {
    const key = rangeOf(document, { path, part: keyPart });
    if (key !== undefined && key.to > key.from) return key;
  }
  const text = document.entries[0]?.text ?? '';
  const feed = text.search(/\r?\n/);
  const to = feed > 0 ? feed : text.length;
  return { from: text.startsWith('\uFEFF') && to > 1 ? 1 : 0, to };
}

/** From the key of a pair to the end of its value; of a list item, the item. */
export function pairRange(document: Document, path: Path, nth = 0): Range | undefined {
  const found = find(document, path, nth);
  if (found === undefined) return undefined;
  const value = valueRange(document, found, path.length === 0);
  if (found.pair === undefined) return value;
  const key = shifted(found.pair.key.range, found.start);
  return { from: key.from, to: Math.max(key.to, value.to) };
}

const keyPart: Part = { kind: 'key' };

function valueRange(document: Document, found: Found, top: boolean): Range {
  if (top) return { from: 0, to: document.length };
  if (found.childrenEnd === undefined) return shifted(found.tree.range, found.start);
  const first = document.entries[found.index + 1];
  const last = document.entries[found.childrenEnd - 1];
  if (first === undefined || last === undefined) return shifted(found.tree.range, found.start);
  const from = (document.starts[found.index + 1] ?? 0) + first.tree.range.from;
  return { from, to: Math.max(from, (document.starts[found.childrenEnd - 1] ?? 0) + last.tree.range.to) };
}
