// A plan as a flat list of facts, each with a key of its own and the places that it rests on: what a review compares.

import type { Path } from '../../schema/place.ts';
import { batchFacts } from './batch-facts.ts';
import type { ContainerPlan } from './container.ts';
import { about, type Fact, type FactValue } from './fact.ts';
import { datesOf, heldBy, restsOfBatch, stagesOf } from './fact-places.ts';
import type { Plan } from './plan.ts';
import { plantingFacts } from './planting-facts.ts';
import { type Season, seasonOf } from './season.ts';
import type { Supply } from './supplies.ts';
import type { Task } from './timeline.ts';

/** Every fact of a plan, in a stable order. */
export function factsOf(plan: Plan): readonly Fact[] {
  const season = seasonOf(plan);
  return [
    ...[...plan.batches.values()].flatMap(batchFacts),
    ...[...season.plantings.values()].flatMap(planting => plantingFacts(plan, planting)),
    ...[...plan.containers.values()].flatMap(containerFacts),
    ...[...season.supplies].flatMap(([name, supply]) => supplyFacts(plan, name, supply)),
    ...taskFacts(plan, season),
  ];
}

function containerFacts({ container, brimful, netCupLine, netCupVolume }: ContainerPlan): readonly Fact[] {
  const put = about('container', container.name);
  const rests = [container.path];
  const { opaque } = container.value;
  const dark: FactValue = { kind: 'text', text: opaque === true ? 'no' : 'yes' };
  const facts = [
    put('brimful', brimful, rests),
    ...(opaque === undefined ? [] : [put('lets light in', dark, [[...container.path, 'opaque']])]),
  ];
  if (container.value['net-cup'] === undefined) return facts;
  return [...facts, put('level of the net cup', netCupLine, rests), put('volume to the net cup', netCupVolume, rests)];
}

function supplyFacts(plan: Plan, name: string, { of, kind, uses, packages, cost }: Supply): readonly Fact[] {
  const put = about('supply', name);
  const rests = [
    of.path,
    ...[...plan.batches.values()].flatMap(restsOfBatch),
    ...[...plan.plantings.values()].flatMap(({ planting }) => [
      ...heldBy(planting),
      ...stagesOf(planting.value.stages),
    ]),
  ];
  const adjuster = kind === 'adjuster' ? of.value : undefined;
  const facts = [put('used', uses, rests, adjuster), put('packages', packages, rests)];
  return cost === undefined ? facts : [...facts, put('cost', { kind: 'money', money: cost }, rests)];
}

/** Checks and top-ups recur with the days; what they follow from is told as facts of the planting. */
function taskFacts(plan: Plan, { tasks }: Season): readonly Fact[] {
  const told = tasks.filter(({ kind }) => kind !== 'top-up' && kind !== 'check');
  return numbered(told).map(({ task, ordinal }) => {
    const what = ordinal === 0 ? task.what : `${task.what} (${ordinal + 1})`;
    return about('task', task.about)(what, { kind: 'date', day: task.date }, restsOfTask(plan, task));
  });
}

function restsOfTask(plan: Plan, { about: name, kind }: Task): readonly Path[] {
  const planting = plan.plantings.get(name)?.planting;
  if (planting !== undefined && kind !== 'mix') {
    return [...datesOf(plan, planting), [...planting.path, 'sow'], ...stagesOf(planting.value.stages)];
  }
  const grown = [...plan.plantings.values()].flatMap(one => [
    ...datesOf(plan, one.planting),
    ...heldBy(one.planting),
    ...stagesOf(one.planting.value.stages),
  ]);
  return [['batches', name, 'volume'], ...grown];
}

/** Tasks with their number among those of the same words, so that each has a key that a moved date does not change. */
function numbered(tasks: readonly Task[]) {
  const seen = new Map<string, number>();
  return tasks.map(task => {
    const key = `${task.about}\n${task.what}`;
    const ordinal = seen.get(key) ?? 0;
    seen.set(key, ordinal + 1);
    return { task, ordinal };
  });
}
