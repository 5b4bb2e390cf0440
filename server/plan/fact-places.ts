// The written places that facts rest on, by what they are about: where a review looks for why a fact changed.

import type { Path } from '../../schema/place.ts';
import type { Planting } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { BatchPlan } from './batch.ts';
import type { Plan } from './plan.ts';

/** What a planting's first day and the order of its stages are written by. */
export function datesOf(plan: Plan, { path, value }: Sourced<Planting>): readonly Path[] {
  const start: readonly Path[] =
    value.transplant === undefined && plan.scope.recipe.start !== undefined ? [['start']] : [];
  return [...start, [...path, 'transplant'], [...path, 'stages']];
}

export function stagesOf(stages: readonly (string | undefined)[] | undefined): readonly Path[] {
  return (stages ?? []).map(name => ['stages', name ?? '']);
}

export function restsOfBatch(plan: BatchPlan): readonly Path[] {
  const { batch, water, feeds, tools, vessel, adjuster, target, added } = plan.needs;
  const used = [batch, water, ...feeds.map(({ feed }) => feed), vessel, ...tools, adjuster, target, ...added];
  return [...pathsOf(used), ...servedBy(plan)];
}

/** The plantings that a batch fills, with their containers. */
export function servedBy({ serves }: BatchPlan): readonly Path[] {
  return serves.flatMap(({ planting, stage }) => [...heldBy(planting), [...stage.path, 'batch']]);
}

export function heldBy({ path, value }: Sourced<Planting>): readonly Path[] {
  return value.container === undefined ? [path] : [path, ['containers', value.container]];
}

export function pathsOf(entries: readonly (Sourced<unknown> | undefined)[]): readonly Path[] {
  return entries.flatMap(entry => (entry === undefined ? [] : [entry.path]));
}
