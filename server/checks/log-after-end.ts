// Something measured in a planting after its last stage has ended: the forecast does not reach it.

import { formatDate } from '../../schema/date.ts';
import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { isForecast } from '../plan/season.ts';
import { eachSeason } from './each.ts';
import { isOfSolution } from './log-before-start.ts';

export const logAfterEnd = eachSeason(({ plan, stages, forecast }): readonly FindingOf<'log-after-end'>[] => {
  if ('kind' in stages || !isForecast(forecast)) return [];
  const last = stages.at(-1);
  if (last === undefined) return [];
  return forecast.needs.log.flatMap(({ index, entry }): readonly FindingOf<'log-after-end'>[] => {
    if (entry.on === undefined || entry.on <= last.to || !isOfSolution(entry)) return [];
    const params = {
      date: formatDate(entry.on),
      planting: plan.planting.name,
      stage: last.stage.name,
      end: formatDate(last.to),
    };
    const lasts = valueAt([...last.stage.path, 'lasts'], last.stage.file);
    const at = valueAt(['log', index, 'on']);
    return [{ code: 'log-after-end', params, at, related: [{ at: lasts, says: `how long ${last.stage.name} lasts` }] }];
  });
});
