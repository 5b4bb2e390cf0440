// Which entry holds what: paths from the top of a file <-> paths below an entry's base. Built once per document when
// somebody asks, because it looks at every entry's names.

import type { Key, Path } from '../../schema/place.ts';
import { Remembered } from '../../schema/remembered.ts';
import type { Document } from './document.ts';
import type { Entry } from './entry.ts';
import type { SyntaxNote } from './note.ts';
import { type PairTree, pairOf, type Range, type Tree } from './tree.ts';

/** What stands at a path. Ranges of the tree count from `start`. */
export interface Found {
  readonly entry: Entry;
  /** Number of the entry; for a section that is cut, of its head. */
  readonly index: number;
  readonly start: number;
  /** The pair that gives the path its last key; undefined for list items and for the whole file. */
  readonly pair: PairTree | undefined;
  readonly tree: Tree;
  /** Of a section that is cut: the number of the entry after its last child. Its tree is then empty. */
  readonly childrenEnd?: number;
}

/** A note with its range and path counted from the start of the file. */
export type FileNote = SyntaxNote & { readonly entry: Entry };

interface Spot {
  /** Of the entry: in the file for the top level, counted from the first child for a section's names. */
  readonly index: number;
  /** Among equal keys of its entry. */
  readonly nth: number;
}

type Names = ReadonlyMap<string, readonly Spot[]>;

/** A section that is cut. */
interface Section {
  readonly head: number;
  readonly end: number;
  readonly children: Children;
}

/** The children of a section: the same object for as long as they are the same entries. */
interface Children {
  readonly entries: readonly Entry[];
  readonly names: Names;
  /** Those that are read: of entries with equal names the first. */
  readonly read: readonly Entry[];
  /** The numbers of those of which the syntax has something to say. */
  readonly noted: readonly number[];
}

interface Index {
  readonly top: Names;
  /** By the number of the head. */
  readonly sections: ReadonlyMap<number, Section>;
}

/** The section of which an entry is a child, by the numbers of its head and of the entry after it; undefined for others. */
export function sectionAround(
  document: Document,
  index: number,
): { readonly head: number; readonly end: number } | undefined {
  if (document.entries[index]?.cut.role !== 'child') return undefined;
  let head = index;
  while (document.entries[head]?.cut.role === 'child') head--;
  return indexOf(document).sections.get(head);
}

/** A path below an entry's base as a path from the top: list items get their number in the file. */
export function absolutePath(document: Document, index: number, path: Path): Path {
  const entry = document.entries[index];
  if (entry === undefined || entry.base.length === 0) return path;
  const [first, ...rest] = path;
  if (!entry.cut.item || typeof first !== 'number') return [...entry.base, ...path];
  const section = sectionAround(document, index);
  return [...entry.base, index - (section?.head ?? index) - 1 + first, ...rest];
}

/** Finds what stands at a path from the top. `nth` tells equal last keys apart. */
export function find(document: Document, path: Path, nth = 0): Found | undefined {
  const [name, child] = path;
  const { top, sections } = indexOf(document);
  if (name === undefined) return findTop(document);
  if (typeof name === 'number') return findBelow(document, 0, path, nth);
  const spot = top.get(name)?.[path.length === 1 ? nth : 0];
  if (spot === undefined) return undefined;
  const section = sections.get(spot.index);
  if (section === undefined) return findBelow(document, spot.index, path, path.length === 1 ? spot.nth : nth);
  if (child === undefined) {
    const head = findBelow(document, spot.index, path, 0);
    return head === undefined ? undefined : { ...head, childrenEnd: section.end };
  }
  if (typeof child === 'number') {
    const index = section.head + 1 + child;
    const isItem = index < section.end && document.entries[index]?.cut.item === true;
    return isItem ? findBelow(document, index, [0, ...path.slice(2)], nth) : undefined;
  }
  const childSpot = section.children.names.get(child)?.[path.length === 2 ? nth : 0];
  return childSpot === undefined
    ? undefined
    : findBelow(document, section.head + 1 + childSpot.index, path.slice(1), path.length === 2 ? childSpot.nth : nth);
}

