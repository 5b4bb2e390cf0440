// Two feeds that follow one another and would drop a solid if they met before they are diluted.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { saturationIndex } from '../chemistry/saturate.ts';
import { solve } from '../chemistry/solution.ts';
import { minerals } from '../chemistry/tables/minerals.ts';
import { addTotals, type Totals } from '../chemistry/totals.ts';
import type { DosePlan } from '../plan/batch.ts';
import { feedTotals } from '../plan/feed-totals.ts';
import { eachBatch } from './each.ts';

export const keepApart = eachBatch(({ needs, doses }): readonly FindingOf<'keep-apart'>[] => {
  const inOrder = [...doses.values()];
  const found = inOrder.flatMap((first, index): readonly FindingOf<'keep-apart'>[] => {
    const second = inOrder[index + 1];
    const makes = second === undefined ? undefined : solidOf(first, second);
    if (second === undefined || makes === undefined) return [];
    const at = keyAt([...needs.batch.path, 'feed', second.name]);
    return [{ code: 'keep-apart', params: { first: first.name, second: second.name, makes }, at }];
  });
  return found.slice(0, 1);
});

/** A salt in a cupful: grams of water that dissolve a gram. */
const cupful = 10;

/** The solid that two doses drop when they are poured together, in words; undefined where they do not. */
function solidOf(first: DosePlan, second: DosePlan): string | undefined {
  const a = undiluted(first);
  const b = undiluted(second);
  if (a === undefined || b === undefined) return undefined;
  const meets = (x: Totals, y: Totals) => (x.Ca ?? 0) > 0 && (y.SO4 ?? 0) + (y.PO4 ?? 0) > 0;
  // A bottle that holds both is made so that it keeps.
  if (meets(a.totals, a.totals) || meets(b.totals, b.totals)) return undefined;
  if (!meets(a.totals, b.totals) && !meets(b.totals, a.totals)) return undefined;
  const totals = addTotals(addTotals({}, a.totals, 1 / (a.litres + b.litres)), b.totals, 1 / (a.litres + b.litres));
  const mixed = solve({ totals, temperature_C: 20, air: 'closed' });
  const over = (['gypsum', 'brushite'] as const).find(mineral => (saturationIndex(mixed, mineral) ?? -1) > 0);
  return over === undefined ? undefined : minerals[over].title;
}

/** Moles in a whole dose, and the litres it fills before it is diluted. */
function undiluted({ feed, exact }: DosePlan): { readonly totals: Totals; readonly litres: number } | undefined {
  if (feed === undefined || exact.kind === 'unknown') return undefined;
  const { perGram, kind } = feedTotals(feed);
  const { dimension, value } = exact.quantity;
  if (kind === 'nothing' || value <= 0) return undefined;
  if (dimension === 'mass') return { totals: addTotals({}, perGram, value), litres: (value * cupful) / 1000 };
  const density = feed.value.density;
  if (density === undefined) return undefined;
  return { totals: addTotals({}, perGram, (value * density.value) / 1000), litres: value };
}
