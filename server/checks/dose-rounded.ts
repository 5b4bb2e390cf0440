// A dose that the tools on the bench change by more than can be shrugged off.

import type { FindingOf } from '../../schema/findings.ts';
import { eachBatch } from './each.ts';

export const doseRounded = eachBatch<'dose-rounded'>(({ doses }) =>
  [...doses.values()].flatMap(({ name, perLoad, measured, at }): readonly FindingOf<'dose-rounded'>[] => {
    if (measured.kind !== 'measured' || perLoad.kind === 'unknown' || !(perLoad.quantity.value > 0)) return [];
    const exact = perLoad.quantity;
    const error = measured.amount / exact.value - 1;
    if (Math.abs(error) <= worthSaying) return [];
    const params = {
      feed: name,
      exact,
      measured: { dimension: exact.dimension, value: measured.amount },
      percent: Math.round(error * 1000) / 10,
    };
    return [{ code: 'dose-rounded', params, at }];
  }),
);

/** About what a label, a spoon and the eye are wrong by anyhow (common practice). */
const worthSaying = 0.05;
