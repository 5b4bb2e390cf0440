// A stage that stands twice in the list of one planting.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const stageRepeated = eachOwn('plantings', ({ name, value, path }): readonly FindingOf<'stage-repeated'>[] => {
  const stages = value.stages ?? [];
  return stages.flatMap((stage, index) => {
    if (stage === undefined || stages.indexOf(stage) === index) return [];
    const at = [...path, 'stages', index];
    return [
      {
        code: 'stage-repeated' as const,
        params: { planting: name, stage },
        at: valueAt(at),
        fixes: [{ title: 'Take it out', edits: [{ kind: 'remove', path: at } as const], sure: false }],
      },
    ];
  });
});
