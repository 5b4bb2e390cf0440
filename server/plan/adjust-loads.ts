// An adjustment shared out over the loads of a batch, each of which is adjusted by itself.

import { adjustmentOf } from './adjust.ts';
import type { BatchPlan } from './batch.ts';
import type { DoseFigure } from './dose.ts';
import type { Figure } from './figure.ts';
import { perLoadDose } from './loads.ts';
import { memo } from './memo.ts';

export interface LoadAdjustment {
  readonly exact: DoseFigure;
  /** What the tools measure of it in one load. */
  readonly firstStep: DoseFigure;
}

/** Undefined where nothing is adjusted, or in one load. */
export const loadAdjustmentOf = memo((batch: BatchPlan): LoadAdjustment | undefined => {
  const { loads } = batch;
  const adjustment = adjustmentOf(batch);
  if (adjustment === undefined || loads.kind === 'unknown' || loads.quantity.value < 2) return undefined;
  return { exact: share(adjustment.exact, loads), firstStep: share(adjustment.firstStep, loads) };
});

function share(dose: DoseFigure, loads: Figure<'number'>): DoseFigure {
  if (dose.kind === 'unknown') return dose;
  return dose.quantity.dimension === 'volume'
    ? perLoadDose.volume({ dose: dose as Figure<'volume'>, loads })
    : perLoadDose.mass({ dose: dose as Figure<'mass'>, loads });
}
