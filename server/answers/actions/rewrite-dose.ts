// Other ways to write a dose: as the amount that the tools measure, as an amount for the batch, as a rate.

import type { BatchPlan, DosePlan } from '../../plan/batch.ts';
import { rateOfDose } from '../../plan/dose.ts';
import { type Figure, numberOf } from '../../plan/figure.ts';
import type { Cursor } from '../../syntax/cursor.ts';
import { textEdits } from '../../syntax/edit.ts';
import { amountText } from '../../words/amount.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';

export function rewriteDoseActions({ plan, document, recipe }: Snapshot, { path }: Cursor): readonly Action[] {
  const [section, batchName, key, feedName] = path;
  if (section !== 'batches' || key !== 'feed') return [];
  const batch = plan.batches.get(String(batchName));
  const dose = batch?.doses.get(String(feedName));
  if (batch === undefined || dose === undefined) return [];
  const titles = new Map<string, string>();
  for (const { figure, as } of waysToWrite(batch, dose)) {
    if (figure.kind === 'unknown') continue;
    const text = amountText(figure.quantity, recipe.show);
    if (!titles.has(text)) titles.set(text, `Write ${as}, \`${text}\``);
  }
  return [...titles].map(([text, title]) => {
    const edits = textEdits(document, [{ kind: 'replace', at: dose.at, text }]);
    return { kind: 'rewrite', title, edits, preferred: false };
  });
}

interface Way {
  readonly figure: Figure;
  readonly as: string;
}

function waysToWrite({ volume }: BatchPlan, { dose, exact, measured, poured }: DosePlan): readonly Way[] {
  const isAmount = dose.kind === 'amount';
  const measures = measured.kind === 'measured' && !(isAmount && numberOf(exact) === numberOf(poured));
  return [
    ...(measures ? [{ figure: poured, as: 'the measured amount' }] : []),
    ...(isAmount ? [] : [{ figure: exact, as: 'the amount for the batch' }]),
    ...(dose.kind === 'rate' ? [] : [{ figure: rateOfDose(exact, volume), as: 'the rate' }]),
  ];
}
