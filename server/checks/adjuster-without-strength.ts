// An adjuster that says nothing of what is in it or of what it does.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const adjusterWithoutStrength = eachOwn(
  'adjusters',
  ({ name, value, path }): readonly FindingOf<'adjuster-without-strength'>[] => {
    const holds = Object.keys(value.acid ?? {}).length + Object.keys(value.base ?? {}).length;
    if (holds > 0 || value.response !== undefined) return [];
    return [{ code: 'adjuster-without-strength', params: { adjuster: name }, at: keyAt(path) }];
  },
);
