// Reads a chemical formula as it stands on a bag (`CaSO4·2H2O`, `5Ca(NO3)2.NH4NO3.10H2O`). Separate because doses need
// only masses, not the solution chemistry behind them.

import type { ElementCounts, ElementSymbol } from './tables/elements.ts';
import { elements, isElement, molarMass } from './tables/elements.ts';

/** Reads a formula; a text that is no formula is answered with the slice at fault and the reason. */
export function readCompound(text: string): Compound | NotAFormula {
  const reader: Reader = { text, at: 0 };
  if (text.trim() === '') return complain(0, text.length, 'empty');
  if (text.length > longest) return complain(longest, text.length, 'too-long');
  const parts: CompoundPart[] = [];
  for (;;) {
    skipBlanks(reader);
    const start = reader.at;
    const count = readMultiplier(reader);
    if (typeof count !== 'number') return count;
    skipBlanks(reader);
    const tokens = readTokens(reader, 0);
    if ('reason' in tokens) return tokens;
    if (tokens.length === 0) {
      const isHere = reader.at < text.length;
      if (isHere) return complain(reader.at, reader.at + 1, reasonFor(text.charAt(reader.at)));
      return complain(start === text.length ? text.length - 1 : start, text.length, 'ends-early');
    }
    parts.push({ count, tokens });
    skipBlanks(reader);
    if (reader.at >= text.length) break;
    if (!isDot(text.charAt(reader.at))) return complain(reader.at, reader.at + 1, reasonFor(text.charAt(reader.at)));
    reader.at += 1;
  }
  const counts: Partial<Record<ElementSymbol, number>> = {};
  for (const part of parts) addTokens(counts, part.tokens, part.count);
  return { kind: 'compound', text: text.trim(), elements: counts, molarMass_g_per_mol: molarMass(counts), parts };
}

export interface Compound {
  readonly kind: 'compound';
  readonly text: string;
  /** Atoms in one formula unit, water of hydration included. */
  readonly elements: ElementCounts;
  readonly molarMass_g_per_mol: number;
  /** The units between the dots, in the order written. */
  readonly parts: readonly CompoundPart[];
}

export interface CompoundPart {
  readonly count: number;
  readonly tokens: readonly Token[];
}

/** An element with its subscript, or a bracketed group with its own. */
export type Token =
  | { readonly kind: 'atom'; readonly symbol: ElementSymbol; readonly count: number }
  | { readonly kind: 'group'; readonly tokens: readonly Token[]; readonly count: number };

/** `from` and `to` bound the slice of the text at fault; `to` is exclusive. */
export interface NotAFormula {
  readonly kind: 'not-a-formula';
  readonly from: number;
  readonly to: number;
  readonly reason: FormulaReason;
}

/** Why a text is no formula, in words that follow "here". */
export const formulaReasons = {
  empty: 'there is no formula',
  'too-long': 'a formula is at most 120 characters long',
  'ends-early': 'an element is missing',
  'unknown-element': 'no element has this symbol',
  'lower-case': 'a symbol begins with a capital letter',
  'not-closed': 'this bracket is not closed',
  'not-opened': 'this bracket was never opened',
  'empty-group': 'nothing stands between these brackets',
  'too-deep': 'brackets are nested too deep',
  'zero-count': 'a count of zero',
  'huge-count': 'a count above 9999',
  'stray-character': 'this character has no meaning in a formula',
} as const satisfies Record<string, string>;

export type FormulaReason = keyof typeof formulaReasons;

/** The share of the compound's mass that is this element, 0 to 1. */
export function massFraction(compound: Compound, symbol: ElementSymbol): number {
  return ((compound.elements[symbol] ?? 0) * elements[symbol].weight) / compound.molarMass_g_per_mol;
}

const longest = 120;
const deepest = 8;
const dots = '·.*•⋅∙';
const closers: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' };
const subscripts = '₀₁₂₃₄₅₆₇₈₉';

interface Reader {
  readonly text: string;
  at: number;
}

function complain(from: number, to: number, reason: FormulaReason): NotAFormula {
  return { kind: 'not-a-formula', from, to, reason };
}

function isDot(character: string): boolean {
  return character !== '' && dots.includes(character);
}

function reasonFor(character: string): FormulaReason {
  if (')]}'.includes(character)) return 'not-opened';
  return /\p{Ll}/u.test(character) ? 'lower-case' : 'stray-character';
}

