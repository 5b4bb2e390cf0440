// What can be done with a batch, offered above it.

import { rangeOf } from '../syntax/place.ts';
import type { Range } from '../syntax/tree.ts';
import type { Snapshot } from '../workspace/snapshot.ts';

export type Lens =
  /** Shows the bench sheet of a batch. */
  | { readonly kind: 'sheet'; readonly range: Range; readonly batch: string }
  /** Writes down a reading of a batch. */
  | { readonly kind: 'record-reading'; readonly range: Range; readonly batch: string }
  /** Tells what has changed in all that is computed since the last commit. */
  | { readonly kind: 'compare'; readonly range: Range };

/** Comparing is about the whole file and is offered once; the rest at each batch that is read. */
export function lenses({ document, recipe }: Snapshot): readonly Lens[] {
  const nameRange = (path: readonly string[]): Range | undefined => rangeOf(document, { path, part: { kind: 'key' } });
  const section = nameRange(['batches']);
  if (section === undefined) return [];
  const batches = [...recipe.sections.batches.keys()].flatMap((batch): readonly Lens[] => {
    const range = nameRange(['batches', batch]);
    if (range === undefined) return [];
    return [
      { kind: 'sheet', range, batch },
      { kind: 'record-reading', range, batch },
    ];
  });
  return [{ kind: 'compare', range: section }, ...batches];
}
