// A container's solution at one moment, and each thing that may happen to it: filled, changed, measured, topped up, drunk from.

import type { Day } from '../../schema/date.ts';
import { levelAt, volumeAt } from '../geometry/vessel.ts';
import type { LogEntry } from '../recipe/seen.ts';
import type { Anchor, DayEvent, DrawdownInputs, Learned, PlannedDay, Solution } from './forecast-day.ts';
import { concentration, drunk, emptyContainer, measured, type Nutrients, pouredAway, pouredIn } from './nutrients.ts';
import { bestPour, type TopUp } from './top-up.ts';

export interface State {
  readonly volume_L: number;
  readonly nutrients: Nutrients;
  readonly since: Anchor;
  readonly rootsHang: boolean;
  /** From the last fill, change or measured level: what was reckoned to be drunk by the bare rate, and what was poured in. */
  readonly stretch: {
    readonly from: Anchor;
    readonly reckoned_L: number;
    readonly poured: Learned['poured'];
    /** Some of it ran over the rim, so nobody knows how much stood. */
    readonly spilled: boolean;
  };
}

/** The noise of computing, far below what a ruler or a jug shows. */
export const noise_L = 1e-9;
export const noise_cm = 1e-6;

export function filled({ begin }: DrawdownInputs, volume_L: number, EC: number | undefined): State {
  const since: Anchor = { date: begin, volume_L, by: { kind: 'fill' }, factor: 1, learned: undefined };
  return {
    volume_L,
    nutrients: pouredIn(emptyContainer, EC, volume_L),
    since,
    rootsHang: false,
    stretch: { from: since, reckoned_L: 0, poured: [], spilled: false },
  };
}

/** Emptied, and filled anew to the level that keeps the air gap: roots that hang stay in air. */
export function changed({ vessel, allowed_cm }: DrawdownInputs, state: State, date: Day, batch: Solution): State {
  const volume_L = volumeAt(vessel, allowed_cm);
  const { factor, learned } = state.since;
  const since: Anchor = { date, volume_L, by: { kind: 'change' }, factor, learned };
  return {
    ...state,
    volume_L,
    nutrients: pouredIn(pouredAway(state.nutrients), batch.EC, volume_L),
    since,
    stretch: { from: since, reckoned_L: 0, poured: [], spilled: false },
  };
}

/** A log entry: a measured level and EC count more than the reckoning; a top-up of the same entry comes after them. */
export function logged(
  inputs: DrawdownInputs,
  before: State,
  date: Day,
  log: number,
  entry: LogEntry,
  events: DayEvent[],
): State {
  const { vessel } = inputs;
  let state = before;
  if (entry.level !== undefined) {
    const volume_L = volumeAt(vessel, entry.level.value);
    const learned = learn(state, volume_L, date, log);
    const since: Anchor = {
      date,
      volume_L,
      by: { kind: 'level', log },
      factor: learned?.factor ?? state.since.factor,
      learned: learned === undefined ? state.since.learned : learned.by,
    };
    state = {
      ...state,
      volume_L,
      nutrients: drunk(state.nutrients, state.volume_L - volume_L),
      since,
      stretch: { from: since, reckoned_L: 0, poured: [], spilled: false },
    };
  }
  if (entry.EC !== undefined) {
    state = { ...state, nutrients: measured(state.nutrients, entry.EC.value, state.volume_L) };
  }
  if (entry.level !== undefined || entry.EC !== undefined) {
    events.push({ kind: 'measured', log, reckoned_L: before.volume_L });
  }
  const topUp = entry['top-up'];
  const added = topUp?.volume?.value;
  if (topUp === undefined || added === undefined) return state;
  const hang = state.rootsHang || levelAt(vessel, state.volume_L) < inputs.cupLine_cm - noise_cm;
  const room_L = Math.max(0, volumeAt(vessel, inputs.allowed_cm) - state.volume_L);
  // What would run over the rim is lost.
  const volume_L = Math.min(vessel.brimful_L, state.volume_L + added);
  const since: Anchor = { ...state.since, date, volume_L, by: { kind: 'logged-top-up', log, before: state.since } };
  events.push({
    kind: 'logged-top-up',
    log,
    volume_L: added,
    level_cm: levelAt(vessel, volume_L),
    room_L: hang ? room_L : undefined,
  });
  const { stretch } = state;
  return {
    volume_L,
    nutrients: pouredIn(state.nutrients, inputs.ECof(topUp), volume_L - state.volume_L),
    since,
    rootsHang: hang,
    stretch: {
      ...stretch,
      poured: [...stretch.poured, { log, volume_L: added }],
      spilled: stretch.spilled || volume_L < state.volume_L + added,
    },
  };
}

/** What a level says of the use since the last fill, change or level; nothing where it rose, which no plant does. */
function learn(
  { stretch: { from, reckoned_L, poured, spilled } }: State,
  now_L: number,
  date: Day,
  log: number,
): { readonly factor: number; readonly by: Learned } | undefined {
  const stood = poured.reduce((sum, { volume_L }) => sum + volume_L, from.volume_L);
  const used = stood - now_L;
  if (spilled || reckoned_L <= 0 || used <= 0) return undefined;
  return { factor: used / reckoned_L, by: { from, poured, date, log } };
}

/** A recommended top-up, of what brings the EC nearest to the middle of its band. */
export function toppedUp(
  { vessel }: DrawdownInputs,
  state: State,
  day: PlannedDay,
  when: { readonly date: Day; readonly until: Day },
  after_L: number,
  events: DayEvent[],
): State {
  const added_L = after_L - state.volume_L;
  const EC = concentration(state.nutrients, state.volume_L);
  const pour = bestPour(day.pours, { EC, volume_L: state.volume_L }, added_L, day.aimEC);
  const nutrients = pouredIn(state.nutrients, pour.EC, added_L);
  const topUp: TopUp = {
    ...when,
    volume_L: added_L,
    level_cm: levelAt(vessel, after_L),
    with: pour.with,
    batch: pour.with === 'solution' ? pour.name : undefined,
    water: pour.with === 'water' ? pour.name : undefined,
    EC: concentration(nutrients, after_L),
  };
  events.push({ kind: 'top-up', topUp });
  const by = { kind: 'top-up', topUp, before: state.since } as const;
  const since: Anchor = { ...state.since, date: when.date, volume_L: after_L, by };
  return { ...state, volume_L: after_L, nutrients, since };
}

export function afterDay(state: State, use_L: number): State {
  const drinks = Math.min(state.volume_L, use_L * state.since.factor);
  return {
    ...state,
    volume_L: state.volume_L - drinks,
    nutrients: drunk(state.nutrients, drinks),
    stretch: { ...state.stretch, reckoned_L: state.stretch.reckoned_L + use_L },
  };
}
