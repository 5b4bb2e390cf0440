// The last logged EC of a planting or batch, where it lies outside the band: with what to pour. Older readings are history.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { ecStepOf } from '../plan/readings.ts';
import { eachLastReading } from './each-last-reading.ts';

export const logECOutOfBand = eachLastReading('EC', (reading): readonly FindingOf<'log-ec-out-of-band'>[] => {
  const { entry, index, about, target } = reading;
  const { EC } = entry;
  const band = target.value.EC;
  if (EC === undefined || band === undefined || (band.low <= EC.value && EC.value <= band.high)) return [];
  const end = (value: number) => ({ dimension: 'conductivity', value }) as const;
  const params = { about, EC, low: end(band.low), high: end(band.high), step: ecStepOf(reading) };
  const related = [{ at: valueAt([...target.path, 'EC'], target.file), says: 'the band' }];
  return [{ code: 'log-ec-out-of-band', params, at: valueAt(['log', index, 'EC']), related }];
});
