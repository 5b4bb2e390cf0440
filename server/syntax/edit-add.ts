// Where a new pair or list item goes, and how it is written there: behind the last of its map or list, in its style.

import type { Path } from '../../schema/place.ts';
import { type Found, find } from './address.ts';
import type { Document, TextChange } from './document.ts';
import type { ListTree, MapTree, Tree } from './tree.ts';
import {
  indentAt,
  indented,
  indentStep,
  type LineSlot,
  lineBreakOf,
  pairText,
  slotAtEnd,
  slotBehind,
} from './write.ts';

/** Adds `key: text` to the map at a path. Maps that are missing on the way are made; undefined where something else stands. */
export function addPair(document: Document, into: Path, key: string, text: string): TextChange | undefined {
  const found = find(document, into);
  if (found === undefined) return addMissing(document, into, pairText(key, text), '{ }');
  const lastChild = childAtEnd(document, found);
  if (lastChild !== undefined) {
    if (lastChild.item) return undefined;
    return linesBehind(document, lastChild.end, lastChild.tree, lastChild.indent, pairText(key, text));
  }
  const { tree, entry, start } = found;
  if (into.length === 0 && (tree.kind === 'empty' || (tree.kind === 'map' && !tree.flow))) {
    const ends = entry.cut.role === 'whole' ? undefined : slotAtEnd(document);
    if (ends !== undefined) return lines(document, ends, '', pairText(key, text));
  }
  if (tree.kind === 'list') return undefined;
  if (tree.kind !== 'map') return under(document, into, found, pairText(key, text), '{ }');
  if (tree.flow) return inside(found, tree, pairText(key, text), ' ');
  const indent = indentAt(entry.text, tree.pairs[0]?.key.range.from ?? tree.range.from);
  return linesBehind(document, start + tree.range.to, tree, indent, pairText(key, text));
}

/** Adds `key: text` on a line of its own above the first key of the file; behind the last where the file is one flow map. */
export function addFirst(document: Document, key: string, text: string): TextChange | undefined {
  const at = document.entries.findIndex(entry => entry.tree.kind === 'map' && entry.tree.pairs.length > 0);
  const entry = document.entries[at];
  const tree = entry?.tree;
  if (entry === undefined || tree?.kind !== 'map' || tree.flow) return addPair(document, [], key, text);
  const from = tree.pairs[0]?.key.range.from ?? 0;
  const lineStart = entry.text.lastIndexOf('\n', from - 1) + 1;
  // A mark of byte order or a document's `---` stays before it.
  if (!/^\uFEFF?$/.test(entry.text.slice(lineStart, from))) return addPair(document, [], key, text);
  const offset = (document.starts[at] ?? 0) + from;
  return { from: offset, to: offset, text: `${pairText(key, text)}${lineBreakOf(document)}` };
}

/** Adds an item to the list at a path; `made` remembers which lists this run of edits has begun already. */
export function addItem(document: Document, to: Path, text: string, made: Set<string>): TextChange | undefined {
  const found = find(document, to);
  const id = JSON.stringify(to);
  if (found === undefined) {
    if (made.has(id)) return addMissing(document, to, `- ${text}`, '[]', true);
    made.add(id);
    return addMissing(document, to, `- ${text}`, '[]');
  }
  const lastChild = childAtEnd(document, found);
  if (lastChild !== undefined) {
    if (!lastChild.item) return undefined;
    return linesBehind(document, lastChild.end, lastChild.tree, lastChild.indent, `- ${indented(text, '  ', '\n')}`);
  }
  const { tree, entry, start } = found;
  if (tree.kind === 'map') return undefined;
  if (tree.kind !== 'list') return under(document, to, found, `- ${indented(text, '  ', '\n')}`, '[]');
  if (tree.flow) return inside(found, tree, text, '');
  const indent = indentAt(entry.text, tree.range.from);
  return linesBehind(document, start + tree.range.to, tree, indent, `- ${indented(text, '  ', '\n')}`);
}

/** Adds an item before one that is there: on the line behind the one before it, so that remarks stay with what they stand above. */
export function addItemBefore(document: Document, to: Path, before: number, text: string): TextChange | undefined {
  const next = find(document, [...to, before]);
  if (next === undefined || next.pair !== undefined) return undefined;
  const from = next.start + next.tree.range.from;
  if (isInFlow(document, to)) return { from, to: from, text: `${text}, ` };
  const lineStart = next.entry.text.lastIndexOf('\n', next.tree.range.from - 1) + 1;
  const [, indent] = /^( *)-\s+$/u.exec(next.entry.text.slice(lineStart, next.tree.range.from)) ?? [];
  if (indent === undefined) return undefined;
  const item = `- ${indented(text, '  ', '\n')}`;
  const last = before === 0 ? undefined : find(document, [...to, before - 1]);
  if (last !== undefined) return linesBehind(document, last.start + last.tree.range.to, last.tree, indent, item);
  return lines(document, { at: next.start + lineStart, before: '', after: lineBreakOf(document) }, indent, item);
}

