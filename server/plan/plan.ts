// Recipe in, plan out: the table of contents of this folder. Everything shown anywhere stands in a plan.

import type { Container, Feed, Planting } from '../recipe/seen.ts';
import type { Scope, Sourced } from '../recipe/use.ts';
import { type BatchPlan, planBatch } from './batch.ts';
import { type ContainerPlan, planContainer } from './container.ts';
import { type FeedPlan, planFeed } from './feed.ts';
import type { Figure } from './figure.ts';
import { type FillPlan, planFill } from './fill.ts';
import { type BatchNeeds, byName, gatherBatches, gatheredAll, keptList, shelfOf } from './gather.ts';
import { changedBetween, madeOfEach } from './made-of-each.ts';
import { memo } from './memo.ts';
import { containersOf, fillsTogether, type Servings, servingsOf } from './serving.ts';

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

export function planOf(scope: Scope): Plan {
  const servings = servingsOf(scope);
  const shelf = shelfOf(scope);
  const needs = gatherBatches(gatheredAll(scope, 'batches'), shelf);
  const containers = gatheredAll(scope, 'containers');
  return {
    scope,
    batches: batchesByName(planBatches(needs, servings)),
    containers: planContainers(containers),
    plantings: plantingsByName(planPlantings(gatheredAll(scope, 'plantings'), byName(containers))),
    feeds: planFeeds(gatheredAll(scope, 'feeds')),
  };
}

const planBatches = madeOfEach(
  (needs: BatchNeeds, servings: Servings) => planBatch(needs, keptList(servings.of.get(needs.batch.name) ?? [])),
  ([was], [is]) => {
    const served = new Set(
      changedBetween(was.all, is.all)
        .flat()
        .map(({ batch }) => batch),
    );
    return ({ batch }) => served.has(batch.name);
  },
);

const batchesByName = memo(
  (batches: readonly BatchPlan[]): Plan['batches'] => new Map(batches.map(batch => [batch.needs.batch.name, batch])),
);

const planContainers = memo(
  (containers: readonly Sourced<Container>[]): Plan['containers'] =>
    new Map(containers.map(container => [container.name, planContainer(container)])),
);

const planFeeds = memo(
  (feeds: readonly Sourced<Feed>[]): Plan['feeds'] => new Map(feeds.map(feed => [feed.name, planFeed(feed)])),
);

type Containers = ReadonlyMap<string, Sourced<Container>>;

const planPlantings = madeOfEach((planting: Sourced<Planting>, containers: Containers) =>
  planPlanting(planting, planFill(planting, containers.get(planting.value.container ?? ''))),
);

const plantingsByName = memo(
  (plantings: readonly PlantingPlan[]): Plan['plantings'] => new Map(plantings.map(plan => [plan.planting.name, plan])),
);

const planPlanting = memo((planting: Sourced<Planting>, fill: FillPlan): PlantingPlan => {
  const containers = containersOf(planting);
  return { planting, fill, containers, together: fillsTogether({ fill: fill.volume, containers }) };
});
