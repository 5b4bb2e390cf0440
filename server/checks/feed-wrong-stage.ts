// A feed in a batch for a stage that the feed is not meant for.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt, valueAt } from '../../schema/place.ts';
import { stagesFedBy } from '../plan/gather.ts';
import type { Plan } from '../plan/plan.ts';
import { wholePlan } from './each.ts';

export const feedWrongStage = wholePlan(({ batches, scope }: Plan): readonly FindingOf<'feed-wrong-stage'>[] => {
  const found: FindingOf<'feed-wrong-stage'>[] = [];
  for (const { needs, doses } of batches.values()) {
    for (const { name, feed } of doses.values()) {
      if (feed?.value.for === undefined) continue;
      const meant = feed.value.for.flatMap(stage => stage ?? []);
      if (meant.length === 0) continue;
      for (const { name: stage } of stagesFedBy(scope, needs.batch.name)) {
        if (meant.includes(stage)) continue;
        found.push({
          code: 'feed-wrong-stage',
          params: { feed: name, stage, meant },
          at: keyAt([...needs.batch.path, 'feed', name]),
          related: [{ at: valueAt([...feed.path, 'for'], feed.file), says: 'the stages it is meant for' }],
        });
      }
    }
  }
  return found;
});
