// How much the plants of a container drink: by the stage's own rate, or by what is published of the crop, as a range.

import { valueAt } from '../../schema/place.ts';
import type { Planting, Stage } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type CropKey, cropNamed, cropRow, shareOfLife } from './crops.ts';
import { assumed, type Figure, formula, given, unknown } from './figure.ts';
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
  const plants = plantsOf(planting);
  const { uses } = stage.value;
  const unread = unreadIn(stage.value, ['uses', 'light'], stage.path, stage.file);
  if (unread.length > 0) return none(unread);
  if (uses !== undefined) {
    const rate = containerUse({ uses: given(uses, valueAt([...stage.path, 'uses'], stage.file)), plants });
    return { mid: rate, low: rate, high: rate, kind: 'written' };
  }
  const crop = cropNamed(planting.value.crop);
  if (crop === undefined) {
    return none([
      { says: `what a plant drinks a day in ${stage.name}`, at: valueAt([...stage.path, 'uses'], stage.file) },
    ]);
  }
  const of = (bound: UseBound): Figure<'volume-per-time'> =>
    containerUse({ uses: publishedUse(publishedInputs(stage, crop, over, bound), crop), plants });
  return { mid: of('mid'), low: of('low'), high: of('high'), kind: 'published' };
}

function none(wants: Parameters<typeof unknown>[0]): UseRate {
  const gap = unknown(wants);
  return { mid: gap, low: gap, high: gap, kind: 'unknown' };
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
  const { life_L, usual_L, because, source } = cropRow(crop);
  const [low, high] = life_L;
  const value = bound === 'low' ? low : bound === 'high' ? high : usual_L;
  return assumed({ dimension: 'volume', value }, `what a plant of ${crop} drinks in its life: ${because}`, source);
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
  evaluate: ({ life, light, from, to, days }, crop: CropKey) => {
    const row = cropRow(crop);
    const share = shareOfLife(row, from / days, to / days);
    // A use rate counts mL a day.
    return ((life * 1000 * share) / (to - from)) * (light / row.light);
  },
});
