// What is made of, or found in, each thing of a long list. A list is mostly that of the keystroke before with another thing at one
// place: only what stands where something else stood is looked at again.

import { Remembered } from '../../schema/remembered.ts';
import { memo } from './memo.ts';

/**
 * Gives for a list what is made of each of its things: the same list as before where all of that is. A thing that stays where it was
 * is asked again only where what is `given` has changed and `touchedBy` says that this may touch it; without `touchedBy` it may. What
 * is made anew and `isAlike` gives way to what was there.
 */
export function madeOfEach<T extends object, A extends readonly unknown[], R>(
  make: (thing: T, ...given: A) => R,
  touchedBy: (before: A, now: A) => (thing: T, made: R) => boolean = () => anything,
  isAlike: (before: R, now: R) => boolean = Object.is,
): (things: readonly T[], ...given: A) => readonly R[] {
  const known = new Remembered<object, Made<T, A, R>>();
  return (things, ...given) => {
    const [first] = things;
    const end = things.at(-1);
    if (first === undefined || end === undefined) return nothing;
    // A later state of a list nearly always begins or ends with the same thing.
    const before = known.get(first) ?? known.get(end) ?? { things: [], given, made: [] };
    const isSame = before.given.every((one, at) => one === given[at]);
    if (isSame && before.things === things) return before.made;
    const isTouched = isSame ? undefined : touchedBy(before.given, given);
    const made = again(before, things, isTouched, (thing, was) => {
      const one = make(thing, ...given);
      return was !== undefined && isAlike(was, one) ? was : one;
    });
    const now = { things, given, made };
    known.set(first, now);
    known.set(end, now);
    return made;
  };
}

interface Made<T, A, R> {
  readonly things: readonly T[];
  readonly given: A;
  readonly made: readonly R[];
}

function again<T, R>(
  before: Made<T, unknown, R>,
  things: readonly T[],
  isTouched: ((thing: T, made: R) => boolean) | undefined,
  make: (thing: T, was: R | undefined) => R,
): readonly R[] {
  const { same, by } = shiftFrom(before.things, things);
  let made: R[] | undefined;
  for (let at = 0; at < things.length; at++) {
    const thing = things[at] as T;
    const was = at < same ? at : at + by;
    const stays = before.things[was] === thing && !isTouched?.(thing, before.made[was] as R);
    // Nearly always: it stays, and all before it did.
    if (stays && made === undefined && was === at) continue;
    const one = stays ? (before.made[was] as R) : make(thing, before.made[was]);
    if (made !== undefined) made.push(one);
    else if (at >= before.made.length || one !== before.made[at]) made = [...before.made.slice(0, at), one];
  }
  return made ?? (things.length === before.made.length ? before.made : before.made.slice(0, things.length));
}

/**
 * What is put in or taken out moves all that stands behind it: the first `same` things of a list stand where they stood before, the
 * others stood `by` places further on.
 */
function shiftFrom(
  before: readonly unknown[],
  things: readonly unknown[],
): { readonly same: number; readonly by: number } {
  const by = before.length - things.length;
  let same = 0;
  if (by !== 0) while (same < things.length && before[same] === things[same]) same++;
  return { same, by };
}

/** Gives all that is found in each thing of a list, in one list; remembered in the same way. */
export function foundInEach<T extends object, A extends readonly unknown[], F>(
  find: (thing: T, ...given: A) => readonly F[],
): (things: readonly T[], ...given: A) => readonly F[] {
  const inEach = madeOfEach((thing: T, ...given: A): readonly F[] => {
    const found = find(thing, ...given);
    return found.length === 0 ? nothing : found;
  });
  return (things, ...given) => joined(inEach(things, ...given)) as readonly F[];
}

/** Most lists are empty. */
const joined = memo((lists: readonly (readonly unknown[])[]): readonly unknown[] => {
  const all: unknown[] = [];
  for (const list of lists) if (list !== nothing) all.push(...list);
  return all;
});

/** The things of two states of a list that are not in both at the same place. */
export function changedBetween<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  if (before === now) return nothing;
  const { same, by } = shiftFrom(before, now);
  const changed: T[] = [];
  for (let at = same; at < now.length; at++) if (before[at + by] !== now[at]) changed.push(now[at] as T);
  for (let at = same; at < before.length; at++) if (before[at] !== now[at - by]) changed.push(before[at] as T);
  return changed;
}

/** The values of a map in a list: the same list for the same map. */
export const valuesOf = memo((map: ReadonlyMap<string, object>): readonly object[] => [...map.values()]) as <T>(
  map: ReadonlyMap<string, T>,
) => readonly T[];

const nothing: readonly never[] = [];
const anything = (): boolean => true;
