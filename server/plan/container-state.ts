// A container's solution at one moment, and each thing that may happen to it: filled, changed, measured, topped up, drunk from. The
// state changes in place, so that a day in which nothing happens costs next to nothing.

import type { Day } from '../../schema/date.ts';
import { levelAt, volumeAt } from '../geometry/vessel.ts';
import type { LogEntry } from '../recipe/seen.ts';
import type { Anchor, DayEvent, DrawdownInputs, Learned, PlannedDay, Solution } from './forecast-day.ts';
import { concentration, correct, type Nutrients, noNutrients, pourAway, pourIn, takeUp } from './nutrients.ts';
import { bestPour, type TopUp } from './top-up.ts';

export interface State {
  volume_L: number;
  readonly nutrients: Nutrients;
  since: Anchor;
  rootsHang: boolean;
  stretch: Stretch;
}

/** From the last fill, change or measured level: what was reckoned to be drunk by the bare rate, and what was poured in. */
interface Stretch {
  readonly from: Anchor;
  reckoned_L: number;
  poured: Learned['poured'];
  /** Some of it ran over the rim, so nobody knows how much stood. */
  spilled: boolean;
}

/** The noise of computing, far below what a ruler or a jug shows. */
export const noise_L = 1e-9;
export const noise_cm = 1e-6;

export function filled({ begin }: DrawdownInputs, volume_L: number, EC: number | undefined): State {
  const since: Anchor = { date: begin, volume_L, by: { kind: 'fill' }, factor: 1, learned: undefined };
  const nutrients = noNutrients();
  pourIn(nutrients, EC, volume_L);
  return { volume_L, nutrients, since, rootsHang: false, stretch: stretchFrom(since) };
}

function stretchFrom(from: Anchor): Stretch {
  return { from, reckoned_L: 0, poured: [], spilled: false };
}

/** From here on volumes are reckoned anew. */
function anchor(state: State, since: Anchor): void {
  state.volume_L = since.volume_L;
  state.since = since;
  state.stretch = stretchFrom(since);
}

/** Empties it, and fills it anew to the level that keeps the air gap: roots that hang stay in air. */
export function change({ vessel, allowed_cm }: DrawdownInputs, state: State, date: Day, batch: Solution): void {
  const volume_L = volumeAt(vessel, allowed_cm);
  const { factor, learned } = state.since;
  anchor(state, { date, volume_L, by: { kind: 'change' }, factor, learned });
  pourAway(state.nutrients);
  pourIn(state.nutrients, batch.EC, volume_L);
}

/** A log entry: a measured level and EC count more than the reckoning; a top-up of the same entry comes after them. */
export function takeLogged(
  inputs: DrawdownInputs,
  state: State,
  date: Day,
  log: number,
  entry: LogEntry,
  events: DayEvent[],
): void {
  const reckoned_L = state.volume_L;
  if (entry.level !== undefined) {
    const volume_L = volumeAt(inputs.vessel, entry.level.value);
    const { factor, learned } = learn(state, volume_L, date, log) ?? state.since;
    takeUp(state.nutrients, reckoned_L - volume_L);
    anchor(state, { date, volume_L, by: { kind: 'level', log }, factor, learned });
  }
  if (entry.EC !== undefined) correct(state.nutrients, entry.EC.value, state.volume_L);
  if (entry.level !== undefined || entry.EC !== undefined) events.push({ kind: 'measured', log, reckoned_L });
  const topUp = entry['top-up'];
  const added = topUp?.volume?.value;
  if (topUp === undefined || added === undefined) return;
  events.push(pourLogged(inputs, state, date, log, added, inputs.ECof(topUp)));
}

function pourLogged(
  { vessel, cupLine_cm, allowed_cm }: DrawdownInputs,
  state: State,
  date: Day,
  log: number,
  added_L: number,
  EC: number | undefined,
): DayEvent {
  const { since, stretch } = state;
  const room_L = Math.max(0, volumeAt(vessel, allowed_cm) - state.volume_L);
  state.rootsHang ||= levelAt(vessel, state.volume_L) < cupLine_cm - noise_cm;
  // What would run over the rim is lost.
  const volume_L = Math.min(vessel.brimful_L, state.volume_L + added_L);
  stretch.spilled ||= volume_L < state.volume_L + added_L;
  stretch.poured = [...stretch.poured, { log, volume_L: added_L }];
  pourIn(state.nutrients, EC, volume_L - state.volume_L);
  state.volume_L = volume_L;
  state.since = { ...since, date, volume_L, by: { kind: 'logged-top-up', log, before: since } };
  return {
    kind: 'logged-top-up',
    log,
    volume_L: added_L,
    level_cm: levelAt(vessel, volume_L),
    room_L: state.rootsHang ? room_L : undefined,
  };
}

/** What a level says of the use since the last fill, change or level; nothing where it rose, which no plant does. */
function learn(
  { stretch: { from, reckoned_L, poured, spilled } }: State,
  now_L: number,
  date: Day,
  log: number,
): Pick<Anchor, 'factor' | 'learned'> | undefined {
  const stood = poured.reduce((sum, { volume_L }) => sum + volume_L, from.volume_L);
  const used = stood - now_L;
  if (spilled || reckoned_L <= 0 || used <= 0) return undefined;
  return { factor: used / reckoned_L, learned: { from, poured, date, log } };
}

/** A recommended top-up, of what brings the EC nearest to the middle of its band. */
export function topUp(
  { vessel }: DrawdownInputs,
  state: State,
  day: PlannedDay,
  when: { readonly date: Day; readonly until: Day },
  after_L: number,
): DayEvent {
  const { nutrients, since } = state;
  const added_L = after_L - state.volume_L;
  const pour = bestPour(
    day.pours,
    { EC: concentration(nutrients, state.volume_L), volume_L: state.volume_L },
    added_L,
    day.aimEC,
  );
  pourIn(nutrients, pour.EC, added_L);
  const made: TopUp = {
    ...when,
    volume_L: added_L,
    level_cm: levelAt(vessel, after_L),
    with: pour.with,
    batch: pour.with === 'solution' ? pour.name : undefined,
    water: pour.with === 'water' ? pour.name : undefined,
    EC: concentration(nutrients, after_L),
  };
  state.volume_L = after_L;
  state.since = { ...since, date: when.date, volume_L: after_L, by: { kind: 'top-up', topUp: made, before: since } };
  return { kind: 'top-up', topUp: made };
}

/** A day's use by the bare rate, as the levels correct it. */
export function drink(state: State, use_L: number): void {
  const drinks = Math.min(state.volume_L, use_L * state.since.factor);
  state.volume_L -= drinks;
  takeUp(state.nutrients, drinks);
  state.stretch.reckoned_L += use_L;
}
