// Where a file may be cut into entries, and when it may not. This scan of lines is the definition of what an entry is:
// a broken quote or brace harms the entry it stands in and no other, and an edit has only its own entries read anew.

import { type Line, readLine } from './line.ts';
import type { SyntaxNote } from './note.ts';

/** One piece of a file, before it becomes an entry. The pieces of a file joined are the file. */
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly cut: Cut;
  /** Line feeds in it. */
  readonly breaks: number;
}

/** What a piece is, and what the scan must remember to go on after it. */
export interface Cut {
  /**
   * `piece`: one or more pairs of the top level. `head`: the bare key of a section whose children follow as entries.
   * `child`: one pair or item of a section. `whole`: the file was not cut.
   */
  readonly role: 'piece' | 'head' | 'child' | 'whole';
  /** The name of the section a head opens or a child belongs to. */
  readonly section?: string;
  /** Of a child: where its first line stands. */
  readonly indent: number;
  /** Of a child: an item of a list rather than a pair of a map. */
  readonly item: boolean;
  /** Its first line is a key with a colon or an item, not half a key as one types it. */
  readonly sure: boolean;
  /** Of a whole file that is not read at all: why. */
  readonly refused?: SyntaxNote;
}

/** Where the scan stands between two lines. */
export type ScanState =
  /** Nothing but comments yet. */
  | { readonly at: 'start' }
  /** In a piece of the top level that cannot be cut. */
  | { readonly at: 'piece' }
  /** Behind a bare key, before its first child. */
  | { readonly at: 'head'; readonly section: string }
  | { readonly at: 'children'; readonly section: string; readonly indent: number; readonly item: boolean };

export interface Scan {
  readonly pieces: readonly Piece[];
  readonly end: ScanState;
}

/** Cuts a text that begins at a line's start, going on from a state. */
export function scan(text: string, state: ScanState): Scan {
  const pieces: Piece[] = [];
  let now: ScanState = state;
  let content = state.at !== 'start';
  let from = 0;
  let breaks = 0;
  let cut: Cut = firstCut(state);
  const begin = (at: number, next: Cut) => {
    if (at > from) pieces.push({ from, to: at, cut, breaks });
    if (at > from) breaks = 0;
    from = at;
    cut = next;
  };
  let at = 0;
  while (at < text.length) {
    const feed = text.indexOf('\n', at);
    const end = feed === -1 ? text.length : feed;
    const start = at === 0 && state.at === 'start' && text.charCodeAt(0) === 0xfeff ? 1 : at;
    const line = readLine(text, start, end);
    if (line.kind !== 'trivia') {
      step(line, content ? at : from);
      content = true;
    }
    if (feed !== -1) breaks++;
    at = feed === -1 ? text.length : feed + 1;
  }
  pieces.push({ from, to: text.length, cut, breaks });
  return { pieces, end: now };

  function step(line: Line, at: number): void {
    if (line.indent === 0 && (line.kind === 'key' || line.kind === 'text' || line.kind === 'opener')) {
      begin(at, { role: 'piece', indent: 0, item: false, sure: line.kind === 'key' });
      now = line.opens === undefined ? { at: 'piece' } : { at: 'head', section: line.opens };
      return;
    }
    if (now.at === 'head') {
      const child = firstChild(now.section, line);
      if (child === undefined) {
        now = { at: 'piece' };
        return;
      }
      cut = headCut(now.section);
      begin(at, child);
      now = { at: 'children', section: now.section, indent: child.indent, item: child.item };
      return;
    }
    if (now.at === 'start') now = { at: 'piece' };
    if (now.at !== 'children' || line.indent !== now.indent) return;
    const begins = now.item
      ? line.kind === 'item'
      : line.kind === 'key' || line.kind === 'text' || line.kind === 'opener';
    if (begins) begin(at, childCut(now.section, line, now.item));
  }
}

/** The state in which a scan that begins at a piece goes on, where the piece is not the first of its file. */
export function stateAfter(cut: Cut): ScanState {
  if (cut.role !== 'child') return { at: 'piece' };
  return { at: 'children', section: cut.section ?? '', indent: cut.indent, item: cut.item };
}

/** The pieces of a scan that ended behind a bare key, for the case that children follow. */
export function withHead(pieces: readonly Piece[], section: string): readonly Piece[] {
  const last = pieces.at(-1);
  return last === undefined ? pieces : [...pieces.slice(0, -1), { ...last, cut: headCut(section) }];
}

function headCut(section: string): Cut {
  return { role: 'head', section, indent: 0, item: false, sure: true };
}

function firstCut(state: ScanState): Cut {
  if (state.at !== 'children') return { role: 'piece', indent: 0, item: false, sure: false };
  return { role: 'child', section: state.section, indent: state.indent, item: state.item, sure: false };
}

function firstChild(section: string, line: Line): Cut | undefined {
  if (line.kind === 'item') return childCut(section, line, true);
  if (line.indent === 0 || (line.kind !== 'key' && line.kind !== 'text')) return undefined;
  return childCut(section, line, false);
}

function childCut(section: string, line: Line, item: boolean): Cut {
  return { role: 'child', section, indent: line.indent, item, sure: line.kind === 'key' || item };
}

/**
 * A section none of whose children has a colon is no map but a text over several lines: its pieces become one again.
 * A section whose end is not in `pieces` is left alone when `open`.
 */
export function mergeTexts(pieces: readonly Piece[], open: boolean): readonly Piece[] {
  if (!pieces.some(piece => piece.cut.role === 'child' && !piece.cut.sure)) return pieces;
  const merged: Piece[] = [];
  for (let at = 0; at < pieces.length; ) {
    const piece = pieces[at];
    if (piece === undefined) break;
    let end = at + 1;
    while (piece.cut.role === 'head' && pieces[end]?.cut.role === 'child') end++;
    const run = pieces.slice(at, end);
    const isText = run.length > 1 && !run.some(one => one.cut.role === 'child' && one.cut.sure);
    if (isText && !(open && end === pieces.length)) {
      const breaks = run.reduce((sum, one) => sum + one.breaks, 0);
      merged.push({ from: piece.from, to: run.at(-1)?.to ?? piece.to, cut: { ...pieceCut, sure: true }, breaks });
    } else merged.push(...run);
    at = end;
  }
  return merged;
}

const pieceCut: Cut = { role: 'piece', indent: 0, item: false, sure: false };
