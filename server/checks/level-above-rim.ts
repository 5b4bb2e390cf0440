// A logged level that lies above the rim of the container.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { type Logged, loggedIn } from '../plan/logged.ts';
import type { Plan } from '../plan/plan.ts';
import { eachOf } from './each.ts';

export const levelAboveRim = eachOf(
  ({ scope }) => loggedIn(scope.recipe.log),
  ({ plantings }) => plantings,
  ({ index, entry }: Logged, plantings: Plan['plantings']): readonly FindingOf<'level-above-rim'>[] => {
    const { level, planting } = entry;
    const vessel = plantings.get(planting ?? '')?.fill.vessel;
    if (level === undefined || planting === undefined || vessel?.kind !== 'vessel') return [];
    if (level.value <= vessel.vessel.height_cm + 1e-9) return [];
    const rim = { dimension: 'length', value: vessel.vessel.height_cm } as const;
    return [{ code: 'level-above-rim', params: { planting, level, rim }, at: valueAt(['log', index, 'level']) }];
  },
);
