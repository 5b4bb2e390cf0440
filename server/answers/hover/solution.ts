// A batch as a solution: pH and EC as mixed, as measured and as adjusted, each beside what standing in air makes of it.

import type { Range } from '../../../schema/range.ts';
import { type FinalState, finalOf } from '../../plan/adjust.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { cloudingOf } from '../../plan/clouding.ts';
import { driftInAir, driftOf } from '../../plan/difference.ts';
import type { Figure } from '../../plan/figure.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import { type Standing, standing } from '../../plan/standing.ts';
import { stateOf } from '../../plan/state.ts';
import { amountText, type Reader, rangeText } from '../../words/amount.ts';
import { cloudingText } from '../../words/clouding.ts';
import { figureText, wantsText } from '../../words/figure.ts';
import { blocks, code, lines, table } from './blocks.ts';

export const standings: Readonly<Record<Standing, string>> = { below: 'below', in: 'in band', above: 'above' };

export function solutionBlock(batch: BatchPlan, reader: Reader): string | undefined {
  const { solved } = mixtureOf(batch);
  if (solved.kind === 'unknown') return `pH and EC: ${wantsText(solved.wants)}`;
  const final = finalOf(batch);
  const isMoved = batch.needs.batch.value.adjust !== undefined || stateOf(batch).readings.length > 0;
  return blocks(
    solutionTable(batch, isMoved ? final : undefined, reader),
    lines(
      airSentence(batch, final, reader),
      solved.estimated && !stateOf(batch).isMeasured
        ? 'What is stated leaves some ions open, so this pH is an estimate; a measured pH overrules it.'
        : undefined,
      ...cloudSentences(batch, isMoved ? final : undefined),
    ),
  );
}

function solutionTable(batch: BatchPlan, final: FinalState | undefined, reader: Reader): string | undefined {
  const { predicted, inAir } = mixtureOf(batch);
  const { name, value: target } = batch.needs.target ?? {};
  const { adjust, air } = batch.needs.batch.value;
  const rows = [solutionRow('as mixed', { figures: predicted, inAir }, reader)];
  const measured = measuredRow(batch, reader);
  if (measured !== undefined) rows.push(measured);
  const isKnown = final?.figures.pH.kind === 'known';
  if (final !== undefined && isKnown) {
    rows.push(solutionRow(adjust === undefined ? 'after the readings' : 'adjusted', final, reader));
  }
  const last = final !== undefined && isKnown ? final.figures : predicted;
  if (name !== undefined && (target?.pH !== undefined || target?.EC !== undefined)) {
    rows.push([code(name), bandText(last.pH, target.pH, reader), bandText(last.EC, target.EC, reader), '']);
  }
  const stands = rows.map(([what = '', pH = '', EC = '', stood = '']) => [what, pH, stood, EC]);
  return air === 'open'
    ? table(
        ['', 'pH', 'EC at 25 °C'],
        rows.map(cells => cells.slice(0, 3)),
        [],
      )
    : table(['', 'pH', 'pH after standing in air', 'EC at 25 °C'], stands, []);
}

/** What it is, its pH and EC, and its pH after standing in air. */
function solutionRow(
  what: string,
  { figures, inAir }: Pick<FinalState, 'figures' | 'inAir'>,
  reader: Reader,
): readonly string[] {
  return [what, figureText(figures.pH, reader), figureText(figures.EC, reader), figureText(inAir.pH, reader)];
}

/** A band, and where the figure stands to it. */
function bandText<D extends 'pH' | 'conductivity'>(
  figure: Figure<D>,
  band: Range<D> | undefined,
  reader: Reader,
): string {
  if (band === undefined) return '';
  const at = figure.kind === 'known' ? `: ${standings[standing(figure, band)]}` : '';
  return `${rangeText(band, reader)}${at}`;
}

/** The last pH and EC that were measured. */
function measuredRow(batch: BatchPlan, reader: Reader): readonly string[] | undefined {
  const { readings } = stateOf(batch);
  const pH = readings.findLast(reading => reading.measured !== undefined)?.measured;
  const EC = readings.findLast(({ reading }) => reading?.EC !== undefined)?.reading?.EC;
  if (pH === undefined && EC === undefined) return undefined;
  return [
    'last measured',
    pH === undefined ? '' : figureText(pH, reader),
    EC === undefined ? '' : amountText(EC, reader),
  ];
}

/** Why the pH of fresh solution does not stay, where a meter would show it. */
function airSentence(batch: BatchPlan, final: FinalState, reader: Reader): string | undefined {
  if (batch.needs.batch.value.air === 'open') return undefined;
  const solution =
    final.figures.pH.kind === 'known' ? final : { ...mixtureOf(batch), figures: mixtureOf(batch).predicted };
  const { pH } = solution.figures;
  const stood = solution.inAir.pH;
  const drift = driftOf(driftInAir({ inAir: stood, now: pH }));
  if (drift === 'climbs') {
    return `A pH of ${figureText(pH, reader)} does not hold: CO₂ leaves fresh solution as it stands, and the pH climbs to ${figureText(stood, reader)}. Measure again then.`;
  }
  return drift === 'falls'
    ? `As it stands it takes up CO₂ from the air, and the pH falls to ${figureText(stood, reader)}. Measure again then.`
    : undefined;
}

function cloudSentences(batch: BatchPlan, final: FinalState | undefined): readonly string[] {
  const mixed = cloudingText(cloudingOf(mixtureOf(batch).predicted));
  const adjusted = final === undefined ? undefined : cloudingText(cloudingOf(final.figures));
  const said = [];
  if (mixed !== undefined) said.push(`As mixed it ${mixed}.`);
  if (adjusted !== undefined && adjusted !== mixed) said.push(`In the end it ${adjusted}.`);
  if (mixed !== undefined && final?.figures.pH.kind === 'known' && adjusted === undefined)
    said.push('In the end all stays dissolved.');
  return said;
}
