// A container that will stand too low before its harvest unless it is topped up.

import { daysBetween, formatDate } from '../../schema/date.ts';
import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { isForecast } from '../plan/season.ts';
import { eachSeason } from './each.ts';
import { emptyingStage } from './use-empties-at-once.ts';

export const runsDry = eachSeason((season): readonly FindingOf<'runs-dry'>[] => {
  const { plan, stages, forecast } = season;
  if ('kind' in stages || !isForecast(forecast) || emptyingStage(season) !== undefined) return [];
  const { runsLow, topUps } = forecast;
  const end = stages.at(-1)?.to;
  if (runsLow === undefined || end === undefined) return [];
  const [next] = topUps;
  const days = daysBetween(runsLow, end);
  const { planting } = plan;
  const params = {
    planting: planting.name,
    date: formatDate(runsLow),
    days,
    topUp: next === undefined ? undefined : ({ dimension: 'volume', value: next.volume_L } as const),
    before: next === undefined ? undefined : formatDate(next.date),
    more: Math.max(0, topUps.length - 1),
  };
  return [{ code: 'runs-dry', params, at: valueAt([...planting.path, 'container'], planting.file) }];
});
