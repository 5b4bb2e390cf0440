// What "select more" selects, step by step: a part of a value, the value, the pair, the entry, the section, the file.

import type { Path } from '../../../schema/place.ts';
import { sectionAround } from '../../syntax/address.ts';
import { placeAt } from '../../syntax/cursor.ts';
import { type Document, entryAt, entryIndexAt } from '../../syntax/document.ts';
import { pairRange, rangeOf } from '../../syntax/place.ts';
import type { Range } from '../../syntax/tree.ts';
import { tokensIn } from './tokens.ts';

/** From the smallest to the whole file; each holds the one before it and is larger. */
export function selection(document: Document, offset: number): readonly Range[] {
  const found: Range[] = [];
  const add = (range: Range | undefined): void => {
    if (range === undefined || offset < range.from || range.to < offset || range.from === range.to) return;
    const last = found[found.length - 1];
    if (last !== undefined && !(range.from <= last.from && last.to <= range.to)) return;
    if (last !== undefined && last.from === range.from && last.to === range.to) return;
    found.push(range);
  };
  const cursor = placeAt(document, offset);
  if (cursor === undefined) {
    add(commentAt(document, offset));
  } else {
    const { path, on } = cursor;
    if (on === 'value') {
      const token = tokensIn(document, offset).find(({ range }) => range.from <= offset && offset <= range.to);
      add(token?.range);
      add(rangeOf(document, { path, part: { kind: 'slice', from: 0, to: Number.MAX_SAFE_INTEGER } }));
    } else if (on === 'key') {
      add(rangeOf(document, { path, part: { kind: 'key' } }));
    }
    for (let at: Path = path; at.length > 0; at = at.slice(0, -1)) {
      add(rangeOf(document, { path: at, part: { kind: 'value' } }));
      add(pairRange(document, at));
    }
  }
  add(sectionAt(document, offset));
  add({ from: 0, to: document.length });
  return found;
}

/** The section that is cut into the entries round an offset, its blank lines included. */
function sectionAt(document: Document, offset: number): Range | undefined {
  const around = sectionAround(document, entryIndexAt(document, offset));
  if (around === undefined) return undefined;
  return { from: document.starts[around.head] ?? 0, to: document.starts[around.end] ?? document.length };
}

/** The comment on the line of an offset. */
function commentAt(document: Document, offset: number): Range | undefined {
  const { entry, start } = entryAt(document, offset);
  const at = offset - start;
  const from = entry.text.lastIndexOf('\n', at - 1) + 1;
  const feed = entry.text.indexOf('\n', at);
  const line = entry.text.slice(from, feed === -1 ? entry.text.length : feed);
  const sign = /(?:^|\s)#/.exec(line);
  if (sign === null) return undefined;
  const first = start + from + line.indexOf('#', sign.index);
  return { from: first, to: start + from + line.trimEnd().length };
}
