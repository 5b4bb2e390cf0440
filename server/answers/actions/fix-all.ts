// Every fix of a file that cannot be wrong, as one action.

import type { TextChange } from '../../syntax/document.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';

export function fixAllAction({ findings, document }: Snapshot): readonly Action[] {
  const sure = findings.flatMap(({ finding }) => finding.fixes?.find(fix => fix.sure)?.edits ?? []);
  const edits: TextChange[] = [];
  for (const edit of textEdits(document, sure)) {
    // Of two that overlap the first is made; the other is found again afterwards.
    if ((edits[edits.length - 1]?.to ?? 0) <= edit.from) edits.push(edit);
  }
  if (edits.length === 0) return [];
  return [{ kind: 'fix-all', title: 'Mend everything that has one sure fix', edits, preferred: false }];
}
