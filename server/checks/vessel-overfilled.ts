// A mixing vessel that is to be filled so full that it cannot be stirred.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const vesselOverfilled = eachOwn('tools', ({ name, value, path }): readonly FindingOf<'vessel-overfilled'>[] => {
  const { holds, fill } = value;
  if (holds === undefined || fill === undefined || fill.value <= fullest + 1e-9) return [];
  const at = valueAt([...path, 'fill']);
  return [
    {
      code: 'vessel-overfilled',
      params: { tool: name, holds, fills: { dimension: 'volume', value: holds.value * fill.value } },
      at,
      fixes: [{ title: 'Fill to 95 %', edits: [{ kind: 'replace', at, text: '95 %' }], sure: false }],
    },
  ];
});

/** The share at which stirring does not yet spill (common practice), and the one taken where none is written. */
const fullest = 0.95;
