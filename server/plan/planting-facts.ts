// The facts of a planting: its crop and container, its fills, its stages with their days, and what the forecast expects.

import type { Planting, Stage } from '../recipe/seen.ts';
import { find, type Sourced } from '../recipe/use.ts';
import { about, amount, type Fact, type Put } from './fact.ts';
import { datesOf, heldBy, pathsOf, restsOfBatch } from './fact-places.ts';
import type { Plan } from './plan.ts';
import { isForecast, type PlantingSeason } from './season.ts';

export function plantingFacts(plan: Plan, { plan: planned, stages, forecast }: PlantingSeason): readonly Fact[] {
  const { planting, fill } = planned;
  const put = about('planting', planting.name);
  const held = heldBy(planting);
  const written = (key: 'crop' | 'container'): readonly Fact[] => {
    const text = planting.value[key];
    return text === undefined ? [] : [put(key, { kind: 'text', text }, [[...planting.path, key]])];
  };
  const facts: Fact[] = [
    ...written('crop'),
    ...written('container'),
    put('fill level', fill.level, held),
    put('fill of a container', fill.volume, held),
    put('containers', planned.containers, [planting.path]),
    put('all fills', planned.together, held),
    put('highest level to refill to', fill.changeLevel, held),
  ];
  if ('kind' in stages)
    return [...facts, ...undatedStages(plan, planting).flatMap(stage => stageFacts(put, planting, stage))];
  const dates = datesOf(plan, planting);
  stages.forEach(({ stage, from }, index) => {
    const began = [...dates, ...stages.slice(0, index).map(before => [...before.stage.path, 'lasts'])];
    facts.push(put(`${stage.name} begins`, { kind: 'date', day: from }, began), ...stageFacts(put, planting, stage));
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
  facts.push(put('top-ups to come', amount('number', topUps.length), grown));
  const end = days.at(-1);
  if (end !== undefined) {
    facts.push(put('level on the last day', amount('length', end.level_cm), grown));
    if (end.EC !== undefined) facts.push(put('EC on the last day', amount('conductivity', end.EC), grown));
  }
  const [next] = topUps;
  if (next === undefined) return facts;
  const of = next.with === 'water' ? (next.water ?? 'plain water') : (next.batch ?? 'solution');
  return [
    ...facts,
    put('next top-up', { kind: 'date', day: next.date }, grown),
    put('next top-up of a container', amount('volume', next.volume_L), grown),
    put('next top-up is of', { kind: 'text', text: of }, grown),
  ];
}

/** The stages of a planting of which no day is known. */
function undatedStages({ scope }: Plan, { value }: Sourced<Planting>): readonly Sourced<Stage>[] {
  return (value.stages ?? []).flatMap(name => (name === undefined ? [] : (find(scope, 'stages', name) ?? [])));
}

/** Which batch feeds a stage, and what it aims at. */
function stageFacts(put: Put, planting: Sourced<Planting>, { name, path, value }: Sourced<Stage>): readonly Fact[] {
  const written = (what: string, key: 'batch' | 'target'): readonly Fact[] => {
    const text = value[key];
    if (text === undefined) return [];
    return [
      put(`${name} ${what}`, { kind: 'text', text }, [
        [...path, key],
        [...planting.path, 'stages'],
      ]),
    ];
  };
  return [...written('is fed', 'batch'), ...written('aims at', 'target')];
}
