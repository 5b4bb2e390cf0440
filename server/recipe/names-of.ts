// The names of a section as one object for as long as none comes or goes: what is known of names need not be found again because an
// entry changed.

import { Remembered } from '../../schema/remembered.ts';

/** By section, what its names are; the same list for sections of the same names that came one from the other. */
const known = new Remembered<ReadonlyMap<string, unknown>, ReadonlySet<string>>();

/** The names of a section. */
export function namesOf(entries: ReadonlyMap<string, unknown>): ReadonlySet<string> {
  const before = known.get(entries);
  if (before !== undefined) return before;
  const names = new Set(entries.keys());
  known.set(entries, names);
  return names;
}

/** Lets a section keep the names of the one that it takes the place of, which are the same in the same order. */
export function keepNames(entries: ReadonlyMap<string, unknown>, before: ReadonlyMap<string, unknown>): void {
  known.set(entries, namesOf(before));
}

/** Whether two sections have the same names in the same order. */
export function haveSameKeys(some: ReadonlyMap<string, unknown>, others: ReadonlyMap<string, unknown>): boolean {
  if (some.size !== others.size) return false;
  const names = others.keys();
  for (const name of some.keys()) if (name !== names.next().value) return false;
  return true;
}