/** An entry of the top level, with the children of the section that it opens. */
export interface ReadPiece {
  readonly entry: Entry;
  /** The same list for as long as they are the same entries. */
  readonly children: readonly Entry[];
}

/**
 * What is read of a file, in order; of equal names the first. Left out are sections whose name an earlier one has, with
 * their children, and entries whose name an earlier one of their section has.
 */
export function piecesRead(document: Document): readonly ReadPiece[] {
  const { top, sections } = indexOf(document);
  const left = new Set<number>();
  for (const spots of top.values()) for (const { index } of repeats(spots)) left.add(index);
  const pieces: ReadPiece[] = [];
  for (let index = 0; index < document.entries.length; ) {
    const entry = document.entries[index];
    const section = sections.get(index);
    if (entry !== undefined && !left.has(index)) pieces.push({ entry, children: section?.children.read ?? [] });
    index = section?.end ?? index + 1;
  }
  return pieces;
}

/** Everything the syntax has to say about a file, in the order of the text, names that stand in two entries included. */
export function notesOf(document: Document): readonly FileNote[] {
  const known = notes.get(document);
  if (known !== undefined) return known;
  const found: FileNote[] = [];
  const { top, sections } = indexOf(document);
  const add = (index: number): void => {
    for (const note of document.entries[index]?.notes ?? []) found.push(inFile(document, index, note));
  };
  for (let index = 0; index < document.entries.length; index = sections.get(index)?.end ?? index + 1) add(index);
  found.push(...repeatNotes(document, top, 0));
  for (const { children, head } of sections.values()) {
    for (const child of children.noted) add(head + 1 + child);
    if (children.read !== children.entries) found.push(...repeatNotes(document, children.names, head + 1));
  }
  found.sort((a, b) => a.range.from - b.range.from);
  notes.set(document, found);
  return found;
}

/** Notes of names that an earlier entry has; those within one entry are its own. */
function repeatNotes(document: Document, names: Names, first: number): readonly FileNote[] {
  return [...names].flatMap(([name, spots]) =>
    spots.flatMap((spot, nth) => {
      const index = first + spot.index;
      const key = pairOf(treeOf(document, index), name, spot.nth)?.key;
      if (nth === 0 || spot.nth > 0 || key === undefined) return [];
      const note = { code: 'name-duplicate', params: { name }, range: key.range, path: [name], nth } as const;
      return [inFile(document, index, note)];
    }),
  );
}

/** A range counted from the start of an entry, counted from the start of the file. */
export function shifted(range: Range, by: number): Range {
  return { from: range.from + by, to: range.to + by };
}

const indexes = new Remembered<Document, Index>();
const notes = new Remembered<Document, readonly FileNote[]>();

function indexOf(document: Document): Index {
  let index = indexes.get(document);
  if (index === undefined) {
    index = buildIndex(document);
    indexes.set(document, index);
  }
  return index;
}

function buildIndex(document: Document): Index {
  const { entries, tops } = document;
  const top = new Map<string, Spot[]>();
  const sections = new Map<number, Section>();
  for (const [at, index] of tops.entries()) {
    const entry = entries[index];
    if (entry === undefined) break;
    addNames(top, entry, index);
    if (entry.cut.role !== 'head') continue;
    const end = tops[at + 1] ?? entries.length;
    sections.set(index, { head: index, end, children: childrenOf(entry, entries.slice(index + 1, end)) });
  }
  return { top, sections };
}

const childrenBefore = new Remembered<Entry, Children>();

/** The children of a section. An edit inside one of them leaves the names, and mostly all else, as they were. */
function childrenOf(head: Entry, entries: readonly Entry[]): Children {
  const before = childrenBefore.get(head);
  const changed = before === undefined ? undefined : changedAt(before.entries, entries);
  if (before !== undefined && changed?.length === 0) return before;
  const hasNames = before !== undefined && changed?.every(at => haveSameNames(before.entries[at], entries[at]));
  const names = hasNames ? before.names : namesIn(entries);
  const children = { entries, names, read: readOf(entries, names), noted: notedIn(entries, before) };
  childrenBefore.set(head, children);
  return children;
}

