// A fill that stands so high in the net cup that the plug gets no air.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { numberOf } from '../plan/figure.ts';
import { eachPlanting } from './each.ts';

export const netCupDrowned = eachPlanting(({ planting, fill }): readonly FindingOf<'net-cup-drowned'>[] => {
  const { vessel, level, netCupLine } = fill;
  const [height, line] = [numberOf(level), numberOf(netCupLine)];
  if (vessel?.kind !== 'vessel' || vessel.depth?.kind !== 'known' || height === undefined || line === undefined) {
    return [];
  }
  const depth = vessel.depth.quantity;
  const into = height - line;
  // Above the rim it is another finding.
  if (into <= Math.min(deepestWet_cm, depth.value / 2) + 1e-9 || depth.value + 1e-9 < into) return [];
  const at = valueAt([...planting.path, 'fill'], planting.file);
  return [
    {
      code: 'net-cup-drowned',
      params: { planting: planting.name, into: { dimension: 'length', value: into }, depth },
      at,
      fixes: [
        {
          title: 'Fill 5 mm into the net cup',
          edits: [{ kind: 'replace', at, text: '5 mm into net cup' }],
          sure: false,
        },
      ],
    },
  ];
});

/**
 * What published methods wet at most (Kratky 2009: the lower 3 cm of a long tapered cup). Of a short cup no more than half is
 * wetted (common practice).
 */
const deepestWet_cm = 3;
