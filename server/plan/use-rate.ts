// How much the plants of a container drink: by the stage's own rate, or by what is published of the crop, as a range.

import { valueAt } from '../../schema/place.ts';
import type { Planting, Stage } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type CropKey, cropNamed, cropRow, shareOfLife } from './crops.ts';
import { assumed, type Figure, formula, given, numberOf, unknown } from './figure.ts';
import { unreadIn } from './unread.ts';

/** Over some days of a planting: the mean use of all plants of one container. */
export interface UseRate {
  /** Low and high are the same where the rate is written. */
  readonly mid: Figure<'volume-per-time'>;
  readonly low: Figure<'volume-per-time'>;
  readonly high: Figure<'volume-per-time'>;
  readonly kind: 'written' | 'published' | 'unknown';
}

export type UseBound = 'low' | 'mid' | 'high';

/** Some days in the life of a planting: since transplanting, `to` exclusive, of how many in all. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly days: number;
}

export function useRateOver(planting: Sourced<Planting>, stage: Sourced<Stage>, over: Stretch): UseRate {
  const of = (bound: UseBound) => useOver(planting, stage, over, bound);
  const mid = of('mid');
  if (mid.kind === 'unknown') return { mid, low: mid, high: mid, kind: 'unknown' };
  if (stage.value.uses !== undefined) return { mid, low: mid, high: mid, kind: 'written' };
  return { mid, low: of('low'), high: of('high'), kind: 'published' };
}

/** One bound of the mean use. */
export function useOver(
  planting: Sourced<Planting>,
  stage: Sourced<Stage>,
  over: Stretch,
  bound: UseBound,
): Figure<'volume-per-time'> {
  const plants = plantsOf(planting);
  const { uses } = stage.value;
  const unread = unreadIn(stage.value, ['uses', 'light'], stage.path, stage.file);
  if (unread.length > 0) return unknown(unread);
  const at = valueAt([...stage.path, 'uses'], stage.file);
  if (uses !== undefined) return containerUse({ uses: given(uses, at), plants });
  const crop = cropNamed(planting.value.crop);
  if (crop === undefined) return unknown([{ says: `what a plant drinks a day in ${stage.name}`, at }]);
  return containerUse({ uses: publishedUse(publishedInputs(stage, crop, over, bound), crop), plants });
}

/** The use on each day of a stretch in plain numbers, mL, for a forecast that goes through hundreds of days; 0 where unknown. */
export function usesOnDays(
  planting: Sourced<Planting>,
  { value: { uses, light } }: Sourced<Stage>,
  { from, to, days }: Stretch,
  bound: UseBound,
): readonly number[] {
  const plants = numberOf(plantsOf(planting)) ?? 0;
  const crop = cropNamed(planting.value.crop);
  return Array.from({ length: to - from }, (_, index) => {
    if (uses !== undefined) return uses.value * plants;
    if (crop === undefined) return 0;
    const day = from + index;
    const lit = light?.value ?? cropRow(crop).light;
    return useOfPlant(crop, lifeOfPlant_L(crop, bound), lit, day, day + 1, lifeOf(crop, days)) * plants;
  });
}

function publishedInputs(stage: Sourced<Stage>, crop: CropKey, over: Stretch, bound: UseBound) {
  const row = cropRow(crop);
  const { light } = stage.value;
  const day = (value: number, says: string) => assumed({ dimension: 'number', value }, says, 'tidemark-design');
  return {
    life: lifeUse(crop, bound),
    light:
      light === undefined
        ? assumed({ dimension: 'light', value: row.light }, 'the light at which it was measured', row.source)
        : given(light, valueAt([...stage.path, 'light'], stage.file)),
    from: day(over.from, 'days from transplanting to the first of these days'),
    to: day(over.to, 'days from transplanting to the last of these days'),
    days: day(lifeOf(crop, over.days), 'the days of its life over the container'),
  };
}

/** The days over which a crop drinks its life's use: those of the planting, or longer where that ends before the crop is grown. */
export function lifeOf(crop: CropKey, planned_d: number): number {
  return Math.max(planned_d, cropRow(crop).grown_d);
}

/** What one plant drinks in its life. */
export function lifeUse(crop: CropKey, bound: UseBound): Figure<'volume'> {
  const { because, source } = cropRow(crop);
  const value = lifeOfPlant_L(crop, bound);
  return assumed({ dimension: 'volume', value }, `what a plant of ${crop} drinks in its life: ${because}`, source);
}

function lifeOfPlant_L(crop: CropKey, bound: UseBound): number {
  const { life_L, usual_L } = cropRow(crop);
  return bound === 'low' ? life_L[0] : bound === 'high' ? life_L[1] : usual_L;
}

/** How many plants share a container. */
export function plantsOf(planting: Sourced<Planting>): Figure<'number'> {
  const { plants } = planting.value;
  const unread = unreadIn(planting.value, ['plants'], planting.path, planting.file);
  if (unread.length > 0) return unknown(unread);
  return plants === undefined
    ? assumed({ dimension: 'number', value: 1 }, 'one plant, where no number is written', 'tidemark-design')
    : given({ dimension: 'number', value: plants }, valueAt([...planting.path, 'plants'], planting.file));
}

export const containerUse = formula({
  id: 'container-use',
  says: 'what the plants of one container drink in a day',
  statement: 'use = use of a plant × plants',
  source: 'tidemark-design',
  takes: { uses: 'volume-per-time', plants: 'number' },
  gives: 'volume-per-time',
  evaluate: ({ uses, plants }) => uses * plants,
});

export const publishedUse = formula({
  id: 'published-use',
  says: 'what a plant drinks a day in these days, by what is published of the crop',
  statement: 'use = life’s use × share of it from day to day ÷ days between × light ÷ light of the trial',
  source: 'common-practice',
  takes: { life: 'volume', light: 'light', from: 'number', to: 'number', days: 'number' },
  gives: 'volume-per-time',
  evaluate: ({ life, light, from, to, days }, crop: CropKey) => useOfPlant(crop, life, light, from, to, days),
});

function useOfPlant(crop: CropKey, life_L: number, light: number, from: number, to: number, days: number): number {
  const row = cropRow(crop);
  const share = shareOfLife(row, from / days, to / days);
  // A use rate counts mL a day.
  return ((life_L * 1000 * share) / (to - from)) * (light / row.light);
}
