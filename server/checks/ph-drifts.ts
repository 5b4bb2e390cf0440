// A pH that is adjusted into its band and leaves it once the batch has stood in air.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { finalOf } from '../plan/adjust.ts';
import { numberOf } from '../plan/figure.ts';
import { eachBatch } from './each.ts';

/** What lies less beyond the band is within the error of the forecast. */
const margin_pH = 0.2;

export const phDrifts = eachBatch((batch): readonly FindingOf<'ph-drifts'>[] => {
  const { batch: source, target } = batch.needs;
  const band = target?.value.pH;
  if (band === undefined || source.value.adjust === undefined || source.value.air === 'open') return [];
  const { figures, inAir } = finalOf(batch);
  const now = numberOf(figures.pH);
  const later = numberOf(inAir.pH);
  if (now === undefined || later === undefined || now < band.low || band.high < now) return [];
  if (band.low - margin_pH <= later && later <= band.high + margin_pH) return [];
  const params = {
    batch: source.name,
    now: Number(now.toFixed(1)),
    inAir: Number(later.toFixed(1)),
    low: band.low,
    high: band.high,
  };
  return [{ code: 'ph-drifts', params, at: keyAt([...source.path, 'adjust']) }];
});
