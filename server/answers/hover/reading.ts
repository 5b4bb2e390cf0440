// A reading of a batch: what the pH should have been, what the meter said, and what was added before it.

import type { BatchPlan } from '../../plan/batch.ts';
import { beyondPrediction } from '../../plan/difference.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import { stateOf } from '../../plan/state.ts';
import { find, type Scope } from '../../recipe/use.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { explanationText, figureText, sourcesText } from '../../words/figure.ts';
import { blocks, code, lines, table } from './blocks.ts';
import { cautionBlock } from './cautions.ts';

/** Undefined where the batch has no such reading. */
export function readingHover(batch: BatchPlan, index: number, scope: Scope, reader: Reader): string | undefined {
  const found = stateOf(batch).readings[index];
  if (found?.reading === undefined) return undefined;
  const { reading, predicted, measured } = found;
  const added = [...(reading.add ?? [])];
  const addedText = added.flatMap(([name, amount]) =>
    amount === undefined ? [] : [`${amountText(amount, reader)} of ${code(name)}`],
  );
  const rows = [['predicted', figureText(predicted, reader)]];
  if (measured !== undefined) rows.push(['measured', figureText(measured, reader)]);
  if (measured !== undefined && predicted.kind === 'known') {
    rows.push(['difference', figureText(beyondPrediction({ measured, predicted }), reader)]);
  }
  const adjuster = added.map(([name]) => name).find(name => find(scope, 'feeds', name) === undefined);
  return blocks(
    `**Reading ${index + 1} of ${code(batch.needs.batch.name)}**`,
    lines(addedText.length === 0 ? undefined : `Added before it: ${addedText.join(', ')}.`),
    table(['', 'pH'], rows, [1]),
    reading.EC === undefined
      ? undefined
      : `EC: ${amountText(reading.EC, reader)} measured, ${figureText(mixtureOf(batch).predicted.EC, reader)} predicted as mixed.`,
    predicted.kind === 'unknown' || predicted.by.kind === 'step' ? explanationText(predicted, reader) : undefined,
    adjuster === undefined ? undefined : cautionBlock(find(scope, 'adjusters', adjuster)?.value),
    sourcesText([predicted]),
  );
}
