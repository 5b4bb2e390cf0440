// The containers that cannot be, or cannot hold their net cups, each with the place to mend: of one cup the container's measures,
// of several the number of plants. Three findings tell them apart.

import { type Place, valueAt } from '../../schema/place.ts';
import type { Fault } from '../geometry/vessel-faults.ts';
import { type ContainerPlan, planVessel } from '../plan/container.ts';
import { foundInEach, valuesOf } from '../plan/made-of-each.ts';
import { memo } from '../plan/memo.ts';
import type { Plan, PlantingPlan } from '../plan/plan.ts';
import type { Container } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';

export interface FaultyVessel {
  readonly container: Sourced<Container>;
  readonly fault: Fault;
  readonly cups: number;
  readonly at: Place;
  /** The measures of the container, where the place to mend is another. */
  readonly related: readonly { readonly at: Place; readonly says: string }[];
}

export const faultyVessels = memo((plan: Plan): readonly FaultyVessel[] => [
  ...alone(valuesOf(plan.containers)),
  ...together(valuesOf(plan.plantings), plan.containers),
]);

const alone = foundInEach(({ container, vessel }: ContainerPlan): readonly FaultyVessel[] => {
  if (vessel.kind === 'vessel' || container.file !== undefined) return [];
  return vessel.faults.map(fault => {
    const at = valueAt([...container.path, ...fault.at]);
    return { container, fault, cups: 1, at, related: [] };
  });
});

const together = foundInEach(
  ({ planting, fill }: PlantingPlan, containers: Plan['containers']): readonly FaultyVessel[] => {
    const cups = planting.value.plants ?? 1;
    const container = containers.get(planting.value.container ?? '')?.container;
    if (cups === 1 || container === undefined || fill.vessel?.kind !== 'no-vessel') return [];
    if (planVessel(container, 1).kind === 'no-vessel') return [];
    const [fault] = fill.vessel.faults;
    if (fault === undefined) return [];
    const measures = { at: valueAt([...container.path, ...fault.at], container.file), says: 'the container' };
    return [{ container, fault, cups, at: valueAt([...planting.path, 'plants']), related: [measures] }];
  },
);
