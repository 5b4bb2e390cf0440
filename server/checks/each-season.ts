// The way in which a check looks at a planting over time: at its stages, its forecast and what the log says of it.

import type { FindingCode, FindingOf } from '../../schema/findings.ts';
import { memo } from '../plan/memo.ts';
import { type PlantingSeason, plantingSeasons } from '../plan/season.ts';
import { type Check, collect, wholePlan } from './each.ts';

/** Checks the season of every planting; remembered for each. */
export function eachSeason<C extends FindingCode>(find: (season: PlantingSeason) => readonly FindingOf<C>[]): Check<C> {
  const remembered = memo(find);
  return wholePlan(plan => collect(plantingSeasons(plan).values(), remembered));
}
