// Something measured or topped up in a planting before it stood over its containers.

import { formatDate } from '../../schema/date.ts';
import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import type { Plan } from '../plan/plan.ts';
import type { LogEntry } from '../recipe/seen.ts';
import { wholePlan } from './each.ts';

export const logBeforeStart = wholePlan(({ scope }: Plan): readonly FindingOf<'log-before-start'>[] => {
  const { recipe } = scope;
  return recipe.log.flatMap((entry, index): readonly FindingOf<'log-before-start'>[] => {
    const { on, planting: name } = entry ?? {};
    if (entry === undefined || on === undefined || name === undefined || !isOfSolution(entry)) return [];
    const planting = recipe.sections.plantings.get(name);
    const start = planting?.transplant ?? recipe.start;
    if (planting === undefined || start === undefined || start <= on) return [];
    const at = valueAt(['log', index, 'on']);
    return [
      { code: 'log-before-start', params: { date: formatDate(on), planting: name, start: formatDate(start) }, at },
    ];
  });
});

/** A note on seedlings may be as old as it likes; a level or a pH needs a container. */
export function isOfSolution({ pH, EC, level, 'top-up': topUp }: LogEntry): boolean {
  return pH !== undefined || EC !== undefined || level !== undefined || topUp !== undefined;
}
