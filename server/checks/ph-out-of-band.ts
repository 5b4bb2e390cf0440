// A pH outside the target's band: as last measured, or as computed where nothing adjusts it.

import type { FindingOf, Fix } from '../../schema/findings.ts';
import { keyAt, valueAt } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import { adjustmentOf, uncertaintyOf } from '../plan/adjust.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { numberOf } from '../plan/figure.ts';
import { gatheredAll } from '../plan/gather.ts';
import { reagentOf } from '../plan/reagent.ts';
import { stateOf } from '../plan/state.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { batchesIn, eachOf } from './each.ts';

export const phOutOfBand = eachOf(
  batchesIn,
  ({ scope }) => gatheredAll(scope, 'adjusters'),
  (batch: BatchPlan, adjusters: readonly Sourced<Adjuster>[]): readonly FindingOf<'ph-out-of-band'>[] => {
    const { target, batch: source } = batch.needs;
    const band = target?.value.pH;
    if (target === undefined || band === undefined) return [];
    const { pH: figure, isMeasured: measured, readings } = stateOf(batch);
    const value = numberOf(figure);
    // Where an adjustment is written, a computed pH is on its way.
    if (value === undefined || (!measured && source.value.adjust !== undefined)) return [];
    const slack = measured ? 1e-9 : uncertaintyOf(batch);
    if (band.low - slack <= value && value <= band.high + slack) return [];
    const last = readings.findLastIndex(reading => reading.measured !== undefined);
    const at = measured ? valueAt([...source.path, 'readings', last, 'pH']) : keyAt(source.path);
    const step = stepOf(batch);
    const { low, high } = band;
    const pH = Number(value.toFixed(measured ? 2 : 1));
    const fix = step === undefined ? adjusting(batch, adjusters, value > high) : recording(batch, step);
    const params = { batch: source.name, pH, low, high, target: target.name, measured, step };
    return [{ code: 'ph-out-of-band', params, at, fixes: fix }];
  },
);

interface FirstStep {
  readonly adjuster: string;
  readonly amount: Quantity<'volume'> | Quantity<'mass'>;
}

function stepOf(batch: BatchPlan): FirstStep | undefined {
  const adjustment = adjustmentOf(batch);
  const step = adjustment?.firstStep;
  if (adjustment?.adjuster === undefined || step?.kind !== 'known' || step.quantity.value <= 0) return undefined;
  return { adjuster: adjustment.adjuster.name, amount: step.quantity };
}

function recording(batch: BatchPlan, { adjuster, amount }: FirstStep): readonly Fix[] {
  const written =
    amount.dimension === 'volume'
      ? `${Number((amount.value * 1000).toPrecision(3))} mL`
      : `${Number(amount.value.toPrecision(3))} g`;
  const to = [...batch.needs.batch.path, 'readings'];
  const edits = [{ kind: 'append', to, text: `{ add: { ${adjuster}: ${written} } }` }] as const;
  return [{ title: `Write down a first step of ${written} \`${adjuster}\``, edits, sure: false }];
}

/** The adjusters at hand that lead back into the band. */
function adjusting(batch: BatchPlan, adjusters: readonly Sourced<Adjuster>[], isHigh: boolean): readonly Fix[] {
  const { path, value } = batch.needs.batch;
  if (value.adjust !== undefined) return [];
  return adjusters.flatMap((adjuster): readonly Fix[] => {
    const reagent = reagentOf(adjuster);
    if (reagent.kind === 'unknown' || (reagent.does === 'acid') !== isHigh) return [];
    const edits = [{ kind: 'insert', into: path, key: 'adjust', text: `{ with: ${adjuster.name} }` }] as const;
    return [{ title: `Adjust with \`${adjuster.name}\``, edits, sure: false }];
  });
}
