// The numbers of a source water that can be explained.

import { elementsOfWater } from '../../plan/elements.ts';
import { ionGapOf } from '../../plan/ion-gap.ts';
import { statedOf } from '../../plan/stated-water.ts';
import { planWater } from '../../plan/water.ts';
import type { Water } from '../../recipe/seen.ts';
import type { Sourced } from '../../recipe/use.ts';
import { type ExplainedNumber, number } from './explained-number.ts';
import { solutionNumbers } from './solution-numbers.ts';

export function waterNumbers(water: Sourced<Water>): readonly ExplainedNumber[] {
  const at = ['waters', water.name];
  const plan = () => planWater(water);
  const gap = ionGapOf(plan());
  return [
    ...solutionNumbers(
      at,
      () => statedOf(plan()),
      () => plan().inAir,
    ),
    number([...at, 'alkalinity_meq_per_L'], () => statedOf(plan()).alkalinity, ['alkalinity']),
    number([...at, 'inorganicCarbon_mmol_per_L'], () => plan().carbon.total, ['inorganicCarbon']),
    number([...at, 'CO2_mmol_per_L'], () => plan().carbon.CO2, ['CO2']),
    number([...at, 'HCO3_mmol_per_L'], () => plan().carbon.HCO3, ['HCO3']),
    number([...at, 'CO3_mmol_per_L'], () => plan().carbon.CO3, ['CO3']),
    ...(gap === undefined || !gap.isWhole
      ? []
      : [
          number([...at, 'ionGap', 'meq_per_L'], () => gap.charge, ['']),
          number([...at, 'ionGap', 'percent'], () => gap.share),
        ]),
    ...[...elementsOfWater(water)].map(([element, figure]) => ({
      ...number([...at, 'elements_mg_per_L', element], () => figure),
      also: [[...at, 'elements', element].join('/')],
    })),
  ];
}
