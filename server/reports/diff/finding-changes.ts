// Which findings come with a change, which go, and which say something else. Told by what they are about, since lines move.

import type { Snapshot } from '../../workspace/snapshot.ts';
import { type Reported, reportOf } from '../findings/reported.ts';

export interface FindingChanges {
  readonly appear: readonly Reported[];
  /** The same finding of the same place, with other amounts or names in it. */
  readonly change: readonly { readonly before: Reported; readonly after: Reported }[];
  readonly disappear: readonly Reported[];
  readonly stay: number;
}

/** Hints are for who writes, not for who reviews. */
export function findingsIn(snapshot: Snapshot, file: string): readonly Reported[] {
  return reportOf(snapshot, file).findings.filter(({ severity }) => severity !== 'hint');
}

export function findingChanges(before: readonly Reported[], after: readonly Reported[]): FindingChanges {
  const left = [...before];
  const take = (isIt: (old: Reported) => boolean): Reported | undefined => {
    const at = left.findIndex(isIt);
    return at === -1 ? undefined : left.splice(at, 1)[0];
  };
  // The likest first: the same words at the same place, the same words where a list has moved, the same place.
  const open = after.filter(now => take(old => isAbout(old, now) && old.message === now.message) === undefined);
  const others = open.filter(now => take(old => old.code === now.code && old.message === now.message) === undefined);
  const change: { readonly before: Reported; readonly after: Reported }[] = [];
  const appear = others.filter(now => {
    const old = take(one => isAbout(one, now));
    if (old !== undefined) change.push({ before: old, after: now });
    return old === undefined;
  });
  return { appear, change, disappear: left, stay: after.length - others.length };
}

function isAbout(old: Reported, now: Reported): boolean {
  return old.code === now.code && old.path === now.path;
}
