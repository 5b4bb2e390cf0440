// The places in one file where the name at a place is written, to be marked while the cursor stands on it.

import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { entityAt, occurrencesIn } from './entity.ts';

export interface Highlight {
  readonly range: Range;
  /** A declaration gives the name its meaning; a reference reads it. */
  readonly role: 'declaration' | 'reference';
}

export function highlights(snapshot: Snapshot, offset: number): readonly Highlight[] {
  const found = entityAt(snapshot, offset);
  if (found === undefined) return [];
  return [...occurrencesIn(snapshot, found.entity)]
    .sort((a, b) => a.range.from - b.range.from)
    .map(({ range, role }) => ({ range, role }));
}
