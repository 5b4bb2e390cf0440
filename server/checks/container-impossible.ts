// A container whose measures fit no shape, such as a profile that does not rise.

import type { FindingOf } from '../../schema/findings.ts';
import type { Plan } from '../plan/plan.ts';
import { wholePlan } from './each.ts';
import { faultyVessels } from './faulty-vessel.ts';

export const containerImpossible = wholePlan((plan: Plan): readonly FindingOf<'container-impossible'>[] => {
  return faultyVessels(plan).flatMap(({ container, fault, at }) =>
    fault.cups === undefined
      ? [{ code: 'container-impossible', params: { container: container.name, reason: fault.says }, at }]
      : [],
  );
});