interface LastChild {
  readonly item: boolean;
  readonly indent: string;
  readonly end: number;
  readonly tree: Tree;
}

function childAtEnd(document: Document, found: Found): LastChild | undefined {
  if (found.childrenEnd === undefined) return undefined;
  const entry = document.entries[found.childrenEnd - 1];
  if (entry === undefined || entry.cut.role !== 'child') return undefined;
  const end = (document.starts[found.childrenEnd - 1] ?? 0) + entry.tree.range.to;
  return { item: entry.cut.item, indent: ' '.repeat(entry.cut.indent), end, tree: entry.tree };
}

/** The pair or item under a key whose map or list is not there, with the key. `only`: the key is being made already. */
function addMissing(
  document: Document,
  path: Path,
  line: string,
  flow: '{ }' | '[]',
  only = false,
): TextChange | undefined {
  const key = path.at(-1);
  if (typeof key !== 'string') return undefined;
  const parent = path.slice(0, -1);
  const step = indentStep(document);
  const own = indented(`\n${line}`, step, '\n');
  if (only && parent.length === 0) return lines(document, slotAtEnd(document), '', step + indented(line, step, '\n'));
  if (isInFlow(document, parent)) return addPair(document, parent, key, wrapped(line, flow));
  return addPair(document, parent, key, own);
}

/** Behind a key that has no value yet, or null: on a line of its own, or in braces where the key stands in some. */
function under(document: Document, path: Path, found: Found, line: string, flow: '{ }' | '[]'): TextChange | undefined {
  const { tree, entry, start, pair } = found;
  const at = start + tree.range.from;
  if (tree.kind === 'scalar') {
    return tree.value === null ? { from: at, to: start + tree.range.to, text: wrapped(line, flow) } : undefined;
  }
  if (pair === undefined)
    return path.length === 0 ? lines(document, slotAtEnd(document), '', line) : inItem(entry.text, tree, start, line);
  if (isInFlow(document, path.slice(0, -1))) {
    const colon = entry.text.slice(pair.key.range.to, tree.range.from + 1).includes(':') ? ' ' : ': ';
    return { from: at, to: at, text: colon + wrapped(line, flow) };
  }
  const indent = indentAt(entry.text, pair.key.range.from) + indentStep(document);
  return lines(document, slotBehind(document, at), indent, line);
}

function inItem(text: string, tree: Tree, start: number, line: string): TextChange {
  let at = tree.range.from;
  while (text[at - 1] === ' ') at--;
  return { from: start + at, to: start + at, text: ` ${line}` };
}

/** Before the closing brace or bracket. */
function inside(found: Found, tree: MapTree | ListTree, text: string, padding: string): TextChange {
  const last = tree.kind === 'map' ? tree.pairs.at(-1) : tree.items.at(-1);
  if (last === undefined) {
    const at = found.start + tree.range.from + 1;
    const padded = found.entry.text[tree.range.from + 1] === ' ';
    return { from: at, to: at, text: padding + text + (padded ? '' : padding) };
  }
  const end = 'key' in last ? Math.max(last.key.range.to, last.value.range.to) : last.range.to;
  return { from: found.start + end, to: found.start + end, text: `, ${text}` };
}

function linesBehind(document: Document, offset: number, last: Tree, indent: string, text: string): TextChange {
  return lines(document, slotBehind(document, offset, last), indent, text);
}

function lines(document: Document, slot: LineSlot, indent: string, text: string): TextChange {
  const written = indent + indented(text, indent, lineBreakOf(document));
  return { from: slot.at, to: slot.at, text: slot.before + written + slot.after };
}

function isInFlow(document: Document, path: Path): boolean {
  return path.some((_, at) => isFlow(find(document, path.slice(0, at))?.tree)) || isFlow(find(document, path)?.tree);
}

function isFlow(tree: Tree | undefined): boolean {
  return (tree?.kind === 'map' || tree?.kind === 'list') && tree.flow;
}

function wrapped(line: string, flow: '{ }' | '[]'): string {
  return flow === '{ }' ? `{ ${line} }` : `[${line.replace(/^- /, '')}]`;
}
