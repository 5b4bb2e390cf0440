// Checks every water that the recipe itself has, as it was worked out; borrowed waters are checked in their own file.

import type { FindingCode, FindingOf } from '../../schema/findings.ts';
import { gatheredOwn } from '../plan/gather.ts';
import { planWater, type WaterPlan } from '../plan/water.ts';
import { type Check, eachOf } from './each.ts';

export function eachWater<C extends FindingCode>(find: (water: WaterPlan) => readonly FindingOf<C>[]): Check<C> {
  return eachOf(
    ({ scope }) => gatheredOwn(scope.recipe, 'waters'),
    () => undefined,
    water => find(planWater(water)),
  );
}
