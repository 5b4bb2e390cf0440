// The whole plan for programs, version 1 of its JSON: the table of contents of `plan-json/`.

import { formatDate } from '../../schema/date.ts';
import type { PlanJson } from '../../schema/plan-json.ts';
import { type Season, seasonOf } from '../plan/season.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { findingJson } from './findings/json.ts';
import { reportOf } from './findings/reported.ts';
import { batchJson } from './plan-json/batch.ts';
import { type Gaps, gapsOf, type NameFile, tidy } from './plan-json/gaps.ts';
import { containerJson, plantingJson } from './plan-json/planting.ts';
import { supplyJson } from './plan-json/supply.ts';

export function planJson(snapshot: Snapshot, nameFile: NameFile): PlanJson {
  const { plan, recipe } = snapshot;
  const gaps = gapsOf(snapshot, nameFile);
  const season = seasonOf(plan);
  const file = nameFile(snapshot.uri);
  return {
    formatVersion: 1,
    file,
    title: recipe.title ?? null,
    batches: objectOf(plan.batches, (name, batch) => batchJson(name, batch, gaps)),
    containers: objectOf(plan.containers, (name, container) => containerJson(name, container, gaps)),
    plantings: objectOf(season.plantings, (name, planting) => plantingJson(name, planting, plan, gaps)),
    tasks: tasksJson(season, gaps),
    supplies: objectOf(season.supplies, (name, supply) => supplyJson(name, supply, gaps)),
    findings: reportOf(snapshot, file).findings.map(findingJson),
    // Read last: all of the above fills it.
    unknown: [...gaps.all],
  };
}

/** The tasks of all plantings whose days are known; for others it is said what is missing. */
function tasksJson({ tasks, plantings }: Season, gaps: Gaps): PlanJson['tasks'] {
  const wants = [...plantings.values()].flatMap(({ stages }) => ('kind' in stages ? stages.wants : []));
  if (wants.length > 0) gaps.wants(['tasks'], wants);
  return tasks.map(({ date, until, what, about, kind, perContainer }) => ({
    date: formatDate(date),
    ...(until === undefined ? {} : { until: formatDate(until) }),
    what,
    about,
    kind,
    ...(perContainer === undefined ? {} : { perContainer_L: tidy(perContainer.value) }),
  }));
}

/** A map as an object whose every key is its own, `__proto__` too. */
function objectOf<V, J>(map: ReadonlyMap<string, V>, json: (name: string, value: V) => J): Record<string, J> {
  return Object.fromEntries([...map].map(([name, value]) => [name, json(name, value)]));
}
