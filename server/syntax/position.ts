// Offsets <-> lines and columns, in the units an editor asks for. Apart from the document, because columns are the
// editor's business: everything else counts UTF-16 units from the start.

import { type Document, entryIndexAt, lastNotAbove } from './document.ts';

/** Lines count from 0 and end with LF or CRLF; a lone CR ends none. Columns count from 0 in the encoding's units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export type Encoding = 'utf-8' | 'utf-16' | 'utf-32';

/** Where an offset stands. Offsets past the end stand at the end. */
export function positionAt(document: Document, offset: number, encoding: Encoding = 'utf-16'): Position {
  const at = Math.max(0, Math.min(offset, document.length));
  const index = entryIndexAt(document, at);
  const entry = document.entries[index];
  if (entry === undefined) return { line: 0, character: 0 };
  const within = at - (document.starts[index] ?? 0);
  const line = lastNotAbove(entry.lines, within);
  const before = entry.text.slice(entry.lines[line] ?? 0, within);
  return { line: (document.firstLines[index] ?? 0) + line, character: unitsIn(before, encoding) };
}

/**
 * The offset of a position. A column past the line's end stands before its line break, a line past the last one at the
 * end of the file, a column inside a character before that character.
 */
export function offsetAt(document: Document, position: Position, encoding: Encoding = 'utf-16'): number {
  if (position.line < 0) return 0;
  const index = lastNotAbove(document.firstLines, position.line);
  const entry = document.entries[index];
  if (entry === undefined) return 0;
  const start = document.starts[index] ?? 0;
  const from = entry.lines[position.line - (document.firstLines[index] ?? 0)];
  if (from === undefined) return document.length;
  const feed = entry.text.indexOf('\n', from);
  const end = feed === -1 ? entry.text.length : feed > from && entry.text[feed - 1] === '\r' ? feed - 1 : feed;
  return start + from + offsetOfUnits(entry.text.slice(from, end), position.character, encoding);
}

function unitsIn(text: string, encoding: Encoding): number {
  if (encoding === 'utf-16') return text.length;
  let units = 0;
  for (const character of text) units += widthOf(character, encoding);
  return units;
}

function offsetOfUnits(text: string, units: number, encoding: Encoding): number {
  let left = units;
  let offset = 0;
  for (const character of text) {
    left -= widthOf(character, encoding);
    if (left < 0) return offset;
    offset += character.length;
  }
  return offset;
}

/** Lone surrogates count as the replacement character they are sent as. */
function widthOf(character: string, encoding: Encoding): number {
  if (encoding === 'utf-16') return character.length;
  if (encoding === 'utf-32') return 1;
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
