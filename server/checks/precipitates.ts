// A batch that holds more calcium with phosphate or sulfate, or magnesium with ammonium and phosphate, than stays dissolved.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { minerals } from '../chemistry/tables/minerals.ts';
import { finalOf } from '../plan/adjust.ts';
import { numberOf } from '../plan/figure.ts';
import { eachBatch } from './each.ts';

/** Calcite is left out: tap water holds it above saturation for days. */
const watched = ['gypsum', 'brushite', 'struvite'] as const;

/** Indices of the reference databases differ by so much. */
const scatter = 0.05;

export const precipitates = eachBatch((batch): readonly FindingOf<'precipitates'>[] => {
  const { path, name } = batch.needs.batch;
  if (batch.doses.size === 0) return [];
  // An adjusted batch is judged as adjusted: where that is not known, nothing is said.
  const { saturation } = finalOf(batch).figures;
  const over = watched.flatMap(mineral => {
    const index = numberOf(saturation[mineral]) ?? 0;
    return index > scatter ? [{ title: minerals[mineral].title, index: Number(index.toFixed(2)) }] : [];
  });
  if (over.length === 0) return [];
  return [{ code: 'precipitates', params: { batch: name, minerals: over }, at: keyAt([...path, 'feed']) }];
});
