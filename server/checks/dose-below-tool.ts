// A dose that is smaller than the finest step of any tool on the bench.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { eachBatch } from './each.ts';

export const doseBelowTool = eachBatch<'dose-below-tool'>(({ doses }) =>
  [...doses.values()].flatMap(({ name, perLoad, measured, at }): readonly FindingOf<'dose-below-tool'>[] => {
    // Of nothing, nothing is measured.
    if (measured.kind !== 'too-small' || perLoad.kind === 'unknown' || perLoad.quantity.value === 0) return [];
    const { dimension } = perLoad.quantity;
    const smallest = { dimension, value: measured.smallest };
    return [
      {
        code: 'dose-below-tool',
        params: { feed: name, dose: perLoad.quantity, smallest, tool: measured.tool },
        at,
        related: [{ at: keyAt(['tools', measured.tool]), says: 'the finest tool' }],
      },
    ];
  }),
);
