// From dates and lengths to days: when a planting goes over its containers, and when its stages begin and end.

import { addDays, type Day } from '../../schema/date.ts';
import type { Place } from '../../schema/place.ts';
import { valueAt } from '../../schema/place.ts';
import type { Planting } from '../recipe/seen.ts';
import type { Scope, Sourced } from '../recipe/use.ts';
import type { BatchPlan } from './batch.ts';
import { type Unknown, unknown, type Want } from './figure.ts';
import type { DatedStage } from './forecast.ts';
import { gathered } from './gather.ts';
import { unreadIn } from './unread.ts';

/** The stages of a planting with their dates; unknown where the start or a length is missing. */
export function datedStages(
  scope: Scope,
  planting: Sourced<Planting>,
  batches: ReadonlyMap<string, BatchPlan>,
): readonly DatedStage[] | Unknown {
  const begin = startOf(scope, planting);
  const wants: Want[] = [...unreadIn(planting.value, ['transplant', 'stages'], planting.path, planting.file)];
  if (begin === undefined) wants.push({ says: 'the day of transplanting', at: placeIn(planting, 'transplant') });
  const stages: DatedStage[] = [];
  let from = begin;
  for (const name of planting.value.stages ?? []) {
    if (name === undefined) continue;
    const stage = gathered(scope, 'stages', name);
    if (stage === undefined) {
      wants.push({ says: `the stage ${name}`, at: placeIn(planting, 'stages') });
      continue;
    }
    const { lasts } = stage.value;
    if (lasts === undefined) {
      wants.push({ says: `how long ${name} lasts`, at: valueAt([...stage.path, 'lasts'], stage.file) });
      continue;
    }
    if (from === undefined) continue;
    const to = addDays(from, Math.max(1, Math.round(lasts.value)));
    stages.push({ stage, from, to, batch: batches.get(stage.value.batch ?? '') });
    from = to;
  }
  return wants.length > 0 ? unknown(wants) : stages;
}

/**
 * The day a planting goes over its containers: as written, the recipe's `start`, or where only the sowing is written two weeks
 * later (seedlings of one to three weeks, Kratky 2010).
 */
export function startOf(scope: Scope, { value }: Sourced<Planting>): Day | undefined {
  return value.transplant ?? scope.recipe.start ?? (value.sow === undefined ? undefined : addDays(value.sow, 14));
}

function placeIn({ path, file }: Sourced<Planting>, key: string): Place {
  return valueAt([...path, key], file);
}
