// The things that are computed where they are written: volume, dose, adjustment, reading, fill, stage, log entry.

import type { Path } from '../../../schema/place.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { adjustmentHover } from './adjustment.ts';
import { volumeHover } from './batch.ts';
import { doseHover } from './dose.ts';
import { formulationBlock } from './formulation.ts';
import { logHover } from './log.ts';
import { fillHover } from './planting.ts';
import { readingHover } from './reading.ts';
import { airGapHover, stagesHover } from './season.ts';
import { stageInPlanting } from './stage.ts';

/** On a key and on its value alike; undefined where nothing is computed. */
export function computedAt(snapshot: Snapshot, path: Path): string | undefined {
  const [section, name] = path;
  switch (section) {
    case 'batches':
      return inBatch(snapshot, path);
    case 'plantings':
      return inPlanting(snapshot, path);
    case 'log':
      return typeof name === 'number' ? logHover(snapshot, name) : undefined;
    default:
      return undefined;
  }
}

function inBatch({ plan, recipe }: Snapshot, [, name, key, below]: Path): string | undefined {
  const reader = recipe.show;
  const batch = plan.batches.get(String(name));
  if (batch === undefined) return undefined;
  switch (key) {
    case 'volume':
      return volumeHover(batch, reader);
    case 'feed': {
      const dose = below === undefined ? undefined : batch.doses.get(String(below));
      return dose === undefined ? undefined : doseHover(batch, dose, reader);
    }
    case 'adjust':
      return adjustmentHover(batch, reader);
    case 'readings':
      return typeof below === 'number' ? readingHover(batch, below, plan.scope, reader) : undefined;
    case 'solve':
      return formulationBlock(batch, plan.scope, reader);
    default:
      return undefined;
  }
}

function inPlanting({ plan, recipe }: Snapshot, [, name, key, below]: Path): string | undefined {
  const reader = recipe.show;
  const planting = plan.plantings.get(String(name));
  if (planting === undefined) return undefined;
  switch (key) {
    case 'fill':
      return fillHover(planting, reader);
    case 'keep-air-gap':
      return airGapHover(plan, planting, reader);
    case 'stages':
      return typeof below === 'number'
        ? stageInPlanting(plan, planting, below, reader)
        : stagesHover(plan, planting, reader);
    default:
      return undefined;
  }
}
