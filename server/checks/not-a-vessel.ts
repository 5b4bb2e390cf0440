// A batch that is mixed in a tool of which nobody knows what it holds.

import type { FindingOf, Fix } from '../../schema/findings.ts';
import { keyAt, valueAt } from '../../schema/place.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { gatheredAll } from '../plan/gather.ts';
import type { Tool } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { batchesIn, eachOf } from './each.ts';

export const notAVessel = eachOf(
  batchesIn,
  ({ scope }) => gatheredAll(scope, 'tools'),
  ({ needs }: BatchPlan, tools: readonly Sourced<Tool>[]): readonly FindingOf<'not-a-vessel'>[] => {
    const { batch, vessel } = needs;
    if (vessel === undefined || vessel.value.holds !== undefined) return [];
    const at = valueAt([...batch.path, 'mix-in']);
    const vessels = tools.filter(({ value }) => value.holds !== undefined);
    const fixes = vessels.map(
      ({ name }): Fix => ({
        title: `Mix in \`${name}\``,
        edits: [{ kind: 'replace', at, text: name }],
        sure: false,
      }),
    );
    const related = [{ at: keyAt([...vessel.path, 'holds'], vessel.file), says: 'the tool' }];
    return [{ code: 'not-a-vessel', params: { tool: vessel.name }, at, related, fixes: fixes.slice(0, 5) }];
  },
);
