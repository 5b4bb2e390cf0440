// From a written unit to its size: symbols, aliases, forgiven letter case, and `a/b` units derived from two rows.

import type { Dimension } from './dimensions.ts';
import { nearest } from './nearest.ts';
import { once } from './once.ts';
import type { Slice } from './parsed.ts';
import type { SourceKey } from './sources.ts';
import { type SimpleSymbol, type System, unitRows, type units } from './units.ts';

/** A unit of one dimension: `(reading - zero) * times / over` is the value in the base unit. */
export interface Unit<D extends Dimension = Dimension> {
  readonly symbol: string;
  readonly title: string;
  readonly dimension: D;
  readonly times: number;
  readonly over: number;
  readonly zero: number;
  readonly system: System;
  readonly sources: readonly SourceKey[];
  readonly rare: boolean;
  readonly note?: string;
}

/** The `a/b` units that are offered and can be asked for by name; others are read just as well. */
const offered = {
  'mL/L': 'volume-per-volume',
  'mL/gal': 'volume-per-volume',
  'tsp/gal': 'volume-per-volume',
  'tbsp/gal': 'volume-per-volume',
  'fl_oz/gal': 'volume-per-volume',
  'L/m3': 'volume-per-volume',
  'mL/gal_imp': 'volume-per-volume',
  'mg/L': 'mass-per-volume',
  'g/L': 'mass-per-volume',
  'kg/L': 'mass-per-volume',
  'g/mL': 'mass-per-volume',
  'µg/L': 'mass-per-volume',
  'g/gal': 'mass-per-volume',
  'oz/gal': 'mass-per-volume',
  'lb/gal': 'mass-per-volume',
  'mL/d': 'volume-per-time',
  'L/d': 'volume-per-time',
  'L/wk': 'volume-per-time',
  'gal/d': 'volume-per-time',
  'fl_oz/d': 'volume-per-time',
} as const satisfies Record<string, Dimension>;

type Offered = typeof offered;
export type UnitSymbol = SimpleSymbol | keyof Offered;
type DimensionOf<S extends UnitSymbol> = S extends keyof Offered
  ? Offered[S]
  : S extends SimpleSymbol
    ? (typeof units)[S]['dimension']
    : never;

/** Which dimension two parts make, and by how much the quotient of their base units exceeds its base unit. */
const quotients: Partial<Record<Dimension, Partial<Record<Dimension, { dimension: Dimension; scale: number }>>>> = {
  volume: {
    volume: { dimension: 'volume-per-volume', scale: 1000 },
    duration: { dimension: 'volume-per-time', scale: 1000 },
  },
  mass: { volume: { dimension: 'mass-per-volume', scale: 1000 } },
};

const simple: readonly Unit[] = unitRows.map(([symbol, row]) => ({
  symbol,
  title: row.title,
  dimension: row.dimension,
  times: row.times,
  over: row.over,
  zero: row.zero ?? 0,
  system: row.system,
  sources: [row.source],
  rare: row.rare ?? false,
  ...(row.note === undefined ? {} : { note: row.note }),
}));

const bySymbol = new Map<string, Unit>(simple.map(unit => [unit.symbol, unit]));

/** The unit of a symbol; an `a/b` unit is made when it is first asked for, because there are hundreds and a recipe uses a few. */
function symbolled(symbol: string): Unit | undefined {
  const known = bySymbol.get(symbol);
  if (known !== undefined) return known;
  const stroke = symbol.indexOf('/');
  const above = bySymbol.get(symbol.slice(0, stroke));
  const below = bySymbol.get(symbol.slice(stroke + 1));
  const made = stroke === -1 || above === undefined || below === undefined ? undefined : quotient(above, below, 1);
  if (made !== undefined) bySymbol.set(symbol, made);
  return made;
}

/** Most recipes write symbols, so the other spellings are laid out when they are first wanted. */
const spellings = once((): readonly (readonly [string, Unit])[] =>
  unitRows.flatMap(([symbol, row]) => [symbol, ...row.aliases].map(spelling => [spelling, unitOf(symbol)] as const)),
);

const exact = once((): ReadonlyMap<string, Unit> => new Map(spellings().map(([name, unit]) => [plain(name), unit])));

/** Spellings of two or more letters in lower case; those that two units share are left out. */
const caseless = once((): ReadonlyMap<string, Unit> => {
  const found = new Map<string, Unit | undefined>();
  for (const [spelling, unit] of exact()) {
    const lower = spelling.toLowerCase();
    if (1 < lower.length) found.set(lower, found.has(lower) && found.get(lower) !== unit ? undefined : unit);
  }
  return new Map([...found].flatMap(([lower, unit]) => (unit === undefined ? [] : [[lower, unit] as const])));
});

export type FoundUnit =
  | { readonly kind: 'found'; readonly unit: Unit }
  /** `wrong` is the part that is not known, all of the text or one side of its `/`. */
  | { readonly kind: 'unknown'; readonly wrong: Slice };

/** The unit that a text names. Letter case and spaces are forgiven where only one unit can be meant. */
export function findUnit(text: string): FoundUnit {
  const whole = symbolled(text) ?? findSimple(text);
  if (whole !== undefined) return { kind: 'found', unit: whole };
  const all = { kind: 'unknown', wrong: { from: 0, to: text.length } } as const;
  const parts = /^(.*?)(\s*\/\s*|\s+per\s+)(.*)$/u.exec(text);
  if (parts === null) return all;
  const [, aboveText = '', stroke = '', belowText = ''] = parts;
  const counted = /^(\d+(?:\.\d+)?)\s*(?=\D)/u.exec(belowText)?.[0] ?? '';
  const belowFrom = aboveText.length + stroke.length + counted.length;
  const above = findSimple(aboveText);
  const below = findSimple(text.slice(belowFrom));
  if (above !== undefined && below !== undefined) {
    const unit = per(above, below, counted === '' ? 1 : Number.parseFloat(counted));
    return unit === undefined ? all : { kind: 'found', unit };
  }
  if (above !== undefined) return { kind: 'unknown', wrong: { from: belowFrom, to: text.length } };
  if (below !== undefined) return { kind: 'unknown', wrong: { from: 0, to: aboveText.length } };
  return all;
}

