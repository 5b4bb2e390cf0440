// The adjustment of a batch for programs: how much, in which steps, how sure and how reckoned, with what to mind.

import type { PlanJson } from '../../../schema/plan-json.ts';
import { type AdjustmentPlan, adjustmentOf } from '../../plan/adjust.ts';
import { type LoadAdjustment, loadAdjustmentOf } from '../../plan/adjust-loads.ts';
import { adjustStepsOf } from '../../plan/adjust-steps.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { numberOf } from '../../plan/figure.ts';
import type { Learned } from '../../plan/learn.ts';
import { learnedShare, strengthOf } from '../../plan/strength.ts';
import { cautionsFor } from '../../words/cautions.ts';
import { perBase } from './dose.ts';
import { type Gaps, type Key, tidy } from './gaps.ts';

type AdjustmentJson = NonNullable<PlanJson['batches'][string]['adjustment']>;

/** Null where the batch asks for none, or names no adjuster. */
export function adjustmentJson(key: Key, batch: BatchPlan, gaps: Gaps): AdjustmentJson | null {
  const adjustment = adjustmentOf(batch);
  if (adjustment === undefined) return null;
  const name = batch.needs.batch.value.adjust?.with;
  const { exact, unit, method } = adjustment;
  if (name === undefined) return exact.kind === 'unknown' ? gaps.wants(key, exact.wants) : null;
  const amount = (of: string, figure: AdjustmentPlan['exact']) => ({
    [`${of}_${unit}`]: gaps.number([...key, `${of}_${unit}`], figure, perBase[unit]),
  });
  const cautions = cautionsFor(batch.needs.adjuster?.value);
  return {
    with: name,
    from_pH: gaps.number([...key, 'from_pH'], adjustment.from),
    to_pH: gaps.number([...key, 'to_pH'], adjustment.to),
    ...amount('exact', exact),
    ...amount('firstStep', adjustment.firstStep),
    ...amount('low', adjustment.low),
    ...amount('high', adjustment.high),
    firstStep_pH: gaps.number([...key, 'firstStep_pH'], adjustment.firstStepPH),
    method: method === 'unknown' ? gaps.wants([...key, 'method'], exact.kind === 'unknown' ? exact.wants : []) : method,
    perLoad: perLoadJson([...key, 'perLoad'], loadAdjustmentOf(batch), unit, gaps),
    steps: adjustStepsOf(batch).map(({ add, pH }, index) => ({
      [unit]: gaps.number([...key, 'steps', index, unit], add, perBase[unit]),
      pH: gaps.number([...key, 'steps', index, 'pH'], pH),
    })),
    learned: learnedJson(adjustment),
    curve: adjustment.curve.map(point => ({ [unit]: tidy(point.amount), pH: tidy(point.pH) })),
    cautions: [...cautions.hazards.map(hazard => hazard.says), ...cautions.sentences],
  };
}

function perLoadJson(
  key: Key,
  load: LoadAdjustment | undefined,
  unit: AdjustmentPlan['unit'],
  gaps: Gaps,
): AdjustmentJson['perLoad'] {
  if (load === undefined) return null;
  const exact = `exact_${unit}`;
  const firstStep = `firstStep_${unit}`;
  return {
    [exact]: gaps.number([...key, exact], load.exact, perBase[unit]),
    [firstStep]: gaps.number([...key, firstStep], load.firstStep, perBase[unit]),
  };
}

function learnedJson({ learned, adjuster }: AdjustmentPlan): AdjustmentJson['learned'] {
  if (learned === undefined) return null;
  const { factor, meqPerUnit, spread, steps, unit }: Learned = learned;
  const strength = adjuster === undefined ? undefined : strengthOf(adjuster);
  const parts = strength?.kind === 'strength' ? strength.parts : [];
  const written = parts.length === 1 ? parts[0]?.share : undefined;
  const acts = factor === undefined || written === undefined ? undefined : learnedShare({ share: written }, factor);
  return {
    steps,
    factor: factor === undefined ? null : tidy(factor),
    actsAs_percent: percentOf(numberOf(acts)),
    written_percent: percentOf(numberOf(written)),
    ...(meqPerUnit === undefined ? {} : { [`meq_per_${unit}`]: tidy(meqPerUnit) }),
    error_percent: tidy(spread * 100),
  };
}

function percentOf(share: number | undefined): number | null {
  return share === undefined ? null : tidy(share * 100);
}
