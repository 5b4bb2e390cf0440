// What each word of a recipe is: a key, a name where it is given or where it is used, a number, a unit, a date. Editors colour by it.

import { words } from '../../../schema/field.ts';
import { findUnit } from '../../../schema/find-unit.ts';
import type { Path } from '../../../schema/place.ts';
import { recipe as recipeSchema } from '../../../schema/recipe.ts';
import { memo } from '../../plan/memo.ts';
import { keysOf, schemaAt } from '../../recipe/form.ts';
import { type Document, entryIndexAt } from '../../syntax/document.ts';
import type { Entry } from '../../syntax/entry.ts';
import { sliceRange } from '../../syntax/slice.ts';
import type { Range, ScalarTree } from '../../syntax/tree.ts';
import { walk } from '../../syntax/walk.ts';
import { isSection } from './entity.ts';

export type TokenKind =
  | 'section'
  | 'key'
  /** A name where its entry is declared. */
  | 'declaration'
  /** A name where it refers to an entry. */
  | 'reference'
  | 'number'
  | 'unit'
  | 'date'
  /** One of the fixed words of a field: `label`, `as needed`, `closed`. */
  | 'word'
  /** `..` between the ends of a range, `±`. */
  | 'operator';

export interface Token {
  readonly kind: TokenKind;
  readonly range: Range;
}

/** The tokens of a whole file or of the entries that a range touches, in the order of the text. */
export function tokens(document: Document, within: Range = { from: 0, to: document.length }): readonly Token[] {
  const found: Token[] = [];
  const last = entryIndexAt(document, within.to);
  for (let index = entryIndexAt(document, within.from); index <= last; index++) addTokens(document, index, found);
  return found;
}

/** The tokens of the entry in which an offset stands. */
export function tokensIn(document: Document, offset: number): readonly Token[] {
  const found: Token[] = [];
  addTokens(document, entryIndexAt(document, offset), found);
  return found;
}

function addTokens(document: Document, index: number, into: Token[]): void {
  const entry = document.entries[index];
  const start = document.starts[index] ?? 0;
  if (entry === undefined) return;
  for (const { kind, range } of entryTokens(entry)) {
    into.push({ kind, range: { from: start + range.from, to: start + range.to } });
  }
}

/** Counted from the start of the entry, so that an entry that an edit only moves keeps its own. */
const entryTokens = memo((entry: Entry): readonly Token[] => {
  const found: Token[] = [];
  const { text, base } = entry;
  for (const { path, key, value } of walk(entry.tree)) {
    const own = [...base, ...path];
    const kind = key === undefined ? undefined : kindOfKey(own);
    if (key !== undefined && kind !== undefined) found.push({ kind, range: inner(text, key) });
    if (value.kind !== 'scalar') continue;
    found.push(
      ...partsOf(value, own).map(part => ({ kind: part.kind, range: sliceRange(text, value, part.from, part.to) })),
    );
  }
  // What runs over several lines cannot be told to editors, and what is empty need not be.
  return found.filter(({ range }) => range.from < range.to && !text.slice(range.from, range.to).includes('\n'));
});

function kindOfKey(path: Path): TokenKind | undefined {
  const [section] = path;
  const key = path[path.length - 1];
  if (path.length === 1 && isSection(key)) return 'section';
  if (path.length === 2 && isSection(section)) return 'declaration';
  const above = schemaAt(recipeSchema, path.slice(0, -1));
  if (above === undefined) return undefined;
  if (words.get(above)?.refers !== undefined) return 'reference';
  return keysOf(above).includes(String(key)) ? 'key' : undefined;
}

interface Part {
  readonly kind: TokenKind;
  readonly from: number;
  readonly to: number;
}

function partsOf({ text, value }: ScalarTree, path: Path): readonly Part[] {
  const whole = (kind: TokenKind): readonly Part[] => [{ kind, from: 0, to: text.length }];
  const schema = schemaAt(recipeSchema, path);
  const is = schema === undefined ? undefined : words.get(schema);
  if (is === undefined) return [];
  if (is.refers !== undefined) return whole('reference');
  if (typeof value === 'number') return whole('number');
  const isFixed = is.fixed?.includes(text) === true && !/\d/.test(text);
  if (typeof value === 'boolean' || isFixed) return whole('word');
  if (/^\d{4}-\d{2}-\d{2}$/.test(text.trim())) return whole('date');
  if (is.dimensions !== undefined || is.between !== undefined || amount.test(is.examples?.[0] ?? '')) {
    return amountParts(text);
  }
  return [];
}

/** Fields that are read as amounts in words, as `18 EUR` or `-0.6 pH at 0.3 mL/L`, say so by their example. */
const amount = /^[+-]?\d[\d.]* [\p{L}%]/u;

/** Numbers, each with the unit behind it, and the words and signs between them. */
function amountParts(text: string): readonly Part[] {
  const parts: Part[] = [];
  const scan =
    /(?<number>[+\-\u2212]?(?:\d+ +)?\d+\/\d+|[+\-\u2212]?\d+(?:\.\d+)?[½¼¾⅓⅔⅛⅜⅝⅞]?|[½¼¾⅓⅔⅛⅜⅝⅞])|(?<operator>\.\.|±)|(?<word>[^\s.±]+)|\s+|./gu;
  let at = 0;
  while (at < text.length) {
    scan.lastIndex = at;
    const match = scan.exec(text);
    if (match === null) break;
    const [written] = match;
    const { number, operator, word } = match.groups ?? {};
    let to = at + written.length;
    if (number !== undefined) parts.push({ kind: 'number', from: at, to });
    else if (operator !== undefined) parts.push({ kind: 'operator', from: at, to });
    else if (word !== undefined) {
      // A cup is a unit behind a number only, not in `net cup`.
      const unit = parts[parts.length - 1]?.kind === 'number' ? unitFrom(text, at) : undefined;
      to = unit ?? to;
      parts.push({ kind: unit === undefined ? 'word' : 'unit', from: at, to });
    }
    at = to;
  }
  return parts;
}

/** Where the longest unit ends that begins at an offset, as `mg/L CaCO3`; undefined where none does. */
function unitFrom(text: string, from: number): number | undefined {
  const ends = [...text.slice(from).matchAll(/(?=\s|\.\.|$)/gu)].map(({ index }) => from + index);
  return ends.reverse().find(end => end > from && isUnit(text.slice(from, end)));
}

function isUnit(written: string): boolean {
  return findUnit(written).kind === 'found' || /^[A-Z]{3}$/.test(written) || written === 'pH';
}

/** A key without its quotes. */
function inner(text: string, key: ScalarTree): Range {
  return sliceRange(text, key, 0, key.text.length);
}
