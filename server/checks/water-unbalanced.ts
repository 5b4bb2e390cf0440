// A water report whose positive and negative charges do not add up, where enough of them is stated to expect it.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { eachWater } from './each-water.ts';

/** Beyond this an analysis is in doubt; reports of good laboratories close within 5 % (Standard Methods 1030 E). */
const most_percent = 10;

/** Gaps smaller than this are within the error of any kit, meq/L. */
const least_meq = 0.3;

export const waterUnbalanced = eachWater(({ water, solved }): readonly FindingOf<'water-unbalanced'>[] => {
  if (solved.kind === 'unknown' || water.value.ions === undefined) return [];
  const { gap, stated } = solved;
  // Few waters are without two cations and chloride or sulfate: a shorter list is no whole analysis.
  const isWhole = stated.cations >= 2 && stated.anions >= 1 && solved.inputs.alkalinity.length > 0;
  const meq = Math.abs(gap.charge) * 1000;
  if (!isWhole || Math.abs(gap.percent) <= most_percent || meq < least_meq) return [];
  const params = {
    water: water.name,
    gap: { dimension: 'charge-per-volume', value: meq },
    percent: Math.round(Math.abs(gap.percent)),
    missing: gap.charge > 0 ? 'anions' : 'cations',
  } as const;
  return [{ code: 'water-unbalanced', params, at: keyAt([...water.path, 'ions']) }];
});
