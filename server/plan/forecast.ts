// What is to be expected of a planting's containers: volume, level, air gap and EC on each day, the top-ups that the air gap allows,
// and whether one fill lasts the crop.

import { type Day, daysBetween } from '../../schema/date.ts';
import { keyAt } from '../../schema/place.ts';
import type { Vessel } from '../geometry/vessel.ts';
import type { LogEntry, Planting, Stage } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { finalOf } from './adjust.ts';
import type { BatchPlan } from './batch.ts';
import { type CropNeed, cropNeedOf } from './crop-need.ts';
import { type Course, drawDown } from './drawdown.ts';
import { numberOf, type Unknown, unknown, type Want } from './figure.ts';
import type { FillPlan } from './fill.ts';
import type { DayEvent, DrawdownInputs, ForecastDay, PlannedDay, Solution } from './forecast-day.ts';
import { lazily } from './lazy.ts';
import { memo } from './memo.ts';
import type { Nutrients } from './nutrients.ts';
import type { Pourable, TopUp } from './top-up.ts';
import { lowestLevel_cm } from './uptake.ts';
import { type UseBound, useOver, usesOnDays } from './use-rate.ts';

/** A stage of a planting with its dates; `to` is the day after its last. */
export interface DatedStage {
  readonly stage: Sourced<Stage>;
  readonly from: Day;
  readonly to: Day;
  readonly batch: BatchPlan | undefined;
}

export interface ForecastNeeds {
  readonly planting: Sourced<Planting>;
  readonly fill: FillPlan;
  readonly stages: readonly DatedStage[];
  /** Log entries of this planting, with their numbers in the log. */
  readonly log: readonly { readonly index: number; readonly entry: LogEntry }[];
  /** The batches that logged top-ups were taken from. */
  readonly pouredFrom: readonly BatchPlan[];
  /** EC of plain waters by name. */
  readonly waterEC: ReadonlyMap<string, number>;
}

export interface Forecast {
  readonly needs: ForecastNeeds;
  readonly vessel: Vessel;
  readonly days: readonly ForecastDay[];
  /** Those to come, in the order of days. */
  readonly topUps: readonly TopUp[];
  /**
   * Whether what is filled, changed and logged is enough without any top-up to come: by the use that is reckoned, and not below
   * the least that is published of the crop.
   */
  readonly lastsCrop: boolean;
  /** The first morning on which it would stand too low without top-ups to come. */
  readonly runsLow: Day | undefined;
  /** The same by the most and the least that is published; equal where the use is written. */
  readonly runsLowBetween: { readonly earliest: Day | undefined; readonly latest: Day | undefined };
  /** The days as they would be without top-ups to come. */
  readonly untouched: readonly ForecastDay[];
  /** All that happens on the days, in order. */
  readonly events: readonly DayEvent[];
  readonly balance: Readonly<Nutrients>;
  /** What the last logged levels say of the use: times the rate that is written or published. */
  readonly learnedUse: number | undefined;
  readonly isPublishedUse: boolean;
  /** What the crop drinks in these days by what is published of it. */
  readonly need: CropNeed | undefined;
  /** What is filled, changed and logged as poured in, for each container. */
  readonly given_L: number;
}

export const forecastOf = memo((needs: ForecastNeeds): Forecast | Unknown => {
  const { fill, stages } = needs;
  const [first] = stages;
  const vessel = fill.vessel?.kind === 'vessel' ? fill.vessel.vessel : undefined;
  const start_L = numberOf(fill.volume);
  const wants = wantsOf(needs);
  if (first === undefined || vessel === undefined || start_L === undefined || wants.length > 0) return unknown(wants);
  const days = stages.reduce((sum, { from, to }) => sum + daysBetween(from, to), 0);
  const run = (bound: UseBound, withTopUps: boolean): Course =>
    drawDown(inputsOf(needs, vessel, start_L, first.from, bound), withTopUps);
  const course = run('mid', true);
  const events = course.days.flatMap(day => day.events);
  const topUps = events.flatMap(event => (event.kind === 'top-up' ? [event.topUp] : []));
  const { runsLow } = course;
  const isPublishedUse = stages.some(({ stage }) => stage.value.uses === undefined);
  const need = cropNeedOf(needs.planting, days);
  const given_L = givenIn(events);
  const isEnough = given_L >= (numberOf(need?.low) ?? 0);
  return lazily<Pick<Forecast, 'untouched' | 'runsLowBetween'>, Omit<Forecast, 'untouched' | 'runsLowBetween'>>(
    {
      // Where no top-up is recommended, the course without any is the same.
      untouched: () => (topUps.length === 0 ? course : run('mid', false)).days,
      runsLowBetween: () =>
        isPublishedUse
          ? { earliest: run('high', false).runsLow, latest: run('low', false).runsLow }
          : { earliest: runsLow, latest: runsLow },
    },
    {
      needs,
      vessel,
      days: course.days,
      topUps,
      lastsCrop: runsLow === undefined && isEnough,
      runsLow,
      events,
      balance: course.nutrients,
      learnedUse: learnedIn(course),
      isPublishedUse,
      need,
      given_L,
    },
  );
});

