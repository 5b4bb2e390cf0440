// An ion that a water report states as such and by its element.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { ionKeys } from '../../schema/sections/water.ts';
import { ions } from '../plan/ions.ts';
import { eachOwn } from './each.ts';

export const ionTwice = eachOwn('waters', ({ value, path }): readonly FindingOf<'ion-twice'>[] =>
  ionKeys.flatMap(ion => {
    // Of the two spellings the one by element is left out of the reckoning.
    const other = ion.includes('-') ? ions[ion].sameAs : undefined;
    if (other === undefined || value.ions?.[ion] === undefined || value.ions[other] === undefined) return [];
    const at = [...path, 'ions', ion];
    const fixes = [ion, other].map(key => ({
      title: `Take out \`${key}\``,
      edits: [{ kind: 'remove', path: [...path, 'ions', key] } as const],
      sure: false,
    }));
    return [{ code: 'ion-twice' as const, params: { ion, other }, at: keyAt(at), fixes }];
  }),
);
