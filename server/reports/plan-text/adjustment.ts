// The adjustment of a batch as lines: from where to where, how much, in which steps, how sure that is and how it was reckoned; then
// its readings, and what to mind with every acid and base that is named.

import { type AdjustmentPlan, adjustmentOf } from '../../plan/adjust.ts';
import { loadAdjustmentOf } from '../../plan/adjust-loads.ts';
import { adjustStepsOf } from '../../plan/adjust-steps.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { numberOf } from '../../plan/figure.ts';
import { type ReadingPlan, stateOf } from '../../plan/state.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { cautionsFor } from '../../words/cautions.ts';
import { learnedText } from '../../words/learned.ts';
import { benchReader, stepText } from '../../words/measured.ts';
import { figureText, type Lines, row } from './rows.ts';

export function adjustLines(batch: BatchPlan, reader: Reader): Lines {
  const adjustment = adjustmentOf(batch);
  const name = batch.needs.batch.value.adjust?.with;
  if (adjustment === undefined || name === undefined) return [];
  const { exact, from, to } = adjustment;
  const start = from.kind === 'known' ? ` (${stateOf(batch).isMeasured ? 'measured' : 'predicted'})` : '';
  const way = [
    row('with', name, 2),
    row('from pH', `${figureText(from, reader)}${start}`, 2),
    row('to pH', figureText(to, reader), 2),
  ];
  if (exact.kind === 'unknown') return [...way, row('amount', figureText(exact, reader), 2)];
  if (numberOf(exact) === 0) return [...way, row('amount', 'none is needed', 2)];
  const load = loadAdjustmentOf(batch)?.exact;
  const bench = benchReader(adjustStepsOf(batch), reader);
  const shared = load === undefined ? '' : `, ${figureText(load, bench)} in each load`;
  return [
    ...way,
    row('amount', `about ${figureText(exact, bench)}${shared}`, 2),
    row('range', rangeText(batch, adjustment, bench), 2),
    ...stepLines(batch, load === undefined ? '' : ' in each load', reader),
    ...methodLines(adjustment, name, reader),
  ];
}

function stepLines(batch: BatchPlan, where: string, reader: Reader): Lines {
  return adjustStepsOf(batch).map((step, index) => {
    const { pH } = step;
    const expected = pH.kind === 'known' ? `: about pH ${figureText(pH, reader)}` : '';
    return row(`step ${index + 1}`, `${stepText(step, reader)}${where}, then stir and measure${expected}`, 2);
  });
}

function rangeText(batch: BatchPlan, { low, high }: AdjustmentPlan, reader: Reader): string {
  const why = stateOf(batch).isMeasured ? 'as meter and tools err' : 'as the start is predicted, not measured';
  return `${figureText(low, reader)} to ${figureText(high, reader)}, ${why}`;
}

function methodLines({ method, learned, adjuster }: AdjustmentPlan, name: string, reader: Reader): Lines {
  switch (method) {
    case 'composition':
      return [row('reckoned', 'by its composition', 2)];
    case 'response':
      return [row('reckoned', 'by the response written for it, which holds for one water and one pH only', 2)];
    case 'learned':
      return learned === undefined ? [] : [row('reckoned', learnedText(learned, adjuster, name, reader), 2)];
    case 'unknown':
      return [];
  }
}

export function readingLines(batch: BatchPlan, reader: Reader): Lines {
  return stateOf(batch).readings.map((reading, index) => readingLine(reading, index, reader));
}

/** `after 3 mL down: pH 6.1, predicted 6.25, EC 1.2 mS/cm`. */
function readingLine({ reading, predicted, measured }: ReadingPlan, index: number, reader: Reader): string {
  const added = [...(reading?.add ?? [])].flatMap(([name, amount]) =>
    amount === undefined ? [] : [`${amountText(amount, reader)} ${name}`],
  );
  const said = [
    ...(measured === undefined ? [] : [`pH ${figureText(measured, reader)}`]),
    ...(predicted.kind === 'known'
      ? [`${measured === undefined ? 'pH ' : ''}predicted ${figureText(predicted, reader)}`]
      : []),
    ...(reading?.EC === undefined ? [] : [`EC ${amountText(reading.EC, reader)}`]),
  ];
  return row(`no. ${index + 1}`, `${added.length === 0 ? '' : `after ${added.join(' and ')}: `}${said.join(', ')}`, 2);
}

/** What to mind with every acid and base that the batch names, in its adjustment or its readings. */
export function cautionLines({ needs }: BatchPlan): Lines {
  const { adjust, readings } = needs.batch.value;
  const added = new Set((readings ?? []).flatMap(reading => [...(reading?.add?.keys() ?? [])]));
  const feeds = needs.added.filter(({ path }) => path[0] === 'feeds').map(({ name }) => name);
  const names = new Set([...(adjust?.with === undefined ? [] : [adjust.with]), ...added]);
  const sentences = [...names].flatMap(name => {
    if (feeds.includes(name)) return [];
    const known = [needs.adjuster, ...needs.added].find(adder => adder?.name === name && adder.path[0] === 'adjusters');
    const cautions = cautionsFor(known?.value);
    return [...cautions.hazards.map(({ says }) => says), ...cautions.sentences];
  });
  return [...new Set(sentences)].map(sentence => `    ${sentence}`);
}
