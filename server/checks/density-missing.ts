// An adjuster that can only be a liquid and does not say its density.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { compositionOf, liquidOf } from '../plan/reagent.ts';
import { eachOwn } from './each.ts';

export const densityMissing = eachOwn('adjusters', ({ name, value, path }): readonly FindingOf<'density-missing'>[] => {
  // A density that is written and cannot be read has a finding of its own.
  if (Object.hasOwn(value, 'density')) return [];
  const liquid = liquidOf(compositionOf(value));
  if (liquid === undefined) return [];
  const kind = value.acid === undefined ? 'base' : 'acid';
  const [substance = ''] = Object.keys(value[kind] ?? {});
  return [{ code: 'density-missing', params: { adjuster: name, liquid }, at: valueAt([...path, kind, substance]) }];
});
