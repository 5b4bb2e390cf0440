// An adjuster that is said to hold an acid and a base.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const acidWithBase = eachOwn('adjusters', ({ name, value, path }): readonly FindingOf<'acid-with-base'>[] => {
  if (Object.keys(value.acid ?? {}).length === 0 || Object.keys(value.base ?? {}).length === 0) return [];
  return [
    {
      code: 'acid-with-base',
      params: { adjuster: name },
      at: keyAt([...path, 'base']),
      related: [{ at: keyAt([...path, 'acid']), says: 'the acid' }],
    },
  ];
});
