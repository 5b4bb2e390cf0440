// A container's solution from day to day: what the plants drink, what is topped up or changed, what was measured. Plain numbers;
// `day-figures.ts` explains them.

import { addDays, type Day } from '../../schema/date.ts';
import { levelAt, volumeAt } from '../geometry/vessel.ts';
import { change, drink, filled, noise_cm, noise_L, takeLogged, topUp } from './container-state.ts';
import type { DayEvent, DrawdownInputs, ForecastDay, PlannedDay } from './forecast-day.ts';
import { concentration, type Nutrients, noNutrients } from './nutrients.ts';
import { volumeAfterTopUp } from './top-up.ts';

export interface Course {
  readonly days: readonly ForecastDay[];
  /** The first morning that would stand too low without the top-ups that are recommended. */
  readonly runsLow: Day | undefined;
  readonly nutrients: Readonly<Nutrients>;
}

/** Goes through the days; with `topUps`, those that the forecast recommends are poured. */
export function drawDown(inputs: DrawdownInputs, topUps: boolean): Course {
  const { begin, days, vessel, start_L } = inputs;
  const [first] = days;
  const last = days[days.length - 1];
  if (first === undefined || last === undefined) return { days: [], runsLow: undefined, nutrients: noNutrients() };
  const low_L = volumeAt(vessel, inputs.low_cm);
  const lastLogged = inputs.log.reduce(
    (latest, { entry }) => Math.max(latest, entry.on ?? latest),
    Number.NEGATIVE_INFINITY,
  );
  const course: ForecastDay[] = [];
  const state = filled(inputs, start_L, first.batch?.EC);
  let runsLow: Day | undefined;
  for (let age = 0; age <= days.length; age++) {
    const date = addDays(begin, age);
    const day = days[age] ?? last;
    const events: DayEvent[] = [];
    if (age === 0) events.push({ kind: 'fill', batch: first.batch?.name, volume_L: start_L });
    else if (age < days.length && day.batch !== undefined && day.batch.name !== batchBefore(days, age)) {
      change(inputs, state, date, day.batch);
      events.push({ kind: 'change', batch: day.batch.name, volume_L: state.volume_L });
    }
    for (const { index, entry } of inputs.log) {
      if (entry.on === date) takeLogged(inputs, state, date, index, entry, events);
    }
    const drinks = day.use_L * state.since.factor;
    // At harvest it may stand lower, as long as the last day does not empty it.
    const least_L = age === days.length - 1 ? 0 : low_L;
    if (age < days.length && state.volume_L - drinks < least_L - noise_L) {
      runsLow ??= addDays(date, 1);
      // A day that the log already covers is past: what was not poured then is not advised now.
      if (topUps && date > lastLogged) {
        const end = nextChange(days, age);
        const until_L = days.slice(age, end).reduce((sum, { use_L }) => sum + use_L * state.since.factor, 0);
        const after_L = volumeAfterTopUp(volumeAt(vessel, inputs.allowed_cm), low_L, until_L);
        const when = { date, until: addDays(begin, end) };
        if (after_L - drinks >= low_L) events.push(topUp(inputs, state, day, when, after_L));
      }
    }
    const level_cm = levelAt(vessel, state.volume_L);
    state.rootsHang ||= level_cm < inputs.cupLine_cm - noise_cm;
    course.push({
      date,
      stage: day.stage,
      volume_L: state.volume_L,
      level_cm,
      airGap_cm: Math.max(0, inputs.cupLine_cm - level_cm),
      EC: concentration(state.nutrients, state.volume_L),
      rootsHang: state.rootsHang,
      events,
      since: state.since,
    });
    if (age < days.length) drink(state, day.use_L);
  }
  return { days: course, runsLow, nutrients: state.nutrients };
}

/** The number of the day on which the next change of feed is due, or of the one after the last. */
function nextChange(days: readonly PlannedDay[], age: number): number {
  const name = days[age]?.batch?.name;
  const next = days.findIndex(({ batch }, index) => index > age && batch !== undefined && batch.name !== name);
  return next === -1 ? days.length : next;
}

/** The last batch that a stage named before a day: a stage without one goes on with what is there. */
function batchBefore(days: readonly PlannedDay[], age: number): string | undefined {
  for (let at = age - 1; at >= 0; at--) {
    const name = days[at]?.batch?.name;
    if (name !== undefined) return name;
  }
  return undefined;
}
