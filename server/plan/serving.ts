// Which fills a batch serves: the first fill of plantings that start on it, and the change of those that come to it later.

import { keyAt, type Place, valueAt } from '../../schema/place.ts';
import type { Container, Planting, Stage } from '../recipe/seen.ts';
import type { Scope, Sourced } from '../recipe/use.ts';
import { assumed, type Figure, formula, given, unknown } from './figure.ts';
import { type FillPlan, planFill } from './fill.ts';
import { gatheredAll, keptList } from './gather.ts';
import { memo } from './memo.ts';

/** What one planting takes of a batch when a stage begins. */
export interface Serving {
  readonly planting: Sourced<Planting>;
  readonly stage: Sourced<Stage>;
  /** `fill` at the start; `change` when a later stage brings another batch. */
  readonly kind: 'fill' | 'change';
  readonly perContainer: Figure<'volume'>;
  readonly containers: Figure<'number'>;
  readonly total: Figure<'volume'>;
}

/** The servings of every batch, by its name, in the order in which plantings are written. */
export function servingsOf(scope: Scope): ReadonlyMap<string, readonly Serving[]> {
  return servingsFrom(gatheredAll(scope, 'plantings'), gatheredAll(scope, 'stages'), gatheredAll(scope, 'containers'));
}

const servingsFrom = memo(
  (
    plantings: readonly Sourced<Planting>[],
    stages: readonly Sourced<Stage>[],
    containers: readonly Sourced<Container>[],
  ): ReadonlyMap<string, readonly Serving[]> => {
    const stageOf = new Map(stages.map(stage => [stage.name, stage]));
    const containerOf = new Map(containers.map(container => [container.name, container]));
    const byBatch = new Map<string, Serving[]>();
    for (const planting of plantings) {
      const fill = planFill(planting, containerOf.get(planting.value.container ?? ''));
      let before: string | undefined;
      for (const name of planting.value.stages ?? []) {
        const stage = stageOf.get(name ?? '');
        const batch = stage?.value.batch;
        if (stage === undefined || batch === undefined || batch === before) continue;
        const serving = serve(planting, stage, fill, before === undefined ? 'fill' : 'change');
        byBatch.set(batch, [...(byBatch.get(batch) ?? []), serving]);
        before = batch;
      }
    }
    return new Map([...byBatch].map(([batch, servings]) => [batch, keptList(servings)]));
  },
);

const serve = memo(
  (planting: Sourced<Planting>, stage: Sourced<Stage>, fill: FillPlan, kind: Serving['kind']): Serving => {
    const containers = containersOf(planting);
    const perContainer = kind === 'fill' ? fill.volume : fill.changeVolume;
    return {
      planting,
      stage,
      kind,
      perContainer,
      containers,
      total: fillsTogether({ fill: perContainer, containers }),
    };
  },
);

/** How many containers a planting has. */
export function containersOf(planting: Sourced<Planting>): Figure<'number'> {
  const { count } = planting.value;
  return count === undefined
    ? assumed({ dimension: 'number', value: 1 }, 'one container, where no count is written', 'tidemark-design')
    : given({ dimension: 'number', value: count }, valueAt([...planting.path, 'count'], planting.file));
}

/** What servings take together; with spare for what stays in vessels and pipes, where asked. */
export function neededVolume(serves: readonly Serving[], at: Place, spare?: 'with spare'): Figure<'volume'> {
  if (serves.length === 0)
    return unknown([{ says: 'a planting whose stages this batch feeds', at: keyAt(at.path, at.file) }]);
  const fills = serves.map(serving => serving.total);
  return spare === undefined ? sumOfFills({ fills }) : volumeAsNeeded({ fills, spare: usualSpare });
}

/** What is mixed beyond the fills. */
export const usualSpare = assumed(
  { dimension: 'fraction', value: 0.05 },
  'spare for spills and wet walls',
  'common-practice',
);

export const fillsTogether = formula({
  id: 'fills-of-a-planting',
  says: 'what the containers of the planting take together',
  statement: 'together = fill × containers',
  source: 'tidemark-design',
  takes: { fill: 'volume', containers: 'number' },
  gives: 'volume',
  evaluate: ({ fill, containers }) => fill * containers,
});

export const sumOfFills = formula({
  id: 'sum-of-fills',
  says: 'what the fills take together',
  statement: 'needed = sum of the fills',
  source: 'tidemark-design',
  takes: { fills: ['volume'] },
  gives: 'volume',
  evaluate: ({ fills }) => fills.reduce((total, fill) => total + fill, 0),
});

export const volumeAsNeeded = formula({
  id: 'volume-as-needed',
  says: 'the volume that its fills need',
  statement: 'volume = sum of the fills × (1 + spare)',
  source: 'tidemark-design',
  takes: { fills: ['volume'], spare: 'fraction' },
  gives: 'volume',
  evaluate: ({ fills, spare }) => fills.reduce((total, fill) => total + fill, 0) * (1 + spare),
});

export const leftOver = formula({
  id: 'left-over',
  says: 'what is left of the batch after its fills',
  statement: 'left = volume − needed',
  source: 'tidemark-design',
  takes: { volume: 'volume', needed: 'volume' },
  gives: 'volume',
  evaluate: ({ volume, needed }) => volume - needed,
});
