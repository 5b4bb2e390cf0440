// A plan as a flat list of facts, each with a key of its own and the places that it rests on: what a review compares.

import type { Day } from '../../schema/date.ts';
import type { Dimension } from '../../schema/dimensions.ts';
import type { Path } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import type { Money } from '../../schema/texts/money.ts';
import type { Adjuster, Planting } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { adjustmentOf, finalOf } from './adjust.ts';
import type { BatchPlan } from './batch.ts';
import type { ContainerPlan } from './container.ts';
import type { Figure } from './figure.ts';
import { mixtureOf } from './mixture.ts';
import { hasNitrogen } from './nitrogen.ts';
import type { Plan } from './plan.ts';
import { isForecast, type PlantingSeason, type Season, seasonOf } from './season.ts';
import type { Supply } from './supplies.ts';
import type { Task } from './timeline.ts';

/** Which part of a plan a fact is about, in the order in which a reader meets them. */
export const factGroups = ['batch', 'planting', 'container', 'supply', 'task'] as const;

export type FactGroup = (typeof factGroups)[number];

export interface Fact {
  readonly group: FactGroup;
  /** The batch, planting, container or supply. */
  readonly name: string;
  /** What of it, as a phrase: `dose of green`, `pH after standing in air`. Unique within the name. */
  readonly what: string;
  readonly value: FactValue;
  /** Entries, or values in them, that it rests on, beside what its figure names itself. */
  readonly rests: readonly Path[];
  /** The acid or base whose amount it is: cautions go wherever it goes. */
  readonly adjuster?: Adjuster;
}

export type FactValue =
  | { readonly kind: 'figure'; readonly figure: Figure }
  /** A number of a forecast, which is reckoned day by day. */
  | { readonly kind: 'amount'; readonly quantity: Quantity }
  | { readonly kind: 'date'; readonly day: Day }
  | { readonly kind: 'money'; readonly money: Money }
  | { readonly kind: 'text'; readonly text: string };

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

type Put = (what: string, value: FactValue | Figure, rests: readonly Path[], adjuster?: Adjuster) => Fact;

function about(group: FactGroup, name: string): Put {
  return (what, value, rests, adjuster) => {
    const isFigure = value.kind === 'known' || value.kind === 'unknown';
    const fact: Fact = { group, name, what, value: isFigure ? { kind: 'figure', figure: value } : value, rests };
    return adjuster === undefined ? fact : { ...fact, adjuster };
  };
}

function batchFacts(batch: BatchPlan): readonly Fact[] {
  const { needs } = batch;
  const put = about('batch', needs.batch.name);
  const all = restsOfBatch(batch);
  const mixed = pathsOf([needs.batch, needs.water, ...needs.feeds.map(({ feed }) => feed), ...needs.tools]);
  const volume: readonly Path[] = [[...needs.batch.path, 'volume'], ...servedBy(batch)];
  const { predicted, inAir } = mixtureOf(batch);
  const forms = hasNitrogen(batch.nitrogen) ? (['nitrate', 'ammonium', 'urea'] as const) : [];
  const adjustment = adjustmentOf(batch);
  const end = finalOf(batch);
  const adjuster = adjustment?.adjuster?.name ?? 'adjuster';
  return [
    put('volume', batch.volume, volume),
    put('loads', batch.loads, [...volume, ...pathsOf([needs.vessel])]),
    put('left after its fills', batch.left, volume),
    ...[...batch.doses.values()].map(dose =>
      put(`dose of ${dose.name}`, dose.poured, [
        dose.at.path,
        ...volume,
        ...pathsOf([dose.feed, needs.vessel, ...needs.tools]),
      ]),
    ),
    ...[...batch.elements].map(([element, value]) => put(element, value, mixed)),
    ...forms.map(form => put(`N as ${form}`, batch.nitrogen[form], mixed)),
    put('pH as mixed', predicted.pH, mixed),
    put('pH after standing in air', inAir.pH, mixed),
    put('EC as mixed', predicted.EC, mixed),
    ...(adjustment === undefined
      ? []
      : [
          put(`${adjuster} to adjust`, adjustment.exact, all, adjustment.adjuster?.value),
          put(`${adjuster}, first step`, adjustment.firstStep, all, adjustment.adjuster?.value),
          put('pH adjusted', end.figures.pH, all),
          put('pH adjusted, after standing in air', end.inAir.pH, all),
          put('EC adjusted', end.figures.EC, all),
        ]),
  ];
}

