// A salt's formula that is none, with the very letters at fault.

import type { FindingOf } from '../../schema/findings.ts';
import { formulaReasons, readCompound } from '../chemistry/compound.ts';
import { eachOwn } from './each.ts';

export const formulaInvalid = eachOwn('feeds', ({ value, path }): readonly FindingOf<'formula-invalid'>[] => {
  const { formula } = value;
  if (formula === undefined) return [];
  const compound = readCompound(formula);
  if (compound.kind === 'compound') return [];
  const { from, to, reason } = compound;
  const part = formula.slice(from, to) || formula;
  const at = { path: [...path, 'formula'], part: { kind: 'slice', from, to } } as const;
  return [{ code: 'formula-invalid', params: { part, reason: formulaReasons[reason] }, at }];
});
