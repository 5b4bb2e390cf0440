// A crop in containers that hold less than the least that is published of its use, though the recipe's own use would not empty them.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { cropNeedOf } from '../plan/crop-need.ts';
import { numberOf } from '../plan/figure.ts';
import { isForecast } from '../plan/season.ts';
import { eachSeason } from './each.ts';
import { emptyingStage } from './use-empties-at-once.ts';

export const fillTooSmallForCrop = eachSeason((season): readonly FindingOf<'fill-too-small-for-crop'>[] => {
  const { plan, forecast } = season;
  const { planting, fill } = plan;
  const known = isForecast(forecast) ? forecast : undefined;
  // When it runs low is said with its date; once is enough.
  if (known?.runsLow !== undefined || emptyingStage(season) !== undefined) return [];
  const need = known === undefined ? cropNeedOf(planting, undefined) : known.need;
  const value = known?.given_L ?? numberOf(fill.volume);
  if (need?.low.kind !== 'known' || need.high.kind !== 'known' || value === undefined) return [];
  if (need.low.quantity.value <= value) return [];
  const params = {
    planting: planting.name,
    crop: need.crop,
    given: { dimension: 'volume', value },
    low: need.low.quantity,
    high: need.high.quantity,
  } as const;
  const at = valueAt([...planting.path, 'container'], planting.file);
  const crop = valueAt([...planting.path, 'crop'], planting.file);
  return [{ code: 'fill-too-small-for-crop', params, at, related: [{ at: crop, says: 'the crop' }] }];
});
