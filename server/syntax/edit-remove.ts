// What goes when a pair or an item is taken out: its lines where it has lines of its own, with a comma where it shares
// them.

import type { Path } from '../../schema/place.ts';
import { find } from './address.ts';
import { type Document, entryIndexAt, type TextChange, textOf } from './document.ts';
import { lineStart } from './line.ts';
import { pairRange } from './place.ts';
import type { Range, Tree } from './tree.ts';

/** Takes out the pair or item at a path; undefined where none is. */
export function removePart(document: Document, path: Path, nth?: number): TextChange | undefined {
  const range = pairRange(document, path, nth);
  const found = find(document, path, nth);
  if (range === undefined || found === undefined || path.length === 0) return undefined;
  const parent = find(document, path.slice(0, -1));
  if (parent === undefined) return undefined;
  const siblings = siblingsOf(parent.tree).map(one => ({ from: one.from + parent.start, to: one.to + parent.start }));
  const at = siblings.findIndex(one => one.from === range.from);
  const before = siblings[at - 1];
  const after = at === -1 ? undefined : siblings[at + 1];
  const { tree } = parent;
  if ((tree.kind === 'map' || tree.kind === 'list') && tree.flow) {
    return cut(inBraces(textOf(document), range, before, after, parent.start + tree.range.from));
  }
  const from = found.pair === undefined ? dashBefore(document, range.from) : range.from;
  const next = after && (found.pair === undefined ? dashBefore(document, after.from) : after.from);
  return cut(withLines(document, { from, to: range.to }, next));
}

function cut(range: Range): TextChange {
  return { ...range, text: '' };
}

function siblingsOf(tree: Tree): readonly Range[] {
  if (tree.kind === 'list') return tree.items.map(item => item.range);
  if (tree.kind !== 'map') return [];
  return tree.pairs.map(({ key, value }) => ({ from: key.range.from, to: Math.max(key.range.to, value.range.to) }));
}

function inBraces(
  text: string,
  range: Range,
  before: Range | undefined,
  after: Range | undefined,
  open: number,
): Range {
  if (after !== undefined) return { from: range.from, to: after.from };
  if (before !== undefined) return { from: before.to, to: range.to };
  // The only one: the spaces that padded it go too, and a comma behind it.
  const close = /^[ \t]*,?[ \t]*/.exec(text.slice(range.to))?.[0].length ?? 0;
  const padded = text.slice(open + 1, range.from).trim() === '';
  return { from: padded ? open + 1 : range.from, to: range.to + close };
}

/** Whole lines, or up to the next sibling where a dash stands before it on its line. */
function withLines(document: Document, range: Range, next: number | undefined): Range {
  const index = entryIndexAt(document, range.from);
  const start = document.starts[index] ?? 0;
  const text = document.entries[index]?.text ?? '';
  const line = start + lineStart(text, range.from - start);
  const lead = text.slice(line - start, range.from - start);
  if (!/^\uFEFF? *(?:\? +|[&!]\S+ +)*$/.test(lead)) return { from: range.from, to: next ?? range.to };
  const from = lead.startsWith('\uFEFF') ? line + 1 : line;
  const endIndex = entryIndexAt(document, range.to);
  const endText = document.entries[endIndex]?.text ?? '';
  const feed = endText.indexOf('\n', range.to - (document.starts[endIndex] ?? 0));
  const whole = textOf(document);
  const below = behindComments(
    whole,
    feed === -1 ? document.length : (document.starts[endIndex] ?? 0) + feed + 1,
    range.from - from,
  );
  const to = keepsBlankLines(whole, from) ? behindBlankLines(whole, below) : below;
  if (to < whole.length || whole.endsWith('\n')) return { from, to };
  // The last line of a file without a final line break: the one before it goes, so that the file still has none.
  const back = whole[from - 1] !== '\n' ? 0 : whole[from - 2] === '\r' ? 2 : 1;
  // Behind a blank line it stays: blank lines may belong to the text above them.
  return { from: whole[from - back - 1] === '\n' ? from : from - back, to };
}

/** Behind the comments that stand deeper than what is taken out: left alone they could become part of a text above. */
function behindComments(text: string, from: number, indent: number): number {
  const comment = /(?:[ \t]*\r?\n)*( +)#[^\n]*(?:\n|$)/y;
  let to = from;
  for (;;) {
    comment.lastIndex = to;
    const found = comment.exec(text);
    if (found === null || (found[1]?.length ?? 0) <= indent) return to;
    to += found[0].length;
  }
}

/** Whether a block text that keeps its last blank lines (`|+`) may end above: blank lines left below would become its own. */
function keepsBlankLines(text: string, from: number): boolean {
  return /[|>]\d?\+|[|>]\+\d?/.test(text.slice(0, from));
}

function behindBlankLines(text: string, from: number): number {
  return from + (/^(?:[ \t]*\r?\n)*/.exec(text.slice(from))?.[0].length ?? 0);
}

/** The dash of a block list's item that begins at an offset, or the offset where none is found. */
function dashBefore(document: Document, offset: number): number {
  const index = entryIndexAt(document, Math.max(0, offset - 1));
  const start = document.starts[index] ?? 0;
  const text = document.entries[index]?.text ?? '';
  for (let at = offset - start - 1; at >= 0; at--) {
    at = text.lastIndexOf('-', at);
    if (at === -1) break;
    const between = text.slice(at + 1, offset - start);
    const bare = between.replaceAll(/(^|\s)#[^\n]*/g, '$1').replaceAll(/(^|\s)[&!]\S*/g, '$1');
    if (/^(?:\s|$)/.test(between) && bare.trim() === '') return start + at;
  }
  return offset;
}
