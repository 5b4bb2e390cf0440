// The bench sheet: what to do for one batch, or on one day with all that is mixed on it, as pages to print.

import type { Day } from '../../schema/date.ts';
import { seasonOf } from '../plan/season.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Page } from './print/page.ts';
import { batchPage } from './sheet/batch.ts';
import { dayPage } from './sheet/day.ts';

/** What a sheet is for. */
export type SheetAsked =
  | { readonly kind: 'batch'; readonly name: string }
  | { readonly kind: 'day'; readonly date: Day };

/** The pages of a sheet; undefined where the recipe has no such batch. A day's page is followed by one for each batch mixed. */
export function sheet(snapshot: Snapshot, asked: SheetAsked): readonly Page[] | undefined {
  const { plan } = snapshot;
  if (asked.kind === 'batch') {
    const batch = plan.batches.get(asked.name);
    return batch === undefined ? undefined : [batchPage(snapshot, batch)];
  }
  const mixed = seasonOf(plan).tasks.flatMap(({ kind, date, about }) =>
    kind === 'mix' && date === asked.date ? (plan.batches.get(about) ?? []) : [],
  );
  return [dayPage(snapshot, asked.date), ...mixed.map(batch => batchPage(snapshot, batch))];
}

/** The batch that is to be mixed next, with its day; where nothing is to come, the last that was; else the first written. */
export function dueBatch(
  { plan }: Snapshot,
  today: Day,
): { readonly name: string; readonly on: Day | undefined } | undefined {
  const mixes = seasonOf(plan).tasks.filter(({ kind }) => kind === 'mix');
  const due = mixes.find(({ date }) => today <= date) ?? mixes.at(-1);
  if (due !== undefined) return { name: due.about, on: due.date };
  const [first] = plan.batches.keys();
  return first === undefined ? undefined : { name: first, on: undefined };
}
