// Offset -> what stands there, for hover and completion. Answers in broken text too: while somebody types, most text is.

import type { Path } from '../../schema/place.ts';
import { absolutePath, find, shifted } from './address.ts';
import { type Document, entryIndexAt } from './document.ts';
import type { Entry } from './entry.ts';
import { lineStart, readLine } from './line.ts';
import { unitAt } from './slice.ts';
import type { MapTree, Range, ScalarTree, Tree } from './tree.ts';

export interface Cursor {
  readonly entry: Entry;
  /** Where the entry begins. */
  readonly start: number;
  /**
   * `key`: on a key, or on a word that may become one. `value`: on a value, or where one may be written. `blank`: on
   * nothing, where a pair or item may be written.
   */
  readonly on: 'key' | 'value' | 'blank';
  /** From the top: of the pair or item the cursor is on; on `blank`, of the map or list it is in. */
  readonly path: Path;
  /** Of the map or list that holds what the cursor is on, or would hold what is written. */
  readonly within: Path;
  /** The keys that map has already, without the one the cursor is on. */
  readonly present: readonly string[];
  /** The scalar under the cursor, and how many units of what it says stand before the cursor. Ranges count from `start`. */
  readonly scalar?: { readonly tree: ScalarTree; readonly unit: number };
  /** The value stands alone on its line or behind a dash: it may be the first key of a map to come. */
  readonly mayBeKey: boolean;
  /** What a completion would replace, counted from the start of the file. */
  readonly replaces: Range;
  /** What is written between the start of that range and the cursor. */
  readonly typed: string;
  /** Inside braces or brackets, where commas end values. */
  readonly flow: boolean;
}

/** What stands at an offset of a file. Undefined inside comments. */
export function placeAt(document: Document, offset: number): Cursor | undefined {
  const index = entryIndexAt(document, offset);
  const entry = document.entries[index];
  if (entry === undefined || entry.cut.refused !== undefined) return undefined;
  const start = document.starts[index] ?? 0;
  const context: Context = { document, index, entry, start, at: offset - start };
  const found = descend(context, entry.tree, [], false);
  if (found === 'blank' && inComment(entry.text, context.at)) return undefined;
  return found === 'blank' ? byIndent(context) : found;
}

interface Context {
  readonly document: Document;
  readonly index: number;
  readonly entry: Entry;
  readonly start: number;
  /** The cursor, counted from the entry's start. */
  readonly at: number;
}

function descend(context: Context, tree: Tree, path: Path, flow: boolean): Cursor | 'blank' {
  const { at, entry } = context;
  if (tree.kind === 'list') {
    for (const [number, item] of tree.items.entries()) {
      if (!touches(item.range, at) && !goesOn(entry.text, item, at) && !flowReaches(entry.text, item, at)) continue;
      const own = [...path, number];
      return item.kind === 'scalar'
        ? onValue(context, own, item, flow || tree.flow, true)
        : descend(context, item, own, flow || tree.flow);
    }
    return tree.flow && flowReaches(entry.text, tree, at) ? inBraces(context, path) : 'blank';
  }
  if (tree.kind !== 'map') return 'blank';
  const inFlow = flow || tree.flow;
  for (const [number, { key, value }] of tree.pairs.entries()) {
    const own = [...path, key.text];
    if (touches(key.range, at) && key.range.to > key.range.from) return onKey(context, path, key, tree, number, inFlow);
    if (value.kind === 'scalar' && (touches(value.range, at) || goesOn(entry.text, value, at))) {
      return onValue(context, own, value, inFlow, !inFlow && standsAlone(entry.text, value.range));
    }
    if (
      value.kind !== 'scalar' &&
      value.kind !== 'empty' &&
      (touches(value.range, at) || goesOn(entry.text, value, at) || flowReaches(entry.text, value, at))
    ) {
      return descend(context, value, own, inFlow);
    }
    if (isBehindColon(context, key, value, tree.flow)) return onNothing(context, own, inFlow);
  }
  return tree.flow && flowReaches(entry.text, tree, at) ? inBraces(context, path) : 'blank';
}

function touches(range: Range, at: number): boolean {
  return range.from <= at && at <= range.to;
}

/** Whether only blanks stand between the last plain value of a tree and the cursor: it goes on being written, as a number before its unit. */
function goesOn(text: string, tree: Tree, at: number): boolean {
  if (tree.range.to >= at || !/^[ \t]+$/.test(text.slice(tree.range.to, at))) return false;
  if (tree.kind === 'scalar') return tree.style === 'plain';
  if (tree.kind === 'empty' || tree.flow) return false;
  const last = tree.kind === 'map' ? tree.pairs[tree.pairs.length - 1]?.value : tree.items[tree.items.length - 1];
  return last !== undefined && goesOn(text, last, at);
}

