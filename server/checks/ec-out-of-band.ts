// An EC outside the target's band, as measured or, where nothing was measured, as computed; with what would bring it back.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt, type Place, valueAt } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { numberOf } from '../plan/figure.ts';
import { mixtureOf } from '../plan/mixture.ts';
import { planWaterFor } from '../plan/water.ts';
import { eachBatch } from './each.ts';

/** A computed EC counts as outside only beyond its error: of salts weighed out, and where labels leave ions open. */
const error = { known: 0.03, estimated: 0.1 } as const;

export const ecOutOfBand = eachBatch((batch): readonly FindingOf<'ec-out-of-band'>[] => {
  const { target, batch: source } = batch.needs;
  const band = target?.value.EC;
  const found = band === undefined ? undefined : ecOf(batch);
  if (target === undefined || band === undefined || found === undefined) return [];
  const { value, slack, measured, at } = found;
  if (band.low * (1 - slack) <= value && value <= band.high * (1 + slack)) return [];
  const EC = (of: number): Quantity<'conductivity'> => ({ dimension: 'conductivity', value: of });
  const remedy = remedyOf(batch, value, band);
  const params = {
    batch: source.name,
    EC: EC(Number(value.toFixed(2))),
    low: EC(band.low),
    high: EC(band.high),
    target: target.name,
    measured,
    ...(remedy === undefined ? {} : { remedy }),
  };
  return [{ code: 'ec-out-of-band', params, at }];
});

interface FoundEC {
  readonly value: number;
  readonly slack: number;
  readonly measured: boolean;
  readonly at: Place;
}

function ecOf(batch: BatchPlan): FoundEC | undefined {
  const { path, value } = batch.needs.batch;
  const readings = value.readings ?? [];
  const last = readings.findLastIndex(reading => reading?.EC !== undefined);
  const measured = readings[last]?.EC;
  if (measured !== undefined) {
    return { value: measured.value, slack: 1e-9, measured: true, at: valueAt([...path, 'readings', last, 'EC']) };
  }
  const { predicted, solved } = mixtureOf(batch);
  const computed = numberOf(predicted.EC);
  if (batch.doses.size === 0 || computed === undefined || solved.kind === 'unknown') return undefined;
  const slack = solved.estimated ? error.estimated : error.known;
  return { value: computed, slack, measured: false, at: keyAt([...path, 'feed']) };
}

function remedyOf(batch: BatchPlan, EC: number, band: { readonly low: number; readonly high: number }) {
  const { water } = batch.needs;
  const plain = water === undefined ? undefined : numberOf(planWaterFor(water, batch.needs.batch).figures.EC);
  const volume = numberOf(batch.volume);
  if (plain === undefined || volume === undefined || batch.doses.size === 0) return undefined;
  if (EC > band.high) {
    if (plain >= band.high) return undefined;
    const add = Number(((volume * (EC - band.high)) / (band.high - plain)).toPrecision(2));
    return { kind: 'water', add: { dimension: 'volume', value: add } } as const;
  }
  if (EC <= plain) return undefined;
  return { kind: 'feed', percent: Math.ceil(100 * ((band.low - plain) / (EC - plain) - 1)) } as const;
}
