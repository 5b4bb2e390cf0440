// Two plans -> what changed, and because of which written places. Raw values: whether a change can be seen is for words to say.

import type { Path } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import { equal } from '../recipe/equal.ts';
import type { Scope } from '../recipe/use.ts';
import { type Fact, type FactGroup, type FactValue, factGroups } from './fact.ts';
import { factsOf } from './facts.ts';
import { type Figure, inputsOf, writtenPlaces } from './figure.ts';
import type { Plan } from './plan.ts';
import { type ChangedPlace, changedPlaces } from './written.ts';

export interface Changes {
  /** Entry by entry in the order of the new plan; of each entry what is gone comes last, as do entries that are gone. */
  readonly changes: readonly Change[];
  /** Entries that only have another name: all that is computed of them is the same. */
  readonly renames: readonly Rename[];
  /** The facts that say the same in both. */
  readonly same: readonly Fact[];
}

export interface Change {
  readonly fact: Fact;
  /** Undefined where the fact is new, or gone. */
  readonly before: FactValue | undefined;
  readonly after: FactValue | undefined;
  /** Where what is written first differs; empty where the two recipes say the same of all that it rests on. */
  readonly because: readonly ChangedPlace[];
}

export interface Rename {
  readonly group: FactGroup;
  readonly before: string;
  readonly after: string;
}

export function changesBetween(before: Plan, after: Plan): Changes {
  const was = factsOf(before);
  const is = factsOf(after);
  const renames = renamesIn(was, is);
  const old = new Map(was.map(fact => [keyOf(renamed(fact, renames)), fact]));
  const now = new Set(is.map(fact => keyOf(renamed(fact, renames))));
  const scopes = { before: before.scope, after: after.scope };
  const changes: Change[] = [];
  const same: Fact[] = [];
  for (const fact of is) {
    const past = old.get(keyOf(renamed(fact, renames)));
    if (past !== undefined && isSame(past.value, renamedValue(past.value, fact.value, renames))) same.push(fact);
    else changes.push({ fact, before: past?.value, after: fact.value, because: reasonsFor(past, fact, scopes) });
  }
  for (const [key, fact] of old) {
    if (now.has(key)) continue;
    changes.push({ fact, before: fact.value, after: undefined, because: reasonsFor(fact, undefined, scopes) });
  }
  return { changes: byEntry(changes), renames, same };
}

/** Tasks lie among each other by their days, and what is gone lies behind all: each goes to its like. */
function byEntry(changes: readonly Change[]): readonly Change[] {
  const entryOf = ({ fact: { group, name } }: Change): string => `${group}/${name}`;
  const entries = [...new Set(changes.map(entryOf))];
  const rank = (change: Change): number => factGroups.indexOf(change.fact.group);
  return changes.toSorted((a, b) => rank(a) - rank(b) || entries.indexOf(entryOf(a)) - entries.indexOf(entryOf(b)));
}

function keyOf({ group, name, what }: Pick<Fact, 'group' | 'name' | 'what'>): string {
  return JSON.stringify([group, name, what]);
}

function isSame(a: FactValue, b: FactValue): boolean {
  switch (a.kind) {
    case 'figure':
      return b.kind === 'figure' && sameFigure(a.figure, b.figure);
    case 'amount':
      return b.kind === 'amount' && sameQuantity(a.quantity, b.quantity);
    case 'date':
      return b.kind === 'date' && a.day === b.day;
    case 'money':
      return b.kind === 'money' && equal(a.money, b.money);
    case 'measured':
      return b.kind === 'measured' && a.isOfEachLoad === b.isOfEachLoad && equal(a.measured, b.measured);
    case 'text':
      return b.kind === 'text' && a.text === b.text;
  }
}

/** Sums taken in another order and solutions found by another way differ in their last digits, which is no change. */
const noise = 1e-9;

function sameFigure(a: Figure, b: Figure): boolean {
  if (a.kind === 'unknown' || b.kind === 'unknown') return a.kind === b.kind;
  return sameQuantity(a.quantity, b.quantity);
}

function sameQuantity(a: Quantity, b: Quantity): boolean {
  return a.dimension === b.dimension && Math.abs(a.value - b.value) <= noise * Math.abs(a.value);
}

/** Names that are gone, each with a new name of the same kind of which all is the same. */
function renamesIn(was: readonly Fact[], is: readonly Fact[]): readonly Rename[] {
  const gone = byName(was);
  const come = byName(is);
  const renames: Rename[] = [];
  for (const [key, old] of gone) {
    const [first] = old;
    if (come.has(key) || first === undefined || first.group === 'task') continue;
    const found = [...come].find(
      ([other, facts]) => !gone.has(other) && facts[0]?.group === first.group && isSameButName(old, facts),
    );
    if (found?.[1][0] === undefined) continue;
    come.delete(found[0]);
    renames.push({ group: first.group, before: first.name, after: found[1][0].name });
  }
  return renames;
}