function plantingFacts(plan: Plan, { plan: planned, stages, forecast }: PlantingSeason): readonly Fact[] {
  const { planting, fill } = planned;
  const put = about('planting', planting.name);
  const held = heldBy(planting);
  const facts: Fact[] = [
    put('fill level', fill.level, held),
    put('fill of a container', fill.volume, held),
    put('containers', planned.containers, [planting.path]),
    put('all fills', planned.together, held),
    put('highest level to refill to', fill.changeLevel, held),
  ];
  if ('kind' in stages) return facts;
  const dates = datesOf(plan, planting);
  stages.forEach(({ stage, from, batch }, index) => {
    const began = [...dates, ...stages.slice(0, index).map(before => [...before.stage.path, 'lasts'])];
    facts.push(put(`${stage.name} begins`, { kind: 'date', day: from }, began));
    if (batch === undefined) return;
    const feeding: FactValue = { kind: 'text', text: batch.needs.batch.name };
    facts.push(
      put(`${stage.name} is fed`, feeding, [
        [...stage.path, 'batch'],
        [...planting.path, 'stages'],
      ]),
    );
  });
  const lengths = stages.map(({ stage }) => [...stage.path, 'lasts']);
  const last = stages.at(-1);
  if (last !== undefined) facts.push(put('harvest', { kind: 'date', day: last.to }, [...dates, ...lengths]));
  if (!isForecast(forecast)) return facts;
  const { lastsCrop, runsLow, topUps, days } = forecast;
  const fed = stages.flatMap(({ batch }) => (batch === undefined ? [] : restsOfBatch(batch)));
  const grown = [...dates, ...held, ...pathsOf(stages.map(({ stage }) => stage)), ...fed, ['log']];
  facts.push(put('one fill lasts', { kind: 'text', text: lastsCrop ? 'yes' : 'no' }, grown));
  if (runsLow !== undefined) facts.push(put('runs low', { kind: 'date', day: runsLow }, grown));
  facts.push(put('top-ups to come', { kind: 'text', text: String(topUps.length) }, grown));
  const end = days.at(-1);
  if (end !== undefined) {
    facts.push(put('level on the last day', amount('length', end.level_cm), grown));
    if (end.EC !== undefined) facts.push(put('EC on the last day', amount('conductivity', end.EC), grown));
  }
  const [next] = topUps;
  if (next !== undefined) facts.push(put('next top-up', { kind: 'date', day: next.date }, grown));
  return facts;
}

function amount(dimension: Dimension, value: number): FactValue {
  return { kind: 'amount', quantity: { dimension, value } };
}

function containerFacts({ container, brimful, netCupLine, netCupVolume }: ContainerPlan): readonly Fact[] {
  const put = about('container', container.name);
  const rests = [container.path];
  if (container.value['net-cup'] === undefined) return [put('brimful', brimful, rests)];
  return [
    put('brimful', brimful, rests),
    put('level of the net cup', netCupLine, rests),
    put('volume to the net cup', netCupVolume, rests),
  ];
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

/** What a planting's first day and the order of its stages are written by. */
function datesOf(plan: Plan, { path, value }: Sourced<Planting>): readonly Path[] {
  const start: readonly Path[] =
    value.transplant === undefined && plan.scope.recipe.start !== undefined ? [['start']] : [];
  return [...start, [...path, 'transplant'], [...path, 'stages']];
}

function stagesOf(stages: readonly (string | undefined)[] | undefined): readonly Path[] {
  return (stages ?? []).map(name => ['stages', name ?? '']);
}

function restsOfBatch(plan: BatchPlan): readonly Path[] {
  const { batch, water, feeds, tools, vessel, adjuster, target, added } = plan.needs;
  const used = [batch, water, ...feeds.map(({ feed }) => feed), vessel, ...tools, adjuster, target, ...added];
  return [...pathsOf(used), ...servedBy(plan)];
}

/** The plantings that a batch fills, with their containers. */
function servedBy({ serves }: BatchPlan): readonly Path[] {
  return serves.flatMap(({ planting }) => heldBy(planting));
}

function heldBy({ path, value }: Sourced<Planting>): readonly Path[] {
  return value.container === undefined ? [path] : [path, ['containers', value.container]];
}

function pathsOf(entries: readonly (Sourced<unknown> | undefined)[]): readonly Path[] {
  return entries.flatMap(entry => (entry === undefined ? [] : [entry.path]));
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
