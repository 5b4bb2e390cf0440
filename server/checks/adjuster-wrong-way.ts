// An acid asked to raise the pH, or a base to lower it.

import type { FindingOf, Fix } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { adjustmentOf, uncertaintyOf } from '../plan/adjust.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { numberOf } from '../plan/figure.ts';
import { gatheredAll } from '../plan/gather.ts';
import { reagentOf } from '../plan/reagent.ts';
import { stateOf } from '../plan/state.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { batchesIn, eachOf } from './each.ts';

export const adjusterWrongWay = eachOf(
  batchesIn,
  ({ scope }) => gatheredAll(scope, 'adjusters'),
  (batch: BatchPlan, adjusters: readonly Sourced<Adjuster>[]): readonly FindingOf<'adjuster-wrong-way'>[] => {
    const way = wrongWay(batch);
    if (way === undefined) return [];
    const at = valueAt([...batch.needs.batch.path, 'adjust', 'with']);
    const fixes = adjusters.flatMap((other): readonly Fix[] => {
      const reagent = reagentOf(other);
      if (reagent.kind === 'unknown' || reagent.does === way.does) return [];
      return [
        { title: `Adjust with \`${other.name}\``, edits: [{ kind: 'replace', at, text: other.name }], sure: false },
      ];
    });
    const from = Number(way.from.toFixed(2));
    const params = { ...way, from, batch: batch.needs.batch.name };
    return [{ code: 'adjuster-wrong-way', params, at, fixes }];
  },
);

/** How an adjustment goes the wrong way; undefined where it does not, or where a predicted pH is too uncertain to say so. */
export function wrongWay(batch: BatchPlan) {
  const adjustment = adjustmentOf(batch);
  const from = numberOf(adjustment?.from);
  const to = numberOf(adjustment?.to);
  if (adjustment?.does === undefined || from === undefined || to === undefined) return undefined;
  const measured = stateOf(batch).isMeasured;
  const further = adjustment.does === 'acid' ? to - from : from - to;
  if (further <= (measured ? 0.1 : uncertaintyOf(batch))) return undefined;
  return { adjuster: adjustment.adjuster?.name ?? '', does: adjustment.does, from, to, measured };
}
