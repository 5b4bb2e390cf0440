// What is known of one container on one day, and what its days depend on: the words in which the drawdown and its readers speak.

import type { Day } from '../../schema/date.ts';
import type { Vessel } from '../geometry/vessel.ts';
import type { LogEntry } from '../recipe/seen.ts';
import type { Pourable, TopUp } from './top-up.ts';

/** All that a container's days depend on. */
export interface DrawdownInputs {
  readonly vessel: Vessel;
  readonly start_L: number;
  /** Where the net cup ends; air gaps count from here. */
  readonly cupLine_cm: number;
  /** The highest level that keeps the air gap. */
  readonly allowed_cm: number;
  /** The level below which roots lose the solution. */
  readonly low_cm: number;
  readonly begin: Day;
  /** One for each day but the last, which is the day after. */
  readonly days: readonly PlannedDay[];
  readonly log: readonly { readonly index: number; readonly entry: LogEntry }[];
  /** EC of what a logged top-up was taken from. */
  readonly ECof: (topUp: NonNullable<LogEntry['top-up']>) => number | undefined;
}

export interface PlannedDay {
  readonly stage: string;
  readonly batch: Solution | undefined;
  /** What the plants of the container drink, before anything is learned from levels. */
  readonly use_L: number;
  readonly pours: readonly [Pourable, ...Pourable[]];
  /** The middle of the EC band. */
  readonly aimEC: number | undefined;
}

export interface Solution {
  readonly name: string;
  readonly EC: number | undefined;
}

/** One container on one morning, after what is done that day. */
export interface ForecastDay {
  readonly date: Day;
  readonly stage: string;
  readonly volume_L: number;
  readonly level_cm: number;
  readonly airGap_cm: number;
  /** Where it is known. */
  readonly EC: number | undefined;
  /** Whether roots hang in air: since the first morning on which the level stood below the net cup. */
  readonly rootsHang: boolean;
  readonly events: readonly DayEvent[];
  /** What this day's volume is reckoned from. */
  readonly since: Anchor;
}

export type DayEvent =
  | { readonly kind: 'fill'; readonly batch: string | undefined; readonly volume_L: number }
  | { readonly kind: 'change'; readonly batch: string; readonly volume_L: number }
  | { readonly kind: 'measured'; readonly log: number; readonly reckoned_L: number }
  | {
      readonly kind: 'logged-top-up';
      readonly log: number;
      readonly volume_L: number;
      readonly level_cm: number;
      /** The most it could have been with the air gap kept; undefined while no roots hang. */
      readonly room_L: number | undefined;
    }
  | { readonly kind: 'top-up'; readonly topUp: TopUp };

/** A volume that later ones are reckoned from. */
export interface Anchor {
  readonly date: Day;
  readonly volume_L: number;
  readonly by:
    | { readonly kind: 'fill' }
    | { readonly kind: 'change' }
    | { readonly kind: 'level'; readonly log: number }
    | { readonly kind: 'logged-top-up'; readonly log: number; readonly before: Anchor }
    | { readonly kind: 'top-up'; readonly topUp: TopUp; readonly before: Anchor };
  /** How many times the written or published rate the plants drink from here on. */
  readonly factor: number;
  /** The level that showed the factor, where one did: what stood, what was poured in between, and what was reckoned. */
  readonly learned: Learned | undefined;
}

export interface Learned {
  readonly from: Anchor;
  readonly poured: readonly { readonly log: number; readonly volume_L: number }[];
  readonly date: Day;
  readonly log: number;
}
