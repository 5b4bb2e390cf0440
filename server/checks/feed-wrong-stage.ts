// A feed in a batch for a stage that the feed is not meant for.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt, valueAt } from '../../schema/place.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { gatheredAll, stagesByBatch } from '../plan/gather.ts';
import { foundInEach } from '../plan/made-of-each.ts';
import type { Stage } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { batchesIn, eachOf } from './each.ts';

export const feedWrongStage = eachOf(
  plan => choosy(batchesIn(plan)),
  ({ scope }) => stagesByBatch(gatheredAll(scope, 'stages')),
  (
    { needs, doses }: BatchPlan,
    stages: ReadonlyMap<string, readonly Sourced<Stage>[]>,
  ): readonly FindingOf<'feed-wrong-stage'>[] => {
    const found: FindingOf<'feed-wrong-stage'>[] = [];
    for (const { name, feed } of doses.values()) {
      if (feed?.value.for === undefined) continue;
      const meant = feed.value.for.flatMap(stage => stage ?? []);
      if (meant.length === 0) continue;
      for (const { name: stage } of stages.get(needs.batch.name) ?? []) {
        if (meant.includes(stage)) continue;
        found.push({
          code: 'feed-wrong-stage',
          params: { feed: name, stage, meant },
          at: keyAt([...needs.batch.path, 'feed', name]),
          related: [{ at: valueAt([...feed.path, 'for'], feed.file), says: 'the stages it is meant for' }],
        });
      }
    }
    return found;
  },
);

/** The batches with a feed that is not meant for every stage. */
const choosy = foundInEach((batch: BatchPlan): readonly BatchPlan[] =>
  batch.needs.feeds.some(({ feed }) => feed?.value.for !== undefined) ? [batch] : [],
);
