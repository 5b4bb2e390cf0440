// The fast way to read: texts as recipes usually are, straight into the narrow view. It knows maps and lists by indentation or in
// brackets, and plain and quoted texts on one line; at anything else it gives up, and the `yaml` package reads instead.

import {
  apostrophe,
  carriageReturn,
  closeList,
  closeMap,
  colon,
  comma,
  dash,
  hash,
  lineFeed,
  openList,
  openMap,
  questionMark,
  quote,
  space,
} from './code-units.ts';
import { coreValue } from './core-value.ts';
import { limits } from './limits.ts';
import { firstTooDeep } from './too-deep.ts';
import type { ListTree, MapTree, PairTree, Range, ScalarTree, Tree } from './tree.ts';

/** The tree of a text that is usual and sound, so that there is nothing to note; undefined where that is not sure. */
export function readUsual(text: string): Tree | undefined {
  if (unusual.test(text) || firstTooDeep(text) !== undefined) return undefined;
  const scan: Scan = { text, at: 0, line: 0 };
  toContent(scan);
  if (isAtEnd(scan)) return { kind: 'empty', range: { from: 0, to: 0 } };
  const tree = viewOwnLine(scan, -1, 0);
  // A text alone is half a key.
  return isAtEnd(scan) && tree?.kind !== 'scalar' ? tree : undefined;
}

// Tabs, byte order marks, lone carriage returns; the markers of a merge conflict.
const unusual = /[\t\uFEFF]|\r(?!\n)|<{7}|={7}/;

interface Scan {
  readonly text: string;
  /** Behind what was read last. */
  at: number;
  /** Where the line of `at` begins. */
  line: number;
}

/** What begins at the first sign of a line, or behind a dash, in a map or list at a column. */
function viewOwnLine(scan: Scan, column: number, depth: number): Tree | undefined {
  if (isIndicator(scan, dash)) return viewList(scan, depth);
  const { at } = scan;
  const key = viewKey(scan, false);
  if (key !== undefined) return viewMap(scan, depth, at - scan.line, key);
  scan.at = at;
  return viewInLine(scan, column, depth);
}

/** A map by indentation whose keys stand at a column, behind its first key. */
function viewMap(scan: Scan, depth: number, column: number, first: ScalarTree): MapTree | undefined {
  if (depth >= limits.depth) return undefined;
  const pairs: PairTree[] = [];
  let to = 0;
  for (let key: ScalarTree | undefined = first; ; key = viewKey(scan, false)) {
    const value = key && viewBehind(scan, column, depth, false);
    if (key === undefined || value === undefined) return undefined;
    pairs.push({ key, value });
    to = value.range.to;
    if (!goesOn(scan, column)) break;
  }
  if (hasTwice(pairs)) return undefined;
  return { kind: 'map', flow: false, pairs, range: { from: first.range.from, to } };
}

function viewList(scan: Scan, depth: number): ListTree | undefined {
  if (depth >= limits.depth) return undefined;
  const from = scan.at;
  const column = from - scan.line;
  const items: Tree[] = [];
  let to = from;
  do {
    scan.at++;
    const item = viewBehind(scan, column, depth, true);
    if (item === undefined) return undefined;
    items.push(item);
    to = item.range.to;
  } while (goesOn(scan, column) && isIndicator(scan, dash));
  return { kind: 'list', flow: false, items, range: { from, to } };
}

/** Whether the next line belongs to a map or list that stands at a column. */
function goesOn(scan: Scan, column: number): boolean {
  return scan.at - scan.line === column && !isAtEnd(scan);
}

/** The value behind a colon or dash of a map or list at a column. */
function viewBehind(scan: Scan, column: number, depth: number, isItem: boolean): Tree | undefined {
  skipSpaces(scan);
  if (!isLineEnd(scan)) {
    return isItem ? viewOwnLine(scan, column, depth + 1) : viewInLine(scan, column, depth + 1);
  }
  const behind = scan.at;
  toContent(scan);
  if (scan.at - scan.line > column && !isAtEnd(scan)) return viewOwnLine(scan, column, depth + 1);
  // A list may stand straight under its key.
  if (!isItem && goesOn(scan, column) && isIndicator(scan, dash)) return viewList(scan, depth + 1);
  return { kind: 'empty', range: { from: behind, to: behind } };
}

/** A value that ends on its line, or with its bracket; what goes on below it is not usual. */
function viewInLine(scan: Scan, column: number, depth: number): Tree | undefined {
  const tree = viewFlow(scan, column, depth, false);
  if (tree === undefined) return undefined;
  skipSpaces(scan);
  if (!isLineEnd(scan)) return undefined;
  toContent(scan);
  return scan.at - scan.line > column && !isAtEnd(scan) ? undefined : tree;
}

/** A map or list in brackets, or a scalar; `column` is that of what stands by indentation around them. */
function viewFlow(scan: Scan, column: number, depth: number, inside: boolean): Tree | undefined {
  const sign = scan.text.charCodeAt(scan.at);
  if (sign !== openMap && sign !== openList) return viewScalar(scan, inside);
  if (depth >= limits.depth) return undefined;
  const from = scan.at++;
  const close = sign + 2;
  const pairs: PairTree[] = [];
  const items: Tree[] = [];
  let isSound = skipBlanks(scan, column);
  while (isSound && scan.text.charCodeAt(scan.at) !== close) {
    const key = sign === openMap ? viewKey(scan, true) : undefined;
    if (sign === openMap && (key === undefined || !skipBlanks(scan, column))) return undefined;
    const value = viewFlow(scan, column, depth + 1, true);
    if (value === undefined) return undefined;
    if (key === undefined) items.push(value);
    else pairs.push({ key, value });
    isSound = skipComma(scan, column, close);
  }
  if (!isSound || hasTwice(pairs)) return undefined;
  const range: Range = { from, to: ++scan.at };
  return sign === openMap ? { kind: 'map', flow: true, pairs, range } : { kind: 'list', flow: true, items, range };
}

