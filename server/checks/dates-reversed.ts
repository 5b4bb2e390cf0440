// A planting that is transplanted before it is sown.

import { formatDate } from '../../schema/date.ts';
import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const datesReversed = eachOwn('plantings', ({ name, value, path }): readonly FindingOf<'dates-reversed'>[] => {
  const { sow, transplant } = value;
  if (sow === undefined || transplant === undefined || sow <= transplant) return [];
  return [
    {
      code: 'dates-reversed',
      params: { planting: name, sow: formatDate(sow), transplant: formatDate(transplant) },
      at: valueAt([...path, 'transplant']),
      related: [{ at: valueAt([...path, 'sow']), says: 'the day of sowing' }],
    },
  ];
});
