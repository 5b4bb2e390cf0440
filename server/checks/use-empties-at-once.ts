// A use rate that empties a container within a day: a slip of the unit, or a container far too small.

import type { FindingOf } from '../../schema/findings.ts';
import { type Place, valueAt } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import { numberOf } from '../plan/figure.ts';
import type { DatedStage } from '../plan/forecast.ts';
import type { PlantingSeason } from '../plan/season.ts';
import { plantsOf } from '../plan/use-rate.ts';
import { eachSeason } from './each.ts';

export const useEmptiesAtOnce = eachSeason((season): readonly FindingOf<'use-empties-at-once'>[] => {
  const found = emptyingStage(season);
  const { planting, fill } = season.plan;
  if (found === undefined || fill.volume.kind === 'unknown') return [];
  const { stage } = found.dated;
  const params = { planting: planting.name, stage: stage.name, use: found.use, fill: fill.volume.quantity };
  const uses = valueAt([...stage.path, 'uses'], stage.file);
  // A stage of another file is mended there; here the planting names it.
  const index = (planting.value.stages ?? []).indexOf(stage.name);
  const at: Place = stage.file === undefined ? uses : valueAt([...planting.path, 'stages', index], planting.file);
  return [{ code: 'use-empties-at-once', params, at, related: [{ at: uses, says: 'the use of one plant' }] }];
});

/** The first stage whose written use is all that one fill holds, in a day. */
export function emptyingStage({
  plan,
  stages,
}: PlantingSeason): { readonly dated: DatedStage; readonly use: Quantity<'volume'> } | undefined {
  const fill = numberOf(plan.fill.volume);
  if ('kind' in stages || fill === undefined) return undefined;
  const plants = numberOf(plantsOf(plan.planting)) ?? 1;
  for (const dated of stages) {
    // A use rate counts mL a day.
    const value = ((dated.stage.value.uses?.value ?? 0) / 1000) * plants;
    if (fill <= value) return { dated, use: { dimension: 'volume', value } };
  }
  return undefined;
}
