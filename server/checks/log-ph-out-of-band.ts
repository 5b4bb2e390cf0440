// The last logged pH of a planting or batch, where it lies outside the band: with a cautious step back. Older readings are history.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { pHStepOf } from '../plan/readings.ts';
import { eachLastReading } from './each-last-reading.ts';

export const logPHOutOfBand = eachLastReading('pH', (reading): readonly FindingOf<'log-ph-out-of-band'>[] => {
  const { entry, index, about, target, day } = reading;
  const { pH } = entry;
  const band = target.value.pH;
  if (pH === undefined || band === undefined || (band.low <= pH && pH <= band.high)) return [];
  const step = pHStepOf(reading);
  const where = day === undefined ? 'the batch' : 'each container';
  const params = { about, pH, low: band.low, high: band.high, where, step } as const;
  const related = [{ at: valueAt([...target.path, 'pH'], target.file), says: 'the band' }];
  return [{ code: 'log-ph-out-of-band', params, at: valueAt(['log', index, 'pH']), related }];
});
