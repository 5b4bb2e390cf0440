// A top-up: how much, and with what, so that the EC comes nearest to the middle of its band.

import type { Day } from '../../schema/date.ts';

/** A top-up that the forecast recommends, for each container. */
export interface TopUp {
  readonly date: Day;
  readonly volume_L: number;
  /** The next change of feed, or the harvest: no more is poured than is drunk until then. */
  readonly until: Day;
  /** The level after it. */
  readonly level_cm: number;
  readonly with: 'solution' | 'water';
  readonly batch: string | undefined;
  /** The water that it is taken from, where it is water. */
  readonly water: string | undefined;
  /** After it, where it is known. */
  readonly EC: number | undefined;
}

/** What a container can be topped up with. */
export interface Pourable {
  readonly with: TopUp['with'];
  readonly name: string | undefined;
  readonly EC: number | undefined;
}

/** The EC after a volume is poured to another. */
export function mixedEC(EC: number, volume_L: number, added: number, added_L: number): number {
  return (EC * volume_L + added * added_L) / (volume_L + added_L);
}

/** The pourable that leaves the EC nearest to the aim; the first where nothing can be told. */
export function bestPour<P extends Pourable>(
  pours: readonly [P, ...P[]],
  now: { readonly EC: number | undefined; readonly volume_L: number },
  room_L: number,
  aim: number | undefined,
): P {
  const { EC, volume_L } = now;
  if (EC === undefined || aim === undefined) return pours[0];
  const miss = (pour: P): number =>
    pour.EC === undefined ? Number.POSITIVE_INFINITY : Math.abs(mixedEC(EC, volume_L, pour.EC, room_L) - aim);
  return pours.reduce((best, pour) => (miss(pour) < miss(best) - noise_EC ? pour : best));
}

/** Two of one EC differ by what computing leaves, mS/cm. */
const noise_EC = 1e-9;

/** The volume to pour so that the EC becomes the aim; undefined where this pourable moves it the other way or not at all. */
export function volumeToAim(EC: number, volume_L: number, added: number, aim: number): number | undefined {
  const volume = (volume_L * (aim - EC)) / (added - aim);
  return Number.isFinite(volume) && volume > 0 ? volume : undefined;
}

/** What is poured beyond what is drunk until the next change or the harvest (common practice). */
export const usualMargin = 0.1;

/** What a container should hold after a top-up: up to the air gap, and no more than it takes to the next change or harvest. */
export function volumeAfterTopUp(allowed_L: number, low_L: number, until_L: number): number {
  return Math.min(allowed_L, low_L + until_L * (1 + usualMargin));
}
