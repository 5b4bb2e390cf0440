// A net cup that would stand on the floor of its container.

import type { FindingOf } from '../../schema/findings.ts';
import type { Plan } from '../plan/plan.ts';
import type { Container } from '../recipe/seen.ts';
import { wholePlan } from './each.ts';
import { faultyVessels } from './faulty-vessel.ts';

export const netCupTooDeep = wholePlan((plan: Plan): readonly FindingOf<'net-cup-too-deep'>[] => {
  return faultyVessels(plan).flatMap(({ container, fault, at }) => {
    const depth = container.value['net-cup']?.depth;
    if (fault.cups !== 'too-deep' || depth === undefined) return [];
    const height = { dimension: 'length', value: innerHeight(container.value) } as const;
    return [{ code: 'net-cup-too-deep', params: { container: container.name, depth, height }, at }];
  });
});

function innerHeight({ inside }: Container): number {
  const straight = inside?.cylinder ?? inside?.box ?? inside?.cone;
  return straight?.height?.value ?? inside?.profile?.at(-1)?.at?.value ?? 0;
}