function byName(facts: readonly Fact[]): Map<string, readonly Fact[]> {
  const named = new Map<string, readonly Fact[]>();
  for (const fact of facts) {
    const key = `${fact.group}/${fact.name}`;
    named.set(key, [...(named.get(key) ?? []), fact]);
  }
  return named;
}

function isSameButName(old: readonly Fact[], now: readonly Fact[]): boolean {
  const isKnown = ({ value }: Fact): boolean => value.kind !== 'figure' || value.figure.kind === 'known';
  return (
    old.length === now.length &&
    old.some(isKnown) &&
    old.every((fact, index) => {
      const other = now[index];
      return other !== undefined && fact.what === other.what && isSame(fact.value, other.value);
    })
  );
}

/** A fact with one name for an entry in both plans, which is that of the new one. */
function renamed(fact: Fact, renames: readonly Rename[]): Fact {
  if (renames.length === 0) return fact;
  const groups: readonly FactGroup[] = fact.group === 'task' ? ['batch', 'planting'] : [fact.group];
  const own = renames.find(({ group, before }) => groups.includes(group) && before === fact.name);
  return { ...fact, name: own?.after ?? fact.name, what: withNewNames(fact.what, renames) };
}

function renamedValue(past: FactValue, value: FactValue, renames: readonly Rename[]): FactValue {
  if (past.kind !== 'text' || value.kind !== 'text') return value;
  return withNewNames(past.text, renames) === withNewNames(value.text, renames) ? past : value;
}

/** Words of a phrase may happen to be a name; where both plans say them, they stay the same on both sides. */
function withNewNames(text: string, renames: readonly Rename[]): string {
  return text.replace(/[a-z][a-z0-9-]*/gu, word => renames.find(({ before }) => before === word)?.after ?? word);
}

interface Scopes {
  readonly before: Scope;
  readonly after: Scope;
}

/**
 * Where what is written first differs: the places of the two derivations that say something else; what a step was told beside its
 * figures, such as the tools on the bench, is looked for in all that the fact rests on.
 */
function reasonsFor(past: Fact | undefined, fact: Fact | undefined, scopes: Scopes): readonly ChangedPlace[] {
  const was = figureIn(past);
  const is = figureIn(fact);
  const changedAt = (paths: readonly Path[]): readonly ChangedPlace[] =>
    distinct(paths.flatMap(path => changedPlaces(scopes.before, scopes.after, path)));
  const rests = [...(past?.rests ?? []), ...(fact?.rests ?? [])];
  const differing = differencesBetween(was, is);
  const found = changedAt([...differing.paths, ...(differing.beside ? rests : [])]);
  if (found.length > 0) return found;
  const named = changedAt([was, is].flatMap(figure => (figure === undefined ? [] : pathsIn(figure))));
  return named.length > 0 ? named : changedAt(rests);
}

function figureIn(fact: Fact | undefined): Figure | undefined {
  return fact?.value.kind === 'figure' ? fact.value.figure : undefined;
}

interface Differences {
  readonly paths: readonly Path[];
  /** A step was told something else beside its figures. */
  readonly beside: boolean;
}

const nothing: Differences = { paths: [], beside: false };

/** Walks two derivations down from their results; what gives the same on both sides is passed over. */
function differencesBetween(was: Figure | undefined, is: Figure | undefined): Differences {
  if (was === undefined || is === undefined || was.kind === 'unknown' || is.kind === 'unknown') {
    return { paths: [was, is].flatMap(figure => (figure === undefined ? [] : pathsIn(figure))), beside: false };
  }
  if (sameFigure(was, is)) return nothing;
  if (was.by.kind !== 'step' || is.by.kind !== 'step' || was.by.formula.id !== is.by.formula.id) {
    return { paths: [...pathsIn(was), ...pathsIn(is)], beside: false };
  }
  const old = inputsOf(was.by);
  const now = inputsOf(is.by);
  const inner = Array.from({ length: Math.max(old.length, now.length) }, (_, at) =>
    differencesBetween(old[at], now[at]),
  );
  return {
    paths: inner.flatMap(({ paths }) => paths),
    beside: inner.some(({ beside }) => beside) || !equal(was.by.context, is.by.context),
  };
}

function pathsIn(figure: Figure): readonly Path[] {
  return writtenPlaces(figure).map(({ path }) => path);
}

function distinct(places: readonly ChangedPlace[]): readonly ChangedPlace[] {
  return [...new Map(places.map(place => [JSON.stringify([place.side, place.path]), place])).values()];
}
