// A label whose nitrogen is not split into forms, where the pH or EC of a batch rests on it.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { sharesOf } from '../plan/elements.ts';
import { feedTotals } from '../plan/feed-totals.ts';
import { numberOf } from '../plan/figure.ts';
import { memo } from '../plan/memo.ts';
import type { Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { wholePlan } from './each.ts';

export const nitrogenUnsplit = wholePlan((plan): readonly FindingOf<'nitrogen-unsplit'>[] => {
  const used = new Set<Sourced<Feed>>();
  for (const { needs } of plan.batches.values()) {
    const isReckoned = needs.batch.value.adjust !== undefined || needs.target?.value.pH !== undefined;
    if (!isReckoned) continue;
    for (const { feed } of needs.feeds) if (feed !== undefined && feed.file === undefined) used.add(feed);
  }
  return [...used].flatMap(feed => ofFeed(feed));
});

const ofFeed = memo((feed: Sourced<Feed>): readonly FindingOf<'nitrogen-unsplit'>[] => {
  // Forms that are stated and do not add up are `nitrogen-mismatch`.
  if (feed.value.nitrogen !== undefined || !feedTotals(feed).nitrogenUnsplit) return [];
  const value = numberOf(sharesOf(feed).get('N')) ?? 0;
  const params = { feed: feed.name, share: { dimension: 'fraction', value } } as const;
  return [{ code: 'nitrogen-unsplit', params, at: valueAt([...feed.path, 'analysis', 'N']) }];
});
