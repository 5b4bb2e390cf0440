// Something measured or topped up in a planting before it stood over its containers.

import { type Day, formatDate } from '../../schema/date.ts';
import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { type Logged, loggedIn } from '../plan/logged.ts';
import { memo } from '../plan/memo.ts';
import type { LogEntry, Planting } from '../recipe/seen.ts';
import { eachOf } from './each.ts';

export const logBeforeStart = eachOf(
  ({ scope }) => loggedIn(scope.recipe.log),
  ({ scope }) => startsOf(scope.recipe.sections.plantings, scope.recipe.start),
  ({ index, entry }: Logged, starts: ReadonlyMap<string, Day>): readonly FindingOf<'log-before-start'>[] => {
    const { on, planting } = entry;
    const start = starts.get(planting ?? '');
    if (on === undefined || planting === undefined || start === undefined || !isOfSolution(entry)) return [];
    if (start <= on) return [];
    const params = { date: formatDate(on), planting, start: formatDate(start) };
    return [{ code: 'log-before-start', params, at: valueAt(['log', index, 'on']) }];
  },
);

/** The days on which plantings go over their containers, where they are written. */
const startsOf = memo((plantings: ReadonlyMap<string, Planting>, start: Day | undefined): ReadonlyMap<string, Day> => {
  const starts = new Map<string, Day>();
  for (const [name, { transplant = start }] of plantings) if (transplant !== undefined) starts.set(name, transplant);
  return starts;
});

/** A note on seedlings may be as old as it likes; a level or a pH needs a container. */
export function isOfSolution({ pH, EC, level, 'top-up': topUp }: LogEntry): boolean {
  return pH !== undefined || EC !== undefined || level !== undefined || topUp !== undefined;
}
