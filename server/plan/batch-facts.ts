// The facts of a batch: what goes into it and how it is measured, what a litre then holds, its pH and EC, its adjustment.

import type { Path } from '../../schema/place.ts';
import { adjustmentOf, finalOf } from './adjust.ts';
import type { BatchPlan, DosePlan } from './batch.ts';
import { about, type Fact, type Put } from './fact.ts';
import { pathsOf, restsOfBatch, servedBy } from './fact-places.ts';
import { numberOf } from './figure.ts';
import { mixtureOf } from './mixture.ts';
import { hasNitrogen } from './nitrogen.ts';

export function batchFacts(batch: BatchPlan): readonly Fact[] {
  const { needs } = batch;
  const { path, value } = needs.batch;
  const put = about('batch', needs.batch.name);
  const written = (what: string, text: string | undefined, key: string): readonly Fact[] =>
    text === undefined ? [] : [put(what, { kind: 'text', text }, [[...path, key]])];
  const all = restsOfBatch(batch);
  const mixed = [
    ...pathsOf([needs.batch, needs.water, ...needs.feeds.map(({ feed }) => feed), ...needs.tools]),
    // What is made as needed rests on what needs it.
    ...(value.volume?.kind === 'as-needed' ? servedBy(batch) : []),
  ];
  const volume: readonly Path[] = [[...path, 'volume'], ...servedBy(batch)];
  const { predicted, inAir } = mixtureOf(batch);
  const forms = hasNitrogen(batch.nitrogen) ? (['nitrate', 'ammonium', 'urea'] as const) : [];
  const adjustment = adjustmentOf(batch);
  const end = finalOf(batch);
  const adjuster = adjustment?.adjuster;
  const order = batch.doses.size > 1 ? [...batch.doses.keys()].join(', ') : undefined;
  return [
    ...written('water', value.water, 'water'),
    put('volume', batch.volume, volume),
    ...written('mixed in', value['mix-in'], 'mix-in'),
    put('loads', batch.loads, [...volume, ...pathsOf([needs.vessel])]),
    ...(batch.serves.length === 0 ? [] : [put('left after its fills', batch.left, volume)]),
    ...written('order of feeds', order, 'feed'),
    ...[...batch.doses.values()].flatMap(dose => {
      const rests = [dose.at.path, ...volume, ...pathsOf([dose.feed, needs.vessel, ...needs.tools])];
      return [put(`dose of ${dose.name}`, dose.poured, rests), ...measuringFacts(put, batch, dose, rests)];
    }),
    ...[...batch.elements].map(([element, value]) => put(element, value, mixed)),
    ...forms.map(form => put(`N as ${form}`, batch.nitrogen[form], mixed)),
    put('pH as mixed', predicted.pH, mixed),
    put('pH after standing in air', inAir.pH, mixed),
    put('EC as mixed', predicted.EC, mixed),
    ...written('adjusted with', value.adjust?.with, 'adjust'),
    ...(adjustment === undefined || adjuster === undefined
      ? []
      : [
          put(`${adjuster.name} to adjust`, adjustment.exact, all, adjuster.value),
          put(`${adjuster.name}, first step`, adjustment.firstStep, all, adjuster.value),
        ]),
    ...(adjustment === undefined
      ? []
      : [
          put('pH adjusted', end.figures.pH, all),
          put('pH adjusted, after standing in air', end.inAir.pH, all),
          put('EC adjusted', end.figures.EC, all),
        ]),
  ];
}

/** What no tool measures is told by a finding. */
function measuringFacts(
  put: Put,
  { loads }: BatchPlan,
  { name, perLoad, measured }: DosePlan,
  rests: readonly Path[],
): readonly Fact[] {
  const isOfEachLoad = (numberOf(loads) ?? 1) > 1;
  if (perLoad.kind === 'unknown' || measured.kind !== 'measured') return [];
  const { dimension } = perLoad.quantity;
  return [put(`measuring of ${name}`, { kind: 'measured', measured, dimension, isOfEachLoad }, rests)];
}
