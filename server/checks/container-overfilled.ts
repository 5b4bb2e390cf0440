// A fill whose level lies above the rim of its container.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { eachPlanting } from './each.ts';

export const containerOverfilled = eachPlanting(({ planting, fill }): readonly FindingOf<'container-overfilled'>[] => {
  const { vessel, level } = fill;
  if (vessel?.kind !== 'vessel' || vessel.height.kind === 'unknown' || level.kind === 'unknown') return [];
  const rim = vessel.height.quantity;
  if (level.quantity.value <= rim.value + 1e-9) return [];
  const at = valueAt([...planting.path, 'fill'], planting.file);
  return [
    {
      code: 'container-overfilled',
      params: { planting: planting.name, level: level.quantity, rim },
      at,
      fixes:
        vessel.depth === undefined
          ? []
          : [{ title: 'Fill to the net cup', edits: [{ kind: 'replace', at, text: 'to net cup' }], sure: false }],
    },
  ];
});
