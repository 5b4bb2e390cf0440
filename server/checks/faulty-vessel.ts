// The containers that cannot be, or cannot hold their net cups, each with the place to mend: of one cup the container's measures,
// of several the number of plants. Three findings tell them apart.

import { type Place, valueAt } from '../../schema/place.ts';
import type { Fault } from '../geometry/vessel-faults.ts';
import { planVessel } from '../plan/container.ts';
import { memo } from '../plan/memo.ts';
import type { Plan } from '../plan/plan.ts';
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

export const faultyVessels = memo((plan: Plan): readonly FaultyVessel[] => {
  const found: FaultyVessel[] = [];
  for (const { container, vessel } of plan.containers.values()) {
    if (vessel.kind === 'vessel' || container.file !== undefined) continue;
    for (const fault of vessel.faults) {
      found.push({ container, fault, cups: 1, at: valueAt([...container.path, ...fault.at]), related: [] });
    }
  }
  for (const { planting, fill } of plan.plantings.values()) {
    const cups = planting.value.plants ?? 1;
    const container = plan.containers.get(planting.value.container ?? '')?.container;
    if (cups === 1 || container === undefined || fill.vessel?.kind !== 'no-vessel') continue;
    if (planVessel(container, 1).kind === 'no-vessel') continue;
    const [fault] = fill.vessel.faults;
    if (fault === undefined) continue;
    const measures = { at: valueAt([...container.path, ...fault.at], container.file), says: 'the container' };
    found.push({ container, fault, cups, at: valueAt([...planting.path, 'plants']), related: [measures] });
  }
  return found;
});
