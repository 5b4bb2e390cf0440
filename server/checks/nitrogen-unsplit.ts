// A label whose nitrogen is not split into forms, where the pH or EC of a batch rests on it.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { sharesOf } from '../plan/elements.ts';
import { feedTotals } from '../plan/feed-totals.ts';
import { numberOf } from '../plan/figure.ts';
import { foundInEach } from '../plan/made-of-each.ts';
import { memo } from '../plan/memo.ts';
import type { Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { batchesIn, wholePlan } from './each.ts';

export const nitrogenUnsplit = wholePlan((plan): readonly FindingOf<'nitrogen-unsplit'>[] => {
  return [...new Set(unsplit(batchesIn(plan)))].flatMap(feed => ofFeed(feed));
});

/** The feeds in whose finding a batch is one of the reasons. */
const unsplit = foundInEach(({ needs }: BatchPlan): readonly Sourced<Feed>[] => {
  const isReckoned = needs.batch.value.adjust !== undefined || needs.target?.value.pH !== undefined;
  if (!isReckoned) return [];
  const own = needs.feeds.flatMap(({ feed }) => (feed === undefined || feed.file !== undefined ? [] : [feed]));
  return own.filter(feed => ofFeed(feed).length > 0);
});

const ofFeed = memo((feed: Sourced<Feed>): readonly FindingOf<'nitrogen-unsplit'>[] => {
  // Forms that are stated and do not add up are `nitrogen-mismatch`.
  if (feed.value.nitrogen !== undefined || !feedTotals(feed).nitrogenUnsplit) return [];
  const value = numberOf(sharesOf(feed).get('N')) ?? 0;
  const params = { feed: feed.name, share: { dimension: 'fraction', value } } as const;
  return [{ code: 'nitrogen-unsplit', params, at: valueAt([...feed.path, 'analysis', 'N']) }];
});
