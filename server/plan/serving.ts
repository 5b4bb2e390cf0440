// Which fills a batch serves: the first fill of plantings that start on it, and the change of those that come to it later.

import { keyAt, type Place, valueAt } from '../../schema/place.ts';
import type { Container, Planting, Stage } from '../recipe/seen.ts';
import type { Scope, Sourced } from '../recipe/use.ts';
import { assumed, type Figure, formula, given, unknown } from './figure.ts';
import { type FillPlan, planFill } from './fill.ts';
import { byName, gatheredAll, keptList } from './gather.ts';
import { changedBetween, madeOfEach } from './made-of-each.ts';
import { memo } from './memo.ts';

/** What one planting takes of a batch when a stage begins. */
export interface Serving {
  readonly planting: Sourced<Planting>;
  readonly stage: Sourced<Stage>;
  /** The name of the batch that it is taken from. */
  readonly batch: string;
  /** `fill` at the start; `change` when a later stage brings another batch. */
  readonly kind: 'fill' | 'change';
  readonly perContainer: Figure<'volume'>;
  readonly containers: Figure<'number'>;
  readonly total: Figure<'volume'>;
}

/** What all plantings take. */
export interface Servings {
  /** By the name of the batch, in the order in which plantings are written. */
  readonly of: ReadonlyMap<string, readonly Serving[]>;
  /** Of each planting, in the order of its stages. */
  readonly all: readonly (readonly Serving[])[];
}

export function servingsOf(scope: Scope): Servings {
  return sorted(
    takenBy(gatheredAll(scope, 'plantings'), gatheredAll(scope, 'stages'), gatheredAll(scope, 'containers')),
  );
}

const takenBy = madeOfEach(
  (
    planting: Sourced<Planting>,
    stages: readonly Sourced<Stage>[],
    containers: readonly Sourced<Container>[],
  ): readonly Serving[] => {
    const fill = planFill(planting, byName(containers).get(planting.value.container ?? ''));
    const taken: Serving[] = [];
    for (const name of planting.value.stages ?? []) {
      const stage = byName(stages).get(name ?? '');
      const batch = stage?.value.batch;
      const before = taken.at(-1)?.batch;
      if (stage === undefined || batch === undefined || batch === before) continue;
      taken.push(serve(planting, stage, batch, fill, before === undefined ? 'fill' : 'change'));
    }
    return keptList(taken);
  },
  (was, is) => {
    const [stages, containers] = [changedBetween(was[0], is[0]), changedBetween(was[1], is[1])];
    const names = new Set([...stages, ...containers].map(({ name }) => name));
    return ({ value }) => names.has(value.container ?? '') || (value.stages ?? []).some(name => names.has(name ?? ''));
  },
);

const sorted = memo((all: readonly (readonly Serving[])[]): Servings => {
  const of = new Map<string, Serving[]>();
  for (const servings of all) {
    for (const serving of servings) {
      const { batch } = serving;
      const others = of.get(batch);
      if (others === undefined) of.set(batch, [serving]);
      else others.push(serving);
    }
  }
  return { of, all };
});

const serve = memo(
  (
    planting: Sourced<Planting>,
    stage: Sourced<Stage>,
    batch: string,
    fill: FillPlan,
    kind: Serving['kind'],
  ): Serving => {
    const containers = containersOf(planting);
    const perContainer = kind === 'fill' ? fill.volume : fill.changeVolume;
    return {
      planting,
      stage,
      batch,
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
