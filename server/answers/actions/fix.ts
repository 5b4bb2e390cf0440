// The fixes of the findings at a place.

import { textEdits } from '../../syntax/edit.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';

export function fixActions({ findings, document }: Snapshot, at: Range): readonly Action[] {
  return findings
    .filter(({ range }) => touches(range, at))
    .flatMap(located =>
      (located.finding.fixes ?? []).flatMap((fix, index) => {
        const edits = textEdits(document, fix.edits);
        if (edits.length === 0) return [];
        return [{ kind: 'fix' as const, title: fix.title, edits, preferred: index === 0 && fix.sure, mends: located }];
      }),
    );
}

/** Whether two ranges share a place; an empty one touches at either end. */
export function touches(a: Range, b: Range): boolean {
  return a.from <= b.to && b.from <= a.to;
}
