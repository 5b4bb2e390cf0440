// The adjustment of a batch: how much acid or base, the first step, how sure that is and why. Never without its cautions.

import { unitOf } from '../../../schema/find-unit.ts';
import { fromUnit } from '../../../schema/quantity.ts';
import { type AdjustmentPlan, adjustmentOf } from '../../plan/adjust.ts';
import { loadAdjustmentOf } from '../../plan/adjust-loads.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { numberOf } from '../../plan/figure.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import { stateOf } from '../../plan/state.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { explanationText, figureText, sourcesText } from '../../words/figure.ts';
import { learnedText } from '../../words/learned.ts';
import { blocks, code, lines, table } from './blocks.ts';
import { cautionBlock } from './cautions.ts';

/** In the hover of a batch; undefined where it asks for none. */
export function adjustmentBlock(batch: BatchPlan, reader: Reader): string | undefined {
  const adjustment = adjustmentOf(batch);
  const name = batch.needs.batch.value.adjust?.with;
  if (adjustment === undefined || name === undefined) return undefined;
  return blocks(amountLines(batch, adjustment, name, reader), cautionBlock(adjustment.adjuster?.value));
}

/** On the adjustment itself: the same with the titration and how the amount is reckoned. */
export function adjustmentHover(batch: BatchPlan, reader: Reader): string | undefined {
  const adjustment = adjustmentOf(batch);
  const name = batch.needs.batch.value.adjust?.with;
  if (adjustment === undefined || name === undefined) return undefined;
  const { exact, adjuster } = adjustment;
  return blocks(
    amountLines(batch, adjustment, name, reader),
    // Before the long table: an editor shows the top of a hover, and the rest when it is scrolled.
    cautionBlock(adjuster?.value),
    titrationTable(adjustment, name, reader),
    exact.kind === 'known' ? explanationText(exact, reader) : undefined,
    sourcesText([exact, adjustment.firstStep, adjustment.from]),
  );
}

function amountLines(batch: BatchPlan, adjustment: AdjustmentPlan, name: string, reader: Reader): string {
  const { exact, from, to, firstStep, firstStepPH } = adjustment;
  if (exact.kind === 'unknown' && mixtureOf(batch).solved.kind === 'unknown') {
    return `Adjusted with ${code(name)}; how much follows from the pH.`;
  }
  if (exact.kind === 'unknown') {
    const takes = exact.wants.map(({ says }) => says).join(', ');
    return `How much of ${code(name)} cannot be told; it takes ${takes}.`;
  }
  const way = `from pH ${figureText(from, reader)}, ${stateOf(batch).isMeasured ? 'measured' : 'predicted'}, to ${figureText(to, reader)}`;
  if (numberOf(exact) === 0) return `Adjusting with ${code(name)} ${way}: nothing is needed.`;
  const loads = loadAdjustmentOf(batch);
  const each =
    loads === undefined
      ? undefined
      : `In each of the ${figureText(batch.loads, reader)} loads ${figureText(loads.exact, reader)}, first ${figureText(loads.firstStep, reader)}.`;
  const firstGives = firstStepPH.kind === 'known' ? `: about pH ${figureText(firstStepPH, reader)}` : '';
  const said = [
    `**About ${figureText(exact, reader)} of ${code(name)}** ${way}`,
    `First **${figureText(firstStep, reader)}**, then stir and measure${firstGives}. Then by small steps.`,
    each,
    rangeLine(batch, adjustment, reader),
    methodLine(adjustment, name, reader),
  ];
  return lines(...said) ?? '';
}

function rangeLine(batch: BatchPlan, { low, high }: AdjustmentPlan, reader: Reader): string | undefined {
  if (low.kind === 'unknown' || high.kind === 'unknown') return undefined;
  const why = stateOf(batch).isMeasured
    ? 'the meter may be off a little, and tools round'
    : 'the pH at the start is predicted and not measured, and tools round';
  return `From ${figureText(low, reader)} to ${figureText(high, reader)}, as ${why}.`;
}

function methodLine({ method, learned, adjuster }: AdjustmentPlan, name: string, reader: Reader): string | undefined {
  switch (method) {
    case 'composition':
      return 'Reckoned by its composition.';
    case 'response':
      return 'Reckoned by the response that is written for it, which holds for one water and one starting pH only.';
    case 'learned':
      return learned === undefined ? undefined : learnedText(learned, adjuster, name, reader);
    case 'unknown':
      return undefined;
  }
}

/** The points of the curve that are told: quarters of the amount, and a quarter too much. */
const told = [0, 4, 8, 12, 16, 20];

function titrationTable({ curve, unit }: AdjustmentPlan, name: string, reader: Reader): string | undefined {
  const points = told.flatMap(index => curve[index] ?? []);
  const rows = points.map(({ amount, pH }) => [
    amountText(fromUnit(amount, unitOf(unit)), reader),
    amountText({ dimension: 'pH', value: pH }, reader),
  ]);
  return table([`${code(name)} in all`, 'pH'], rows, [0, 1]);
}
