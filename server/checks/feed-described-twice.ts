// A feed that is described by an analysis and by a formula.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const feedDescribedTwice = eachOwn(
  'feeds',
  ({ name, value, path }): readonly FindingOf<'feed-described-twice'>[] => {
    if (value.formula === undefined || value.analysis === undefined) return [];
    const fixes = (['formula', 'analysis'] as const).map(key => ({
      title: `Take out the ${key}`,
      edits: [{ kind: 'remove', path: [...path, key] } as const],
      sure: false,
    }));
    return [{ code: 'feed-described-twice', params: { feed: name }, at: keyAt([...path, 'formula']), fixes }];
  },
);