function skipBlanks(reader: Reader): void {
  while (/\s/.test(reader.text.charAt(reader.at))) reader.at += 1;
}

function digitAt(text: string, at: number): string | undefined {
  const character = text.charAt(at);
  if (/[0-9]/.test(character)) return character;
  const subscript = character === '' ? -1 : subscripts.indexOf(character);
  return subscript < 0 ? undefined : String(subscript);
}

function readDigits(reader: Reader): string {
  let digits = '';
  for (let digit = digitAt(reader.text, reader.at); digit !== undefined; digit = digitAt(reader.text, reader.at)) {
    digits += digit;
    reader.at += 1;
  }
  return digits;
}

function checkedCount(from: number, to: number, written: string): number | NotAFormula {
  if (written === '') return 1;
  const count = Number(written);
  if (count === 0) return complain(from, to, 'zero-count');
  return count > 9999 ? complain(from, to, 'huge-count') : count;
}

/** The number before a unit; only here may it be a half (`0.5H2O`, `½H2O`), as a dot elsewhere separates units. */
function readMultiplier(reader: Reader): number | NotAFormula {
  const start = reader.at;
  if (reader.text.charAt(start) === '½') {
    reader.at += 1;
    return 0.5;
  }
  let digits = readDigits(reader);
  if (digits !== '' && reader.text.charAt(reader.at) === '.' && digitAt(reader.text, reader.at + 1) !== undefined) {
    reader.at += 1;
    digits += `.${readDigits(reader)}`;
  }
  return checkedCount(start, reader.at, digits);
}

function readTokens(reader: Reader, depth: number): Token[] | NotAFormula {
  const tokens: Token[] = [];
  while (reader.at < reader.text.length) {
    const token = closers[reader.text.charAt(reader.at)] === undefined ? readAtom(reader) : readGroup(reader, depth);
    if (token === undefined) break;
    if (token.kind === 'not-a-formula') return token;
    tokens.push(token);
  }
  return tokens;
}

function readGroup(reader: Reader, depth: number): Token | NotAFormula {
  const start = reader.at;
  if (depth >= deepest) return complain(start, start + 1, 'too-deep');
  const closer = closers[reader.text.charAt(start)];
  reader.at += 1;
  const tokens = readTokens(reader, depth + 1);
  if ('reason' in tokens) return tokens;
  if (reader.at >= reader.text.length) return complain(start, start + 1, 'not-closed');
  if (reader.text.charAt(reader.at) !== closer)
    return complain(reader.at, reader.at + 1, reasonFor(reader.text.charAt(reader.at)));
  reader.at += 1;
  if (tokens.length === 0) return complain(start, reader.at, 'empty-group');
  const countStart = reader.at;
  const count = checkedCount(countStart, reader.at, readDigits(reader));
  return typeof count === 'number' ? { kind: 'group', tokens, count } : { ...count, to: reader.at };
}

/** An element; undefined where no capital letter stands. Two letters are tried before one: `Co` before `C`. */
function readAtom(reader: Reader): Token | NotAFormula | undefined {
  const start = reader.at;
  const letters = /^[A-Z][a-z]?/.exec(reader.text.slice(start, start + 2))?.[0];
  if (letters === undefined) return undefined;
  const symbol = isElement(letters) ? letters : letters.charAt(0);
  // A lower-case letter left over (`Xx`, `Caa`) belongs to the symbol the writer had in mind.
  const whole = /^[A-Z][a-z]*/.exec(reader.text.slice(start))?.[0] ?? letters;
  if (!isElement(symbol) || whole.length > symbol.length)
    return complain(start, start + whole.length, 'unknown-element');
  reader.at += symbol.length;
  const countStart = reader.at;
  const count = checkedCount(countStart, reader.at, readDigits(reader));
  return typeof count === 'number' ? { kind: 'atom', symbol, count } : { ...count, to: reader.at };
}

function addTokens(counts: Partial<Record<ElementSymbol, number>>, tokens: readonly Token[], times: number): void {
  for (const token of tokens) {
    if (token.kind === 'atom') counts[token.symbol] = (counts[token.symbol] ?? 0) + token.count * times;
    else addTokens(counts, token.tokens, token.count * times);
  }
}
