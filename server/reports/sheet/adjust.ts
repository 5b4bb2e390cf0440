// The adjustment of a batch on its sheet: step by step with the pH to expect and room for the pH that was measured, under the
// cautions for what is poured.

import { adjustmentOf } from '../../plan/adjust.ts';
import { loadAdjustmentOf } from '../../plan/adjust-loads.ts';
import { adjustStepsOf } from '../../plan/adjust-steps.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { numberOf } from '../../plan/figure.ts';
import type { Reader } from '../../words/amount.ts';
import { cautionsFor } from '../../words/cautions.ts';
import { benchReader, stepText } from '../../words/measured.ts';
import { figureText } from '../plan-text/rows.ts';
import { type Block, caution, paragraph, type Section, table } from '../print/page.ts';
import { loadCount, loadRooms, mostLoads } from './loads.ts';

export function adjustSection(batch: BatchPlan, reader: Reader): readonly Section[] {
  const adjustment = adjustmentOf(batch);
  const name = batch.needs.batch.value.adjust?.with;
  if (adjustment === undefined || name === undefined) return readingsSection(batch);
  const count = loadCount(batch);
  const { to, adjuster } = adjustment;
  const aim = to.kind === 'known' ? ` to pH ${figureText(to, reader)}` : '';
  const heading = `Adjust with ${name}${aim}${count > 1 ? ', each load by itself' : ''}`;
  const { hazards, sentences } = cautionsFor(adjuster?.value);
  const careful = caution('Caution', [...hazards.map(({ says }) => says), ...sentences]);
  return [{ heading, blocks: [careful, ...stepBlocks(batch, reader, name), emptyLines(batch)] }];
}

/** Without an adjustment, the cautions for what the readings say was added. */
function readingsSection({ needs }: BatchPlan): readonly Section[] {
  const sentences = needs.added.flatMap(({ value, path }) => {
    const { hazards, sentences: says } = cautionsFor(path[0] === 'adjusters' ? value : undefined);
    return path[0] === 'adjusters' ? [...hazards.map(({ says: hazard }) => hazard), ...says] : [];
  });
  if (sentences.length === 0) return [];
  return [{ heading: 'Acids and bases', blocks: [caution('Caution', [...new Set(sentences)])] }];
}

/** The first pH is the measured one; the steps stop as soon as it is in the band and near the aim. */
function stepBlocks(batch: BatchPlan, reader: Reader, name: string): readonly Block[] {
  const adjustment = adjustmentOf(batch);
  const exact = loadAdjustmentOf(batch)?.exact ?? adjustment?.exact;
  if (adjustment === undefined || exact === undefined) return [];
  if (exact.kind === 'unknown') {
    return [
      paragraph(`How much is not known: ${figureText(exact, reader)}. Begin with the smallest amount you can measure.`),
    ];
  }
  if (exact.quantity.value <= 0)
    return [paragraph('Nothing is expected to be needed. Measure before you add anything.')];
  const count = loadCount(batch);
  const { low, high, from } = adjustment;
  const steps = adjustStepsOf(batch);
  const bench = benchReader(steps, reader);
  const range = count === 1 ? `, ${figureText(low, bench)} to ${figureText(high, bench)} by meter and tools` : '';
  const total = `From pH ${figureText(from, reader)} about ${figureText(exact, bench)} of ${name}${count > 1 ? ' for each load' : ''}${range}. Stop as soon as the pH is right.`;
  const columns = [
    { name: 'step', align: 'right' },
    { name: 'add', align: 'right' },
    { name: 'pH to expect', align: 'right' },
    ...roomNames(count).map(room => ({ name: room })),
  ] as const;
  const rows = steps.map((step, at) => [
    String(at + 1),
    stepText(step, reader),
    numberOf(step.pH) === undefined ? 'not known' : `about ${figureText(step.pH, reader)}`,
    ...loadRooms(count, `pH after step ${at + 1}`),
  ]);
  return [paragraph(total), table('Steps, each stirred in and measured before the next', columns, rows)];
}

function roomNames(count: number): readonly string[] {
  return count > 1 && count <= mostLoads
    ? Array.from({ length: count }, (_, at) => `pH, load ${at + 1}`)
    : [count > 1 ? 'pH measured, each load' : 'pH measured'];
}

function emptyLines(batch: BatchPlan): Block {
  const band = batch.needs.target?.value.pH;
  return paragraph(
    `If the pH is not as expected, work out the rest from what you measured${band === undefined ? '' : `; anything from ${band.low} to ${band.high} will do`}.`,
  );
}