/** A unit by its symbol, typed by what it measures. */
export function unitOf<S extends UnitSymbol>(symbol: S): Unit<DimensionOf<S>> {
  const unit = symbolled(symbol);
  if (unit === undefined) throw new Error(`no unit row makes ${symbol}`);
  return unit as Unit<DimensionOf<S>>;
}

/** The units to offer for a dimension, the likeliest first: those of a system before those of others. */
export function unitsFor<D extends Dimension>(dimension: D, system: 'metric' | 'us' = 'metric'): readonly Unit<D>[] {
  const all = [...Object.keys(offered).map(symbolled), ...simple].filter(
    (unit): unit is Unit<D> => unit?.dimension === dimension,
  );
  return all.sort((a, b) => rank(a) - rank(b));

  function rank(unit: Unit): number {
    if (unit.rare) return 3;
    return unit.system === 'imperial' ? 2 : unit.system === 'any' || unit.system === system ? 0 : 1;
  }
}

/**
 * What to write for a unit that is not known: a symbol for the whole, or for the part of it that is wrong. Units of the
 * wanted dimensions come before any other.
 */
export function mendUnit(text: string, wrong: Slice, wanted: readonly Dimension[]): { at: Slice; symbol?: string } {
  const word = text.slice(wrong.from, wrong.to);
  const sides = Object.entries(quotients).flatMap(([above, belows]) =>
    Object.entries(belows).flatMap(([below, { dimension }]) => (wanted.includes(dimension) ? [{ above, below }] : [])),
  );
  if (sides.length !== 0 && word.length < text.length) {
    const parts = sides.map(side => (wrong.from === 0 ? side.above : side.below));
    const symbol = nearestOf(
      word,
      spellings().filter(([, unit]) => parts.includes(unit.dimension)),
    );
    return symbol === undefined ? { at: wrong } : { at: wrong, symbol };
  }
  const offers = Object.keys(offered).flatMap(symbol => {
    const unit = symbolled(symbol);
    return unit === undefined ? [] : [[symbol, unit] as const];
  });
  const all = [...spellings(), ...offers];
  const fit = all.filter(([, unit]) => wanted.includes(unit.dimension));
  const symbol = nearestOf(text, fit) ?? nearestOf(text, all);
  const at = { from: 0, to: text.length };
  return symbol === undefined ? { at } : { at, symbol };
}

function nearestOf(word: string, named: readonly (readonly [string, Unit])[]): string | undefined {
  const spelling = nearest(
    word,
    named.map(([name]) => name),
  );
  return named.find(([name]) => name === spelling)?.[1].symbol;
}

function findSimple(text: string): Unit | undefined {
  const asIs = exact().get(text);
  if (asIs !== undefined) return asIs;
  const name = plain(text);
  const unit = exact().get(name) ?? caseless().get(name.toLowerCase());
  if (unit === undefined || exact().has(name)) return unit;
  // A capital M is a million: reading `MS/cm` or `Mg` as a thousandth would be a guess by nine powers of ten.
  return name.startsWith('M') && unit.symbol.startsWith('m') ? undefined : unit;
}

function per(above: Unit, below: Unit, count: number): Unit | undefined {
  if (count === 1) return symbolled(`${above.symbol}/${below.symbol}`);
  return 0 < count && count < 1e9 ? quotient(above, below, count) : undefined;
}

function quotient(above: Unit, below: Unit, count: number): Unit | undefined {
  const rule = quotients[above.dimension]?.[below.dimension];
  if (rule === undefined) return undefined;
  const sizes = reduced(above.times, below.times);
  const inverses = reduced(below.over, above.over);
  const { times, over } = reduced(rule.scale * sizes.times * inverses.times, sizes.over * inverses.over * count);
  const systems = [above.system, below.system].filter(system => system !== 'any');
  return {
    symbol: `${above.symbol}/${count === 1 ? '' : `${count} `}${below.symbol}`,
    title: `${above.title} per ${count === 1 ? '' : `${count} `}${below.title}`,
    dimension: rule.dimension,
    times,
    over,
    zero: 0,
    system: systems.find(system => system !== 'metric') ?? systems[0] ?? 'any',
    sources: [...new Set([...above.sources, ...below.sources])],
    rare: false,
  };
}

/** The same ratio in the smallest whole numbers: mL/L is 1 mL/L and not 1000/1000, which would round twice. */
function reduced(times: number, over: number): { times: number; over: number } {
  if (!Number.isSafeInteger(times) || !Number.isSafeInteger(over)) return { times, over };
  let [a, b] = [times, over];
  while (b !== 0) [a, b] = [b, a % b];
  return { times: times / a, over: over / a };
}

/** One way to write the marks that have several: superscripts, the two micro signs, spaces, hats. */
function plain(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/\u2212/gu, '-')
    .replace(/[\^·⋅]/gu, mark => (mark === '^' ? '' : ' '))
    .trim()
    .replace(/\s+/gu, ' ')
    .replace(/ ?\/ ?| per /gu, '/');
}
