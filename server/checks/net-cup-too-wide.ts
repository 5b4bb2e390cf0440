// Net cups that are wider than the container they hang in, one alone or several together.

import type { FindingOf } from '../../schema/findings.ts';
import type { Plan } from '../plan/plan.ts';
import { wholePlan } from './each.ts';
import { faultyVessels } from './faulty-vessel.ts';

export const netCupTooWide = wholePlan((plan: Plan): readonly FindingOf<'net-cup-too-wide'>[] => {
  return faultyVessels(plan).flatMap(({ container, fault, cups, at, related }) => {
    const top = container.value['net-cup']?.top;
    if (fault.cups !== 'too-wide' || top === undefined) return [];
    return [{ code: 'net-cup-too-wide', params: { container: container.name, cups, top }, at, related }];
  });
});
