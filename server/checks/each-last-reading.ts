// The way in which a check looks at the last thing that the log says of a planting or a batch. Older readings are history.

import type { FindingCode, FindingOf } from '../../schema/findings.ts';
import { byName, gatheredAll } from '../plan/gather.ts';
import { latest } from '../plan/memo.ts';
import { type LoggedReading, lastOfBatches, lastOfPlanting, type Targets } from '../plan/readings.ts';
import { type PlantingSeason, plantingSeasons } from '../plan/season.ts';
import { type Check, eachOf, together, wholePlan } from './each.ts';

/** Checks the last reading of pH, or of EC, of everything that the log measures and that has a target. */
export function eachLastReading<C extends FindingCode>(
  of: 'pH' | 'EC',
  find: (reading: LoggedReading) => readonly FindingOf<C>[],
): Check<C> {
  const inSeason = latest((season: PlantingSeason, targets: Targets) =>
    lastOfPlanting(season, targets, of).flatMap(find),
  );
  return together(
    eachOf(plantingSeasons, ({ scope }) => byName(gatheredAll(scope, 'targets')), inSeason),
    wholePlan(plan => lastOfBatches(plan, of).flatMap(find)),
  );
}
