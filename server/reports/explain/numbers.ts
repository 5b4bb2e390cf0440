// Every number of a recipe that `explain` can walk back to its sources, by the keys under which the plan's JSON prints it. Figures
// are worked out when one is asked for.

import { seasonOf } from '../../plan/season.ts';
import type { Supply } from '../../plan/supplies.ts';
import type { Adjuster } from '../../recipe/seen.ts';
import { all } from '../../recipe/use.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { batchNumbers } from './batch-numbers.ts';
import { type ExplainedNumber, number } from './explained-number.ts';
import { plantingNumbers } from './planting-numbers.ts';
import { waterNumbers } from './water-numbers.ts';

export function numbersOf({ plan, scope }: Snapshot): readonly ExplainedNumber[] {
  const season = seasonOf(plan);
  return [
    ...all(scope, 'waters').flatMap(waterNumbers),
    ...[...plan.batches].flatMap(([name, batch]) => batchNumbers(name, batch)),
    ...[...plan.containers].flatMap(([name, container]) => [
      number(['containers', name, 'brimful_L'], () => container.brimful, ['brimful']),
      number(['containers', name, 'netCupLine_cm'], () => container.netCupLine, ['netCupLine']),
      number(['containers', name, 'netCupLine_L'], () => container.netCupVolume, ['netCupVolume']),
    ]),
    ...[...season.plantings].flatMap(([name, planting]) => plantingNumbers(name, planting)),
    ...[...season.supplies].flatMap(([name, supply]) => supplyNumbers(name, supply)),
  ];
}

function supplyNumbers(name: string, supply: Supply): readonly ExplainedNumber[] {
  const { uses, packages, kind, of } = supply;
  const unit = uses.kind === 'known' && uses.quantity.dimension === 'mass' ? 'g' : 'mL';
  const used = number(['supplies', name, `uses_${unit}`], () => uses, ['', 'uses']);
  const ofAdjuster = kind === 'adjuster' ? { ...used, adjuster: { value: of.value as Adjuster } } : used;
  return [ofAdjuster, number(['supplies', name, 'packages'], () => packages)];
}
