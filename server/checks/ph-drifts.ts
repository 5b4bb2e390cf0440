// A pH that is adjusted into its band and leaves it once the batch has stood in air.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { endsAbove, losesCO2 } from '../chemistry/air.ts';
import { finalOf } from '../plan/adjust.ts';
import { numberOf } from '../plan/figure.ts';
import { eachBatch } from './each.ts';

/** What lies less beyond the band is within the error of the forecast. */
const margin_pH = 0.2;

export const phDrifts = eachBatch((batch): readonly FindingOf<'ph-drifts'>[] => {
  const { batch: source, target } = batch.needs;
  const band = target?.value.pH;
  if (band === undefined || source.value.adjust === undefined || source.value.air === 'open') return [];
  const final = finalOf(batch);
  const { solution } = final;
  if (solution === undefined || solution.pH < band.low || band.high < solution.pH) return [];
  // CO2 that leaves raises pH, so it can only cross the upper end; only where it does its pH is worked out.
  const leaves = losesCO2(solution)
    ? endsAbove(solution, band.high + margin_pH)
    : !endsAbove(solution, band.low - margin_pH);
  const later = leaves ? numberOf(final.inAir.pH) : undefined;
  if (later === undefined) return [];
  const params = {
    batch: source.name,
    now: Number(solution.pH.toFixed(1)),
    inAir: Number(later.toFixed(1)),
    low: band.low,
    high: band.high,
  };
  return [{ code: 'ph-drifts', params, at: keyAt([...source.path, 'adjust']) }];
});
