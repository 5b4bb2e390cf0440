// What is written in two recipes, compared place by place: which of the places that a number rests on say something else. Apart from
// the comparison of plans, because it knows no plan, only values and their paths.

import type { Path } from '../../schema/place.ts';
import { type SectionName, sectionNames } from '../../schema/section-names.ts';
import { equal } from '../recipe/equal.ts';
import { find, type Scope } from '../recipe/use.ts';

/** A place whose written value differs, with the recipe in which it is to be looked up: the new one wherever it stands there. */
export interface ChangedPlace {
  readonly path: Path;
  readonly side: 'before' | 'after';
  /** The other file that it stands in, where it is borrowed. */
  readonly file?: string;
}

/** The places at or below a path where two recipes say something else, as deep as they can be told apart. */
export function changedPlaces(before: Scope, after: Scope, path: Path): readonly ChangedPlace[] {
  if (path[0] === 'log') return changedLog(before, after, path);
  return deepest(valueIn(before, path), valueIn(after, path), path).map(at => placed(before, after, at));
}

/** What stands at a path, be it the recipe's own or borrowed; undefined where nothing does. */
function valueIn(scope: Scope, path: Path): unknown {
  const [top, name, ...rest] = path;
  if (typeof top !== 'string') return undefined;
  if (!isSection(top)) return below((scope.recipe as unknown as Readonly<Record<string, unknown>>)[top], path.slice(1));
  if (typeof name !== 'string') return scope.recipe.sections[top];
  return below(find(scope, top, name)?.value, rest);
}

function below(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((at, key) => {
    if (at instanceof Map) return at.get(key);
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    return (at as Readonly<Record<string | number, unknown>>)[key];
  }, value);
}

function deepest(before: unknown, after: unknown, path: Path): readonly Path[] {
  if (equal(before, after)) return [];
  const old = branchesOf(before);
  const now = branchesOf(after);
  if (old === undefined || now === undefined) return [path];
  return [...new Set([...now.keys(), ...old.keys()])].flatMap(key =>
    deepest(old.get(key), now.get(key), [...path, key]),
  );
}

/** The entries of what is written as a map or a list; undefined for what is written as one value, such as a quantity or a dose. */
function branchesOf(value: unknown): ReadonlyMap<string | number, unknown> | undefined {
  if (value instanceof Map) return value;
  if (Array.isArray(value)) return new Map(value.map((item, index) => [index, item] as const));
  if (typeof value !== 'object' || value === null || isOneValue(value)) return undefined;
  return new Map(Object.entries(value));
}

function isOneValue(value: object): boolean {
  return 'dimension' in value || 'kind' in value || 'currency' in value || 'at' in value;
}

/**
 * Log entries have no name: one is new where the other log holds none like it, wherever it stands. Two that differ and are of one day
 * and planting are one entry, of which only what differs is told.
 */
function changedLog(before: Scope, after: Scope, path: Path): readonly ChangedPlace[] {
  const isMeant = ({ at }: Logged): boolean => path[1] === undefined || path[1] === at;
  const gone = onlyIn(before, after);
  const taken = new Set<Logged>();
  const come = onlyIn(after, before).flatMap(now => {
    const old = gone.find(one => !taken.has(one) && isSameDay(one, now));
    if (old === undefined) return isMeant(now) ? [entryPath(now)] : [];
    taken.add(old);
    if (!isMeant(now) && !isMeant(old)) return [];
    const paths = deepest(old.entry, now.entry, entryPath(now));
    // What is not written any more has no place in the new entry.
    return paths.every(at => below(now.entry, at.slice(2)) !== undefined) ? paths : [entryPath(now)];
  });
  return [
    ...come.map((at): ChangedPlace => ({ path: at, side: 'after' })),
    ...gone
      .filter(one => !taken.has(one) && isMeant(one))
      .map((one): ChangedPlace => ({ path: entryPath(one), side: 'before' })),
  ];
}

interface Logged {
  readonly entry: Scope['recipe']['log'][number];
  readonly at: number;
}

function onlyIn(of: Scope, other: Scope): readonly Logged[] {
  return of.recipe.log.flatMap((entry, at) => (other.recipe.log.some(one => equal(one, entry)) ? [] : [{ entry, at }]));
}

function isSameDay({ entry: one }: Logged, { entry: other }: Logged): boolean {
  return one?.on !== undefined && one.on === other?.on && one.planting === other.planting;
}

function entryPath({ at }: Logged): Path {
  return ['log', at];
}

function placed(before: Scope, after: Scope, path: Path): ChangedPlace {
  const side = valueIn(after, path) === undefined ? 'before' : 'after';
  const [section, name] = path;
  const scope = side === 'after' ? after : before;
  const file =
    typeof section === 'string' && typeof name === 'string' && isSection(section)
      ? find(scope, section, name)?.file
      : undefined;
  return file === undefined ? { path, side } : { path, side, file };
}

function isSection(key: string): key is SectionName {
  return Object.hasOwn(sectionNames, key);
}