function notedIn(entries: readonly Entry[], before: Children | undefined): readonly number[] {
  const noted: number[] = [];
  const were = new Set(before?.noted);
  for (const [at, entry] of entries.entries()) {
    if (entry === before?.entries[at] ? were.has(at) : entry.notes.length > 0) noted.push(at);
  }
  return noted;
}

/** The numbers of those that are others than before; undefined where there are more or fewer. */
function changedAt(before: readonly Entry[], entries: readonly Entry[]): readonly number[] | undefined {
  if (before.length !== entries.length) return undefined;
  const changed: number[] = [];
  for (let at = 0; at < entries.length; at++) if (before[at] !== entries[at]) changed.push(at);
  return changed;
}

function haveSameNames(one: Entry | undefined, other: Entry | undefined): boolean {
  if (one === undefined || other === undefined) return false;
  const others = pairsOf(other);
  const own = pairsOf(one);
  return own.length === others.length && own.every(({ key }, at) => key.text === others[at]?.key.text);
}

function namesIn(entries: readonly Entry[]): Names {
  const names = new Map<string, Spot[]>();
  for (const [index, entry] of entries.entries()) addNames(names, entry, index);
  return names;
}

function readOf(entries: readonly Entry[], names: Names): readonly Entry[] {
  const left = new Set<number>();
  for (const spots of names.values()) for (const { index } of repeats(spots)) left.add(index);
  return left.size === 0 ? entries : entries.filter((_, index) => !left.has(index));
}

function pairsOf(entry: Entry): readonly PairTree[] {
  return entry.tree.kind === 'map' ? entry.tree.pairs : [];
}

function addNames(names: Map<string, Spot[]>, entry: Entry, index: number): void {
  for (const { key } of pairsOf(entry)) {
    const spots = names.get(key.text);
    if (spots === undefined) names.set(key.text, [{ index, nth: 0 }]);
    else spots.push({ index, nth: spots.filter(spot => spot.index === index).length });
  }
}

/** The later spots of one name that stand in an entry of their own. */
function repeats(spots: readonly Spot[]): readonly Spot[] {
  return spots.length < 2 ? [] : spots.slice(1).filter(spot => spot.index !== spots[0]?.index);
}

function findTop(document: Document): Found | undefined {
  const [entry] = document.entries;
  return entry && { entry, index: 0, start: 0, pair: undefined, tree: entry.tree };
}

function findBelow(document: Document, index: number, path: Path, nth: number): Found | undefined {
  const entry = document.entries[index];
  if (entry === undefined) return undefined;
  let tree: Tree = entry.tree;
  let pair: PairTree | undefined;
  let left = path.length;
  for (const key of path) {
    left--;
    const next = step(tree, key, left === 0 ? nth : 0);
    if (next === undefined) return undefined;
    pair = next.pair;
    tree = next.tree;
  }
  return { entry, index, start: document.starts[index] ?? 0, pair, tree };
}

function step(
  tree: Tree,
  key: Key,
  nth: number,
): { readonly pair: PairTree | undefined; readonly tree: Tree } | undefined {
  if (tree.kind === 'list') {
    const item = typeof key === 'number' ? tree.items[key] : undefined;
    return item && { pair: undefined, tree: item };
  }
  const pair = pairOf(tree, String(key), nth);
  return pair && { pair, tree: pair.value };
}

function treeOf(document: Document, index: number): Tree {
  return document.entries[index]?.tree ?? { kind: 'empty', range: { from: 0, to: 0 } };
}

function inFile(document: Document, index: number, note: SyntaxNote): FileNote {
  const entry = document.entries[index];
  if (entry === undefined) throw new Error('a note without its entry');
  const range = shifted(note.range, document.starts[index] ?? 0);
  return note.path === undefined
    ? { ...note, entry, range }
    : { ...note, entry, range, path: absolutePath(document, index, note.path) };
}