/** Whether an offset is between the brackets of a flow collection, one that was never closed reaching to its line's end. */
function flowReaches(text: string, tree: Tree, at: number): boolean {
  if ((tree.kind !== 'map' && tree.kind !== 'list') || !tree.flow || at <= tree.range.from) return false;
  const closed = tree.range.to - tree.range.from > 1 && text[tree.range.to - 1] === (tree.kind === 'map' ? '}' : ']');
  if (closed) return at < tree.range.to;
  const feed = text.indexOf('\n', tree.range.to);
  return at <= (feed === -1 ? text.length : feed);
}

/** Whether the cursor is between a key's colon and its value, on the key's line. */
function isBehindColon({ entry, at }: Context, key: ScalarTree, value: Tree, flow: boolean): boolean {
  if (at <= key.range.to || (value.kind !== 'empty' && value.range.from <= at)) return false;
  const between = entry.text.slice(key.range.to, at);
  return /^[ \t]*:[ \t]*$/.test(between) || (flow && /^[ \t]*:\s*$/.test(between));
}

/** Whether nothing but its indentation stands before a value on its line. */
function standsAlone(text: string, range: Range): boolean {
  const line = lineStart(text, range.from);
  return text.slice(line, range.from).trim() === '' && !text.slice(range.from, range.to).includes('\n');
}

function inComment(text: string, at: number): boolean {
  const line = text.slice(lineStart(text, at), at);
  return /(?:^|\s)#/.test(line);
}

function onKey(context: Context, map: Path, key: ScalarTree, tree: MapTree, number: number, flow: boolean): Cursor {
  const { document, index, start, entry, at } = context;
  const within = absolutePath(document, index, map);
  const others = tree.pairs.filter((_, other) => other !== number).map(pair => pair.key.text);
  const present =
    entry.base.length > 0 && map.length === 0
      ? keysAt(document, within, key.text)
      : topKeys(document, within, others, key.text);
  // Half a key runs on into the key on the line below.
  const own = onLineOf(entry.text, key.range, at);
  const runsOn = own.to < key.range.to || key.range.from < own.from;
  const word = runsOn ? entry.text.slice(own.from, own.to) : key.text;
  const swallowed = runsOn ? entry.text.slice(key.range.from, key.range.to).split(/\s*\n\s*/) : [];
  return {
    entry,
    start,
    on: 'key',
    path: [...within, word],
    within,
    present: [...present, ...swallowed.filter(other => other !== word)],
    scalar: { tree: key, unit: unitAt(entry.text, key, at) },
    mayBeKey: true,
    replaces: shifted(own, start),
    typed: entry.text.slice(own.from, at),
    flow,
  };
}

/** The part of a range that stands on the line of the cursor, without the blanks round it. */
function onLineOf(text: string, range: Range, at: number): Range {
  const line = text.lastIndexOf('\n', at - 1) + 1;
  const feed = text.indexOf('\n', at);
  if (line <= range.from && (feed === -1 || range.to <= feed)) return range;
  const from = Math.max(range.from, line);
  const to = Math.min(range.to, feed === -1 ? text.length : feed);
  const lead = /^\s*/.exec(text.slice(from, at))?.[0].length ?? 0;
  const tail = /\s*$/.exec(text.slice(at, to))?.[0].length ?? 0;
  return { from: from + lead, to: Math.max(at, to - tail) };
}

function typedIn(text: string, range: Range, at: number): string {
  return text.slice(onLineOf(text, { from: range.from, to: Math.max(range.to, at) }, at).from, at);
}

function onValue(context: Context, own: Path, value: ScalarTree, flow: boolean, mayBeKey: boolean): Cursor {
  const { document, index, start, entry, at } = context;
  const path = absolutePath(document, index, own);
  return {
    entry,
    start,
    on: 'value',
    path,
    within: path.slice(0, -1),
    present: [],
    scalar: { tree: value, unit: unitAt(entry.text, value, at) },
    mayBeKey,
    replaces: shifted(onLineOf(entry.text, { from: value.range.from, to: Math.max(value.range.to, at) }, at), start),
    typed: typedIn(entry.text, value.range, at),
    flow,
  };
}

function onNothing({ document, index, start, entry, at }: Context, own: Path, flow: boolean): Cursor {
  const path = absolutePath(document, index, own);
  const here = { from: start + at, to: start + at };
  return {
    entry,
    start,
    on: 'value',
    path,
    within: path.slice(0, -1),
    present: [],
    mayBeKey: false,
    replaces: here,
    typed: '',
    flow,
  };
}

function inBraces({ document, index, start, entry, at }: Context, own: Path): Cursor {
  const path = absolutePath(document, index, own);
  const here = { from: start + at, to: start + at };
  const present = keysAt(document, path);
  return {
    entry,
    start,
    on: 'blank',
    path,
    within: path,
    present,
    mayBeKey: true,
    replaces: here,
    typed: '',
    flow: true,
  };
}

