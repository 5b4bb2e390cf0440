// A file as a list of entries. An edit splices: the entries it touches are cut anew, the others stay the same objects.
// What an edit costs grows with the change, but for a sum over the entries.

import { Remembered } from '../../schema/remembered.ts';
import { Entry } from './entry.ts';
import { limits } from './limits.ts';
import type { SyntaxNote } from './note.ts';
import { type Cut, mergeTexts, type Piece, type ScanState, scan, stateAfter, withHead } from './split.ts';
import { beginsOpen, forbidsCut, junkAt, signsOf } from './whole.ts';

export interface Document {
  /** At least one. Their texts joined are the file. */
  readonly entries: readonly Entry[];
  /** Where each entry begins, in UTF-16 units. */
  readonly starts: readonly number[];
  /** The line on which each entry begins, counted from 0. */
  readonly firstLines: readonly number[];
  readonly length: number;
  /** The numbers of the entries that are no children of a section. */
  readonly tops: readonly number[];
  /** What stands in any entry that may forbid cutting the file: see whole.ts. */
  readonly signs: number;
}

/** Puts `text` in place of what stands from `from` up to `to`. */
export interface TextChange {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Cuts a file into entries. Entries of `before` that would come out equal at either end are used again. */
export function openDocument(text: string, before: readonly Entry[] = []): Document {
  if (text.length > limits.fileLength) {
    const to = Math.min(text.length, 1);
    return whole(text, before, {
      code: 'file-too-large',
      params: { limit: limits.fileLength },
      range: { from: 0, to },
    });
  }
  const junk = junkAt(text);
  if (junk !== undefined)
    return whole(text, before, { code: 'not-yaml', params: {}, range: { from: junk, to: junk + 1 } });
  const pieces = mergeTexts(scan(text, { at: 'start' }).pieces, false);
  const document = assemble(entriesOf(text, pieces, before));
  return mustStayWhole(document) ? whole(text, before) : document;
}

/** The document after a change. Entries that the change does not touch are the same objects. */
export function applyChange(document: Document, change: TextChange): Document {
  const from = Math.max(0, Math.min(change.from, document.length));
  const to = Math.max(from, Math.min(change.to, document.length));
  const { entries, starts } = document;
  const rescan = () => openDocument(spliced(textOf(document), from, to, change.text), entries);
  const [only] = entries;
  if (only === undefined || only.cut.role === 'whole') return rescan();
  if (document.length - (to - from) + change.text.length > limits.fileLength) return rescan();

  // One entry to the left: the change may turn the first line of the entry it touches into the end of that one.
  const first = Math.max(0, entryIndexAt(document, Math.max(0, from - 1)) - 1);
  let last = entryIndexAt(document, to);
  for (;;) {
    const start = starts[first] ?? 0;
    const old = entries.slice(first, last + 1);
    const text = spliced(old.map(entry => entry.text).join(''), from - start, to - start, change.text);
    const cutBefore = entries[first]?.cut;
    const state: ScanState = cutBefore === undefined || first === 0 ? { at: 'start' } : stateAfter(cutBefore);
    const result = scan(text, state);
    const next = entries[last + 1];
    if (next !== undefined && !goesOn(result.end, next, entries[last])) {
      last = nextTop(entries, last + 1) - 1;
      continue;
    }
    const child = next?.cut.role === 'child';
    const pieces = child && result.end.at === 'head' ? withHead(result.pieces, result.end.section) : result.pieces;
    const fresh = entriesOf(text, mergeTexts(pieces, child), old);
    const changed = exchanged(document, first, last + 1, fresh);
    const borders = [first, first + fresh.length];
    return borders.every(at => isSure(changed.entries, at)) && !mustStayWhole(changed) ? changed : rescan();
  }
}

/** The whole text of a document. */
export function textOf(document: Document): string {
  let text = texts.get(document);
  if (text === undefined) {
    text = document.entries.map(entry => entry.text).join('');
    texts.set(document, text);
  }
  return text;
}

const texts = new Remembered<Document, string>();

/** The number of the entry in which an offset stands. The end of the file stands in the last one. */
export function entryIndexAt(document: Document, offset: number): number {
  return lastNotAbove(document.starts, offset);
}

/** The entry in which an offset stands, and where it begins. */
export function entryAt(document: Document, offset: number): { readonly entry: Entry; readonly start: number } {
  const at = entryIndexAt(document, offset);
  const entry = document.entries[at];
  if (entry === undefined) throw new Error('a document without entries');
  return { entry, start: document.starts[at] ?? 0 };
}

/** The number of the last element that is not above a value, in a rising list; 0 where all are. */
export function lastNotAbove(rising: readonly number[], value: number): number {
  let low = 0;
  let high = rising.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((rising[middle] ?? 0) <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}

function spliced(text: string, from: number, to: number, by: string): string {
  return text.slice(0, from) + by + text.slice(to);
}

function whole(text: string, before: readonly Entry[], refused?: SyntaxNote): Document {
  const role = { role: 'whole', indent: 0, item: false, sure: true } as const;
  const cut: Cut = refused === undefined ? role : { ...role, refused };
  let breaks = 0;
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) breaks++;
  return assemble(entriesOf(text, [{ from: 0, to: text.length, cut, breaks }], before));
}

const empty: Document = { entries: [], starts: [], firstLines: [], length: 0, tops: [], signs: 0 };

function assemble(entries: readonly Entry[]): Document {
  return exchanged(empty, 0, 0, entries);
}

/** A document with others in place of the entries from `first` up to `end`. Those behind them only move. */
function exchanged(document: Document, first: number, end: number, fresh: readonly Entry[]): Document {
  const entries = document.entries.toSpliced(first, end - first, ...fresh);
  const starts = document.starts.slice(0, first);
  const firstLines = document.firstLines.slice(0, first);
  let length = document.starts[first] ?? document.length;
  let line = document.firstLines[first] ?? 0;
  // What only the entries that go may have shown has to be looked for again in all.
  const isKept = document.entries.slice(first, end).every(entry => entry.signs === 0);
  const signs = signsIn(isKept ? fresh : entries, isKept ? document.signs : 0);
  for (const entry of fresh) {
    starts.push(length);
    firstLines.push(line);
    length += entry.text.length;
    line += entry.breaks;
  }
  const by = length - (document.starts[end] ?? document.length);
  const byLines = line - (document.firstLines[end] ?? 0);
  for (let at = end; at < document.entries.length; at++) {
    starts.push((document.starts[at] ?? 0) + by);
    firstLines.push((document.firstLines[at] ?? 0) + byLines);
  }
  const tops = document.tops.filter(top => top < first);
  for (const [at, { cut }] of fresh.entries()) if (cut.role !== 'child') tops.push(first + at);
  for (const top of document.tops) if (end <= top) tops.push(top + fresh.length - (end - first));
  return { entries, starts, firstLines, length: document.length + by, tops, signs };
}

function signsIn(entries: readonly Entry[], others: number): number {
  return entries.reduce((signs, entry) => signs | entry.signs, others);
}

/** Entries for pieces, with those of `before` used again from both ends as far as they are equal. */
function entriesOf(text: string, pieces: readonly Piece[], before: readonly Entry[]): Entry[] {
  const entries: Entry[] = [];
  const most = Math.min(pieces.length, before.length);
  let left = 0;
  for (; left < most; left++) {
    const entry = before[left];
    const piece = pieces[left];
    if (entry === undefined || piece === undefined || !isSame(entry, piece, text)) break;
    entries.push(entry);
  }
  const kept: Entry[] = [];
  while (kept.length < most - left) {
    const entry = before[before.length - 1 - kept.length];
    const piece = pieces[pieces.length - 1 - kept.length];
    if (entry === undefined || piece === undefined || !isSame(entry, piece, text)) break;
    kept.push(entry);
  }
  for (const piece of pieces.slice(left, pieces.length - kept.length)) {
    const own = text.slice(piece.from, piece.to);
    entries.push(new Entry(own, piece.cut, piece.breaks, signsOf(own)));
  }
  entries.push(...kept.reverse());
  return entries;
}

function isSame(entry: Entry, piece: Piece, text: string): boolean {
  const { cut } = entry;
  return (
    entry.text.length === piece.to - piece.from &&
    cut.role === piece.cut.role &&
    cut.section === piece.cut.section &&
    cut.indent === piece.cut.indent &&
    cut.item === piece.cut.item &&
    cut.sure === piece.cut.sure &&
    cut.refused?.code === piece.cut.refused?.code &&
    text.startsWith(entry.text, piece.from)
  );
}

/** Whether the scan, standing at the end of some pieces, would cut `next` as it is cut already. */
function goesOn(end: ScanState, next: Entry, before: Entry | undefined): boolean {
  const { cut } = next;
  if (cut.role !== 'child') return end.at !== 'start';
  if (end.at === 'head') return before?.cut.role === 'head' && end.section === cut.section;
  return end.at === 'children' && end.section === cut.section && end.indent === cut.indent && end.item === cut.item;
}

function nextTop(entries: readonly Entry[], from: number): number {
  let at = from + 1;
  while (at < entries.length && entries[at]?.cut.role === 'child') at++;
  return at;
}

/** Whether the section round an entry has a child that is surely one; true outside sections. */
function isSure(entries: readonly Entry[], at: number): boolean {
  if (entries[at]?.cut.role !== 'child') return true;
  for (let left = at; entries[left]?.cut.role === 'child'; left--) if (entries[left]?.cut.sure) return true;
  for (let right = at; entries[right]?.cut.role === 'child'; right++) if (entries[right]?.cut.sure) return true;
  return false;
}

function mustStayWhole({ entries, signs }: Document): boolean {
  const isKeyed = entries.some(({ cut }) => cut.sure && cut.role !== 'child');
  return !isKeyed || forbidsCut(signs) || beginsOpen(entries[0]?.text ?? '');
}
