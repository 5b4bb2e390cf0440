// A log entry that stands behind a later one.

import { type Day, formatDate } from '../../schema/date.ts';
import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { memo } from '../plan/memo.ts';
import type { Plan } from '../plan/plan.ts';
import type { Recipe } from '../recipe/recipe.ts';
import { wholePlan } from './each.ts';

export const readingOutOfOrder = wholePlan(({ scope }: Plan): readonly FindingOf<'reading-out-of-order'>[] => {
  return inLog(scope.recipe.log);
});

const inLog = memo((log: Recipe['log']): readonly FindingOf<'reading-out-of-order'>[] => {
  const found: FindingOf<'reading-out-of-order'>[] = [];
  let latest: { readonly on: Day; readonly index: number } | undefined;
  for (const [index, entry] of log.entries()) {
    const on = entry?.on;
    if (on === undefined) continue;
    if (latest === undefined || latest.on <= on) {
      latest = { on, index };
      continue;
    }
    found.push({
      code: 'reading-out-of-order',
      params: { date: formatDate(on), before: formatDate(latest.on) },
      at: valueAt(['log', index, 'on']),
      related: [{ at: valueAt(['log', latest.index, 'on']), says: 'the later entry' }],
    });
  }
  return found;
});
