// Checks every water that the recipe itself has, as it was worked out; borrowed waters are checked in their own file.

import type { FindingCode, FindingOf } from '../../schema/findings.ts';
import { gatheredAll } from '../plan/gather.ts';
import { memo } from '../plan/memo.ts';
import { planWater, type WaterPlan } from '../plan/water.ts';
import { type Check, collect, wholePlan } from './each.ts';

export function eachWater<C extends FindingCode>(find: (water: WaterPlan) => readonly FindingOf<C>[]): Check<C> {
  const remembered = memo(find);
  return wholePlan(({ scope }) =>
    collect(gatheredAll(scope, 'waters'), water => (water.file === undefined ? remembered(planWater(water)) : [])),
  );
}
