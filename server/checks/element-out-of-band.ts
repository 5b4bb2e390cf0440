// Elements that lie outside the bands of a batch's target, said in one finding for the batch.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { targetElements } from '../../schema/sections/target.ts';
import { standing } from '../plan/standing.ts';
import { eachBatch } from './each.ts';

export const elementOutOfBand = eachBatch((batch): readonly FindingOf<'element-out-of-band'>[] => {
  const { target, batch: source } = batch.needs;
  if (target === undefined || batch.doses.size === 0) return [];
  const elements = targetElements.flatMap(element => {
    const band = target.value[element];
    const figure = batch.elements.get(element);
    if (band === undefined || figure?.kind !== 'known' || standing(figure, band) === 'in') return [];
    const amount = (value: number) => ({ dimension: 'mass-per-volume', value }) as const;
    return [{ element, amount: figure.quantity, low: amount(band.low), high: amount(band.high) }];
  });
  if (elements.length === 0) return [];
  const params = { batch: source.name, target: target.name, elements };
  return [{ code: 'element-out-of-band', params, at: keyAt([...source.path, 'feed']) }];
});
