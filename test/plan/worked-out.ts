// What a small recipe comes to, for the tests of its solutions: its waters and batches by name, and numbers as one reads them.

import { type AdjustmentPlan, adjustmentOf, type FinalState, finalOf } from '../../server/plan/adjust.ts';
import type { BatchPlan } from '../../server/plan/batch.ts';
import type { Figure } from '../../server/plan/figure.ts';
import { gathered } from '../../server/plan/gather.ts';
import { type Mixture, mixtureOf } from '../../server/plan/mixture.ts';
import { type BatchState, stateOf } from '../../server/plan/state.ts';
import { planWater, type WaterPlan } from '../../server/plan/water.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import type { MarkedRecipe } from '../recipe.ts';

export interface WorkedOut {
  readonly snapshot: Snapshot;
  readonly water: (name: string) => WaterPlan;
  readonly batch: (name: string) => BatchPlan;
  readonly mixture: (name: string) => Mixture;
  readonly state: (name: string) => BatchState;
  readonly adjustment: (name: string) => AdjustmentPlan;
  readonly final: (name: string) => FinalState;
  readonly codes: readonly string[];
}

export function workedOut(recipe: MarkedRecipe): WorkedOut {
  const snapshot = recipe.snapshot();
  const { plan } = snapshot;
  const batch = (name: string): BatchPlan => there(plan.batches.get(name), name);
  return {
    snapshot,
    water: name => planWater(there(gathered(plan.scope, 'waters', name), name)),
    batch,
    mixture: name => mixtureOf(batch(name)),
    state: name => stateOf(batch(name)),
    adjustment: name => there(adjustmentOf(batch(name)), name),
    final: name => finalOf(batch(name)),
    codes: snapshot.findings.map(({ finding }) => finding.code),
  };
}

/** The number, or what is missing for it. */
export function shown(figure: Figure | undefined, times = 1): number | string {
  if (figure === undefined) return 'nothing';
  if (figure.kind === 'unknown') return `wants ${figure.wants.map(want => want.says).join(', and ')}`;
  return figure.quantity.value * times;
}

/** The number; fails where it is unknown. */
export function known(figure: Figure | undefined, times = 1): number {
  const value = shown(figure, times);
  if (typeof value === 'string') throw new Error(value);
  return value;
}

function there<T>(value: T | undefined, name: string): T {
  if (value === undefined) throw new Error(`nothing named ${name}`);
  return value;
}
