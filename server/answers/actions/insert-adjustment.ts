// Writes the computed adjustment of a batch down as added, ready for the pH that is measured after it.

import { adjustmentOf } from '../../plan/adjust.ts';
import type { Cursor } from '../../syntax/cursor.ts';
import { textEdits } from '../../syntax/edit.ts';
import { amountText } from '../../words/amount.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';

/** The first step, as it should be added first, and the whole amount where it is no more than that. On `adjust` only. */
export function insertAdjustmentActions({ plan, document, recipe }: Snapshot, { path }: Cursor): readonly Action[] {
  const [section, name, key] = path;
  const batch = section === 'batches' && key === 'adjust' ? plan.batches.get(String(name)) : undefined;
  const adjustment = batch === undefined ? undefined : adjustmentOf(batch);
  if (batch === undefined || adjustment?.adjuster === undefined) return [];
  const { firstStep, exact, adjuster } = adjustment;
  const figure = firstStep.kind === 'known' ? firstStep : exact;
  if (figure.kind === 'unknown' || figure.quantity.value <= 0) return [];
  const amount = amountText(figure.quantity, recipe.show);
  const to = [...batch.needs.batch.path, 'readings'];
  const edits = textEdits(document, [{ kind: 'append', to, text: `{ add: { ${adjuster.name}: ${amount} } }` }]);
  if (edits.length === 0) return [];
  // The amount is of an acid or base, so that its title cautions as everything does that names one.
  const title = `Write down \`${amount}\` of \`${adjuster.name}\` as added (gloves and eye protection; stir, then measure)`;
  return [{ kind: 'rewrite', title, edits, preferred: false }];
}
