// A pH to aim at that its own band does not hold: of a target, or of a batch's adjustment.

import type { FindingOf } from '../../schema/findings.ts';
import { type Place, valueAt } from '../../schema/place.ts';
import type { Target } from '../recipe/seen.ts';
import { eachBatch, eachOwn, together } from './each.ts';

const targets = eachOwn('targets', ({ name, value, path }) =>
  outside(value['pH-aim'], name, value, valueAt([...path, 'pH-aim'])),
);

const adjustments = eachBatch(({ needs: { batch, target } }) =>
  target === undefined
    ? []
    : outside(batch.value.adjust?.to, target.name, target.value, valueAt([...batch.path, 'adjust', 'to'])),
);

export const aimOutOfBand = together(targets, adjustments);

function outside(
  aim: number | undefined,
  name: string,
  { pH: band }: Target,
  at: Place,
): readonly FindingOf<'aim-out-of-band'>[] {
  if (aim === undefined || band === undefined || (band.low <= aim && aim <= band.high)) return [];
  return [{ code: 'aim-out-of-band', params: { aim, target: name, low: band.low, high: band.high }, at }];
}