/** A key and its colon, on one line. */
function viewKey(scan: Scan, inside: boolean): ScalarTree | undefined {
  const key = viewScalar(scan, inside);
  if (key === undefined) return undefined;
  skipSpaces(scan);
  if (!isIndicator(scan, colon) || scan.at - key.range.from > longestKey) return undefined;
  scan.at++;
  return key;
}

/** Longer ones are refused, and the package that reads those counts the spaces before the colon. */
const longestKey = 1000;

function viewScalar(scan: Scan, inside: boolean): ScalarTree | undefined {
  const from = scan.at;
  const sign = scan.text.charCodeAt(from);
  if (sign === quote || sign === apostrophe) return viewQuoted(scan, sign === quote ? '"' : "'");
  const to = plainEnd(scan, inside);
  if (to === from) return undefined;
  scan.at = to;
  const text = scan.text.slice(from, to);
  return { kind: 'scalar', value: coreValue(text), text, style: 'plain', range: { from, to } };
}

/** What stands in quotes on one line and says just what is written. */
function viewQuoted(scan: Scan, sign: '"' | "'"): ScalarTree | undefined {
  const from = scan.at;
  const close = scan.text.indexOf(sign, from + 1);
  const text = scan.text.slice(from + 1, close);
  // In single quotes two of them are one that is meant.
  const isDoubled = sign === "'" && scan.text[close + 1] === sign;
  if (close === -1 || isDoubled || text.includes('\n') || (sign === '"' && text.includes('\\'))) return undefined;
  scan.at = close + 1;
  return { kind: 'scalar', value: text, text, style: sign === '"' ? 'double' : 'single', range: { from, to: scan.at } };
}

/** Where the plain text ends that begins here; here where none does. */
function plainEnd({ text, at, line }: Scan, inside: boolean): number {
  const first = text.charCodeAt(at);
  if (noWord.has(first)) return at;
  if ((first === dash || first === questionMark || first === colon) && !isWordAt(text, at + 1, inside)) return at;
  if (at === line && documentMark.test(text.slice(at, at + 4))) return at;
  let end = at;
  for (let next = at; next < text.length; next++) {
    const unit = text.charCodeAt(next);
    if (unit === lineFeed || (unit === hash && end < next)) break;
    if (unit === colon ? !isWordAt(text, next + 1, inside) : inside && isFlowSign(unit)) break;
    if (unit !== space && unit !== carriageReturn) end = next + 1;
  }
  return end;
}

const documentMark = /^(?:---|\.\.\.)(?:\s|$)/;

/** Whether what stands at an offset goes on a word: no blank, and inside brackets no sign of theirs. */
function isWordAt(text: string, at: number, inside: boolean): boolean {
  return !isBlank(text, at) && !(inside && isFlowSign(text.charCodeAt(at)));
}

function isFlowSign(unit: number): boolean {
  return unit === comma || unit === openList || unit === closeList || unit === openMap || unit === closeMap;
}

function isIndicator({ text, at }: Scan, sign: number): boolean {
  return text.charCodeAt(at) === sign && isBlank(text, at + 1);
}

function isBlank(text: string, at: number): boolean {
  const unit = text.charCodeAt(at);
  return unit === space || unit === lineFeed || unit === carriageReturn || at >= text.length;
}

/** Whether nothing but a comment stands on the rest of the line. */
function isLineEnd({ text, at, line }: Scan): boolean {
  const unit = text.charCodeAt(at);
  if (unit === hash) return at === line || isBlank(text, at - 1);
  return unit === lineFeed || unit === carriageReturn || at >= text.length;
}

function isAtEnd({ text, at }: Scan): boolean {
  return at >= text.length;
}

function skipSpaces(scan: Scan): void {
  while (scan.text.charCodeAt(scan.at) === space) scan.at++;
}

/** Goes over spaces, line breaks and comments. */
function toContent(scan: Scan): void {
  for (;;) {
    skipSpaces(scan);
    if (isAtEnd(scan) || !isLineEnd(scan)) return;
    const feed = scan.text.indexOf('\n', scan.at);
    scan.at = feed === -1 ? scan.text.length : feed + 1;
    scan.line = scan.at;
  }
}

/** The same between brackets; false where a line then stands no deeper than what is around them. */
function skipBlanks(scan: Scan, column: number): boolean {
  const { line } = scan;
  toContent(scan);
  return scan.line === line || scan.at - scan.line > Math.max(0, column);
}

/** Goes over the comma behind a pair or item; false where there is neither one nor the closing bracket. */
function skipComma(scan: Scan, column: number, close: number): boolean {
  if (!skipBlanks(scan, column)) return false;
  if (scan.text.charCodeAt(scan.at) !== comma) return scan.text.charCodeAt(scan.at) === close;
  scan.at++;
  return skipBlanks(scan, column);
}

function hasTwice(pairs: readonly PairTree[]): boolean {
  return pairs.length > 1 && new Set(pairs.map(({ key }) => key.text)).size < pairs.length;
}

/** No plain text begins with these. */
const noWord = new Set([...` \r\n,[]{}#&*!|>'"%@\``].map(sign => sign.charCodeAt(0)));
