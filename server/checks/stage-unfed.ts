// A planting whose first stage names no batch. A later stage without one goes on with the solution that is there.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt, valueAt } from '../../schema/place.ts';
import type { Plan } from '../plan/plan.ts';
import { find } from '../recipe/use.ts';
import { collect, wholePlan } from './each.ts';

export const stageUnfed = wholePlan(({ plantings, scope }: Plan): readonly FindingOf<'stage-unfed'>[] => {
  return collect(plantings.values(), ({ planting }): readonly FindingOf<'stage-unfed'>[] => {
    const first = planting.value.stages?.[0];
    const stage = first === undefined ? undefined : find(scope, 'stages', first);
    if (stage === undefined || stage.value.batch !== undefined) return [];
    return [
      {
        code: 'stage-unfed',
        params: { planting: planting.name, stage: stage.name },
        at: valueAt([...planting.path, 'stages', 0]),
        related: [{ at: keyAt([...stage.path, 'batch'], stage.file), says: 'the stage' }],
      },
    ];
  });
});
