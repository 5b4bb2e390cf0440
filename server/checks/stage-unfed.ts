// A planting whose first stage names no batch. A later stage without one goes on with the solution that is there.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt, valueAt } from '../../schema/place.ts';
import { byName, gatheredAll } from '../plan/gather.ts';
import type { PlantingPlan } from '../plan/plan.ts';
import type { Stage } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { eachOf, plantingsIn } from './each.ts';

export const stageUnfed = eachOf(
  plantingsIn,
  ({ scope }) => byName(gatheredAll(scope, 'stages')),
  ({ planting }: PlantingPlan, stages: ReadonlyMap<string, Sourced<Stage>>): readonly FindingOf<'stage-unfed'>[] => {
    const stage = stages.get(planting.value.stages?.[0] ?? '');
    if (stage === undefined || stage.value.batch !== undefined) return [];
    return [
      {
        code: 'stage-unfed',
        params: { planting: planting.name, stage: stage.name },
        at: valueAt([...planting.path, 'stages', 0]),
        related: [{ at: keyAt([...stage.path, 'batch'], stage.file), says: 'the stage' }],
      },
    ];
  },
);
