// More of a feed than its label says, whether written as a rate, a percent of the label or an amount for the whole batch.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import type { DosePlan } from '../plan/batch.ts';
import { numberOf } from '../plan/figure.ts';
import { eachBatch } from './each.ts';

export const labelRateExceeded = eachBatch<'label-rate-exceeded'>(({ doses, volume }) =>
  [...doses.values()].flatMap((dose): readonly FindingOf<'label-rate-exceeded'>[] => {
    const { feed, name, at } = dose;
    const label = feed?.value.label;
    const value = label === undefined ? undefined : ratePoured(dose, label.dimension, numberOf(volume));
    if (feed === undefined || label === undefined || value === undefined) return [];
    const share = value / label.value;
    if (!(label.value > 0) || share <= 1 + slack) return [];
    return [
      {
        code: 'label-rate-exceeded',
        params: { feed: name, rate: { dimension: label.dimension, value }, label, percent: percentAbove(share) },
        at,
        related: [{ at: keyAt([...feed.path, 'label'], feed.file), says: 'the label’s rate' }],
        fixes: [{ title: 'Feed at the label’s rate', edits: [{ kind: 'replace', at, text: 'label' }], sure: false }],
      },
    ];
  }),
);

/** Conversion noise, and what no measuring tool tells apart. */
const slack = 0.001;

function ratePoured(dose: DosePlan, dimension: string, volume: number | undefined): number | undefined {
  const { rate, exact } = dose;
  if (rate !== undefined) {
    return rate.kind === 'known' && rate.quantity.dimension === dimension ? rate.quantity.value : undefined;
  }
  if (exact.kind === 'unknown' || volume === undefined || !(volume > 0)) return undefined;
  const isAlike = (exact.quantity.dimension === 'volume') === (dimension === 'volume-per-volume');
  // Litres and grams for the whole batch; a rate counts millilitres or milligrams for each litre.
  return isAlike ? (exact.quantity.value * 1000) / volume : undefined;
}

/** Whole percents, but never "100 %" for what is more. */
function percentAbove(share: number): number {
  return share < 1.01 ? Math.round(share * 1000) / 10 : Math.round(share * 100);
}