/** By the indentation of the cursor's line: on a blank one, or on a word without a colon that is no value. */
function byIndent(context: Context): Cursor {
  const { document, entry, start, at } = context;
  const { text } = entry;
  const line = lineStart(text, at);
  const feed = text.indexOf('\n', line);
  const written = text.slice(line, feed === -1 ? text.length : feed).replace(/\s+$/, '');
  const lead = /^\uFEFF?(?: |-(?= |$))*/.exec(written)?.[0] ?? '';
  const word = /^[^\s:#{}[\],"'][^:#{}[\],]*/.exec(written.slice(lead.length))?.[0] ?? '';
  const from = line + lead.length;
  const onWord = word !== '' && from <= at && at <= from + word.length;
  const indent = onWord ? lead.replace('\uFEFF', '').length : at - line;
  const within = container(context, line, lead.includes('-') ? lead.indexOf('-') : indent);
  const path = lead.includes('-') && onWord ? [...within, itemsIn(document, within)] : within;
  const replaces = onWord
    ? { from: start + from, to: start + from + word.length }
    : { from: start + at, to: start + at };
  const typed = onWord ? text.slice(from, at) : '';
  const present = keysAt(document, path, onWord ? word : undefined);
  return {
    entry,
    start,
    on: onWord ? 'key' : 'blank',
    path: onWord ? [...path, word] : path,
    within: path,
    present,
    mayBeKey: true,
    replaces,
    typed,
    flow: false,
  };
}

/** The path of the map or list to which a line with an indentation belongs, told from the lines above it. */
function container({ document, index, entry }: Context, line: number, indent: number): Path {
  const { text } = entry;
  if (indent === 0) return [];
  for (let from = line; from > 0; ) {
    const end = from - 1;
    from = lineStart(text, end);
    const above = readLine(text, from, end);
    if (above.kind === 'trivia') continue;
    const first = from + above.indent;
    if (above.kind === 'item') {
      const inner = innerPath(entry, first);
      if (inner !== undefined && above.indent < indent) return absolutePath(document, index, inner);
      if (inner !== undefined && above.indent === indent) return absolutePath(document, index, inner.slice(0, -1));
    } else if (above.kind === 'key' && above.indent <= indent) {
      const own = keyPath(entry.tree, first, []);
      const opens = above.opens !== undefined && above.indent < indent;
      if (own !== undefined) return absolutePath(document, index, opens ? own : own.slice(0, -1));
      if (opens && entry.cut.role === 'child' && from === 0) return [...entry.base, above.opens];
    }
  }
  return entry.base;
}

/** The path of the pair whose key begins at an offset. */
function keyPath(tree: Tree, at: number, path: Path): Path | undefined {
  if (tree.kind === 'list') {
    for (const [number, item] of tree.items.entries()) {
      const found = keyPath(item, at, [...path, number]);
      if (found !== undefined) return found;
    }
  }
  if (tree.kind !== 'map') return undefined;
  for (const { key, value } of tree.pairs) {
    const own = [...path, key.text];
    if (key.range.from === at || (key.range.from <= at && at < key.range.to)) return own;
    const found = keyPath(value, at, own);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The path of the list item whose dash stands at an offset. */
function innerPath(entry: Entry, dash: number): Path | undefined {
  const walk = (tree: Tree, path: Path): Path | undefined => {
    if (tree.kind === 'list') {
      for (const [number, item] of tree.items.entries()) {
        const own = [...path, number];
        const before = entry.text.slice(dash + 1, item.range.from);
        if (item.range.from > dash && /^\s*$/.test(before)) return own;
        const found = walk(item, own);
        if (found !== undefined) return found;
      }
    }
    if (tree.kind !== 'map') return undefined;
    for (const { key, value } of tree.pairs) {
      const found = walk(value, [...path, key.text]);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  return walk(entry.tree, []);
}

function itemsIn(document: Document, path: Path): number {
  const found = find(document, path);
  if (found?.childrenEnd !== undefined) return found.childrenEnd - found.index - 1;
  return found?.tree.kind === 'list' ? found.tree.items.length : 0;
}

function topKeys(document: Document, within: Path, others: readonly string[], except: string): readonly string[] {
  return within.length === 0 ? keysAt(document, within, except) : others;
}

/** The keys of the map at a path, one occurrence of `except` left out. */
function keysAt(document: Document, path: Path, except?: string): readonly string[] {
  const keys = allKeys(document, path);
  const at = except === undefined ? -1 : keys.indexOf(except);
  return at === -1 ? keys : keys.filter((_, other) => other !== at);
}

function allKeys(document: Document, path: Path): readonly string[] {
  const of = (tree: Tree | undefined) => (tree?.kind === 'map' ? tree.pairs.map(pair => pair.key.text) : []);
  if (path.length === 0)
    return document.entries.filter(entry => entry.base.length === 0).flatMap(entry => of(entry.tree));
  const found = find(document, path);
  if (found?.childrenEnd === undefined) return of(found?.tree);
  return document.entries.slice(found.index + 1, found.childrenEnd).flatMap(entry => of(entry.tree));
}
