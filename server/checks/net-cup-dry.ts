// A fill that ends below the net cup, so that nothing waters the plug.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { numberOf } from '../plan/figure.ts';
import { eachPlanting } from './each.ts';

export const netCupDry = eachPlanting(({ planting, fill }): readonly FindingOf<'net-cup-dry'>[] => {
  const [height, line] = [numberOf(fill.level), numberOf(fill.netCupLine)];
  if (height === undefined || line === undefined || line - height <= unseen_cm) return [];
  const at = valueAt([...planting.path, 'fill'], planting.file);
  return [
    {
      code: 'net-cup-dry',
      params: { planting: planting.name, below: { dimension: 'length', value: line - height } },
      at,
      fixes: [{ title: 'Fill to the net cup', edits: [{ kind: 'replace', at, text: 'to net cup' }], sure: false }],
    },
  ];
});

/** What the surface of the solution bridges, and no ruler in a pot tells. */
const unseen_cm = 0.1;
