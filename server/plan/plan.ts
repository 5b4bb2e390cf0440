// Recipe in, plan out: the table of contents of this folder. Everything shown anywhere stands in a plan.

import type { Batch, Container, Feed, Planting } from '../recipe/seen.ts';
import type { Scope, Sourced } from '../recipe/use.ts';
import { type BatchPlan, planBatch } from './batch.ts';
import { type ContainerPlan, planContainer } from './container.ts';
import { type FeedPlan, planFeed } from './feed.ts';
import type { Figure } from './figure.ts';
import { type FillPlan, planFill } from './fill.ts';
import { gatherBatch, gatheredAll, keptList, type Shelf, shelfOf } from './gather.ts';
import { latest, memo } from './memo.ts';
import { containersOf, fillsTogether, type Serving, servingsOf } from './serving.ts';

export interface Plan {
  readonly scope: Scope;
  readonly batches: ReadonlyMap<string, BatchPlan>;
  /** Of every container that the recipe sees, borrowed ones included. */
  readonly containers: ReadonlyMap<string, ContainerPlan>;
  readonly plantings: ReadonlyMap<string, PlantingPlan>;
  /** Of every feed that the recipe sees, borrowed ones included. */
  readonly feeds: ReadonlyMap<string, FeedPlan>;
}

export interface PlantingPlan {
  readonly planting: Sourced<Planting>;
  readonly fill: FillPlan;
  readonly containers: Figure<'number'>;
  /** The first fill of all its containers. */
  readonly together: Figure<'volume'>;
}

const none: readonly Serving[] = keptList<Serving>([]);

export function planOf(scope: Scope): Plan {
  const servings = servingsOf(scope);
  const shelf = shelfOf(scope);
  const batches = new Map<string, BatchPlan>();
  for (const batch of gatheredAll(scope, 'batches')) {
    batches.set(batch.name, planOneBatch(batch, shelf, servings.get(batch.name) ?? none));
  }
  const containers = gatheredAll(scope, 'containers');
  return {
    scope,
    batches,
    containers: planContainers(containers),
    plantings: planPlantings(gatheredAll(scope, 'plantings'), containers),
    feeds: planFeeds(gatheredAll(scope, 'feeds')),
  };
}

const planOneBatch = latest((batch: Sourced<Batch>, shelf: Shelf, serves: readonly Serving[]) =>
  planBatch(gatherBatch(batch, shelf), serves),
);

const planContainers = memo(
  (containers: readonly Sourced<Container>[]): Plan['containers'] =>
    new Map(containers.map(container => [container.name, planContainer(container)])),
);

const planFeeds = memo(
  (feeds: readonly Sourced<Feed>[]): Plan['feeds'] => new Map(feeds.map(feed => [feed.name, planFeed(feed)])),
);

const planPlantings = memo(
  (plantings: readonly Sourced<Planting>[], containers: readonly Sourced<Container>[]): Plan['plantings'] => {
    const containerOf = new Map(containers.map(container => [container.name, container]));
    const planned = plantings.map(planting =>
      planPlanting(planting, planFill(planting, containerOf.get(planting.value.container ?? ''))),
    );
    return new Map(planned.map(plan => [plan.planting.name, plan]));
  },
);

const planPlanting = memo((planting: Sourced<Planting>, fill: FillPlan): PlantingPlan => {
  const containers = containersOf(planting);
  return { planting, fill, containers, together: fillsTogether({ fill: fill.volume, containers }) };
});
