// A batch that holds more calcium with phosphate or sulfate, or magnesium with ammonium and phosphate, than stays dissolved.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { minerals } from '../chemistry/tables/minerals.ts';
import { finalOf } from '../plan/adjust.ts';
import { isClouded, nearnessOf } from '../plan/clouding.ts';
import { eachBatch } from './each.ts';

/** Calcite is left out: tap water holds it above saturation for days. */
const watched = ['gypsum', 'brushite', 'struvite'] as const;

export const precipitates = eachBatch((batch): readonly FindingOf<'precipitates'>[] => {
  const { path, name } = batch.needs.batch;
  if (batch.doses.size === 0) return [];
  // An adjusted batch is judged as adjusted: where that is not known, nothing is said.
  const final = finalOf(batch);
  if (final.solution === undefined || !isClouded(final.solution, watched)) return [];
  const over = watched.flatMap(mineral => {
    const index = final.figures.saturation[mineral];
    if (index.kind === 'unknown' || nearnessOf(index) !== 'over') return [];
    return [{ title: minerals[mineral].title, index: Number(index.quantity.value.toFixed(2)) }];
  });
  return [{ code: 'precipitates', params: { batch: name, minerals: over }, at: keyAt([...path, 'feed']) }];
});
