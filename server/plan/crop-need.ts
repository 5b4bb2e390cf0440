// What a crop drinks in a container by what is published of it, whatever rate the recipe writes: a tomato in a small vessel is told so.

import type { Planting } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type CropKey, cropNamed, cropRow, shareOfLife } from './crops.ts';
import { assumed, type Figure, formula } from './figure.ts';
import { lifeOf, lifeUse, plantsOf, type UseBound } from './use-rate.ts';

export interface CropNeed {
  readonly crop: CropKey;
  /** Of all plants of one container, over the days of the planting. */
  readonly low: Figure<'volume'>;
  readonly high: Figure<'volume'>;
}

/** Undefined for a crop of which nothing is published here. `days` are those of all stages; a whole life where they are not known. */
export function cropNeedOf(planting: Sourced<Planting>, days: number | undefined): CropNeed | undefined {
  const crop = cropNamed(planting.value.crop);
  if (crop === undefined) return undefined;
  const plants = plantsOf(planting);
  const value = days === undefined ? 1 : Math.min(1, days / lifeOf(crop, days));
  const part = assumed({ dimension: 'fraction', value }, 'the part of its life that is planned', cropRow(crop).source);
  const of = (bound: UseBound) => cropNeed({ life: lifeUse(crop, bound), plants, part }, crop);
  return { crop, low: of('low'), high: of('high') };
}

export const cropNeed = formula({
  id: 'crop-need',
  says: 'what the plants of one container drink in the days that are planned, by what is published',
  statement: 'need = life’s use × plants × share drunk in this part of a life',
  source: 'common-practice',
  takes: { life: 'volume', plants: 'number', part: 'fraction' },
  gives: 'volume',
  evaluate: ({ life, plants, part }, crop: CropKey) => life * plants * shareOfLife(cropRow(crop), 0, part),
});