function wantsOf({ planting, fill, stages }: ForecastNeeds): readonly Want[] {
  const wants: Want[] = [];
  if (fill.volume.kind === 'unknown') wants.push(...fill.volume.wants);
  if (fill.vessel?.kind !== 'vessel' && fill.level.kind === 'unknown') wants.push(...fill.level.wants);
  if (fill.changeLevel.kind === 'unknown') wants.push(...fill.changeLevel.wants);
  for (const { stage, from, to } of stages) {
    const use = useOver(planting, stage, { from: 0, to: 1, days: Math.max(1, daysBetween(from, to)) }, 'mid');
    if (use.kind === 'unknown') wants.push(...use.wants);
  }
  if (stages.length === 0) {
    wants.push({ says: 'stages with their lengths', at: keyAt([...planting.path, 'stages'], planting.file) });
  }
  return wants;
}

function givenIn(events: readonly DayEvent[]): number {
  return events.reduce((sum, event) => {
    const isGiven = event.kind === 'fill' || event.kind === 'change' || event.kind === 'logged-top-up';
    return isGiven ? sum + event.volume_L : sum;
  }, 0);
}

function learnedIn({ days }: Course): number | undefined {
  const since = days[days.length - 1]?.since;
  return since?.learned === undefined ? undefined : since.factor;
}

function inputsOf(needs: ForecastNeeds, vessel: Vessel, start_L: number, begin: Day, bound: UseBound): DrawdownInputs {
  const { fill, log } = needs;
  const cupLine_cm = cupLineOf(fill, vessel);
  return {
    vessel,
    start_L,
    cupLine_cm,
    allowed_cm: numberOf(fill.changeLevel) ?? cupLine_cm,
    low_cm: lowestLevel_cm,
    begin,
    days: plannedDays(needs, begin, bound),
    log,
    ECof: ({ batch, water }) =>
      water === undefined
        ? solutionOf(needs.pouredFrom.find(one => one.needs.batch.name === batch))?.EC
        : needs.waterEC.get(water),
  };
}

/** Where the net cup ends; where none hangs, the level of the fill, from which roots are left behind. */
export function cupLineOf(fill: FillPlan, vessel: Vessel): number {
  return vessel.netCups?.line_cm ?? numberOf(fill.level) ?? vessel.height_cm;
}

function plannedDays({ planting, stages, waterEC }: ForecastNeeds, begin: Day, bound: UseBound): PlannedDay[] {
  const end = stages.at(-1)?.to ?? begin;
  const days = daysBetween(begin, end);
  let last: BatchPlan | undefined;
  return stages.flatMap(({ stage, from, to, batch }): PlannedDay[] => {
    // A stage without a batch goes on with the solution before it, and is topped up with it.
    last = batch ?? last;
    const solution = solutionOf(last);
    const pours = poursOf(last, solution, waterEC);
    const band = last?.needs.target?.value.EC;
    const aimEC = band === undefined ? solution?.EC : (band.low + band.high) / 2;
    const first = daysBetween(begin, from);
    const uses = usesOnDays(planting, stage, { from: first, to: first + daysBetween(from, to), days }, bound);
    // A use rate counts mL a day.
    return uses.map(use => ({ stage: stage.name, batch: solution, use_L: use / 1000, pours, aimEC }));
  });
}

function poursOf(
  batch: BatchPlan | undefined,
  solution: Solution | undefined,
  waterEC: ForecastNeeds['waterEC'],
): PlannedDay['pours'] {
  const ofBatch: Pourable = { with: 'solution', name: solution?.name, EC: solution?.EC };
  const water = batch?.needs.water;
  if (water === undefined) return [ofBatch];
  return [ofBatch, { with: 'water', name: water.name, EC: waterEC.get(water.name) }];
}

function solutionOf(batch: BatchPlan | undefined): Solution | undefined {
  if (batch === undefined) return undefined;
  return { name: batch.needs.batch.name, EC: measuredEC(batch) ?? numberOf(finalOf(batch).figures.EC) };
}

/** The last EC that was measured on a batch, unless more feed was added after it. */
function measuredEC({ needs }: BatchPlan): number | undefined {
  const readings = needs.batch.value.readings ?? [];
  const last = readings.findLastIndex(reading => reading?.EC !== undefined);
  const isFed = readings.slice(last + 1).some(reading => [...(reading?.add?.keys() ?? [])].some(isFeed));
  return isFed ? undefined : readings[last]?.EC?.value;

  function isFeed(name: string): boolean {
    return needs.added.some(one => one.name === name && one.path[0] === 'feeds');
  }
}
