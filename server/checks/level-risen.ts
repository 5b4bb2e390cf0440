// A logged level that stands higher than the one before it with nothing poured in between: a slip, or a top-up that nobody wrote down.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { levelAt } from '../geometry/vessel.ts';
import type { Anchor } from '../plan/forecast-day.ts';
import { isForecast } from '../plan/season.ts';
import { eachSeason } from './each.ts';

export const levelRisen = eachSeason(({ plan, forecast }): readonly FindingOf<'level-risen'>[] => {
  if (!isForecast(forecast)) return [];
  const { vessel, needs, days } = forecast;
  // About a change the day may be off by a few; on a day with a top-up the level may have been read after it.
  const isUnsure = (on: number): boolean =>
    days.some(({ date, events }) =>
      events.some(({ kind }) =>
        kind === 'change' ? Math.abs(date - on) <= 3 : kind === 'logged-top-up' && date === on,
      ),
    );
  let before: Anchor | undefined;
  const found: FindingOf<'level-risen'>[] = [];
  for (const { since, date } of days) {
    // A top-up is counted in, so what stands after it is the highest that may be read later.
    const reached = before === undefined ? Number.POSITIVE_INFINITY : levelAt(vessel, before.volume_L);
    before = since;
    for (const { index, entry } of needs.log) {
      const { level, on } = entry;
      if (on !== date || level === undefined || level.value <= reached + unseen_cm) continue;
      // Above the rim it is another finding.
      if (vessel.height_cm < level.value || isUnsure(date)) continue;
      const params = {
        planting: plan.planting.name,
        level,
        before: { dimension: 'length', value: reached },
      } as const;
      found.push({ code: 'level-risen', params, at: valueAt(['log', index, 'level']) });
    }
  }
  return found;
});

/** What a ruler in a dark container may miss. */
const unseen_cm = 0.5;
