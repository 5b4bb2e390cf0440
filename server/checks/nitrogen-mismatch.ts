// A label's forms of nitrogen that do not add up to its total.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const nitrogenMismatch = eachOwn('feeds', ({ name, value, path }): readonly FindingOf<'nitrogen-mismatch'>[] => {
  const total = value.analysis?.N?.value;
  const forms = Object.values(value.nitrogen ?? {}).flatMap(form => form?.value ?? []);
  if (total === undefined || forms.length === 0) return [];
  const sum = forms.reduce((sumOf, form) => sumOf + form, 0);
  if (Math.abs(sum - total) <= halfOfLastDigit * (forms.length + 1) + 1e-9) return [];
  return [
    {
      code: 'nitrogen-mismatch',
      params: { feed: name, total: percent(total), forms: percent(sum) },
      at: valueAt([...path, 'nitrogen']),
      related: [{ at: valueAt([...path, 'analysis', 'N']), says: 'the total' }],
    },
  ];
});

/** Labels state tenths of a percent: each number may be half of one off. */
const halfOfLastDigit = 0.0005;

function percent(share: number): number {
  return Math.round(share * 10_000) / 100;
}
