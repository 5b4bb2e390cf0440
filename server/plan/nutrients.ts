// The nutrients of one container, counted as EC × volume, in a balance that closes: what went in, and by what measured ECs corrected
// it, is in the solution, taken up or poured away. The balance changes in place, as it goes from day to day.

import { uptakeEC } from './uptake.ts';

/** In mS/cm × L. `in + corrected = (solution or 0) + takenUp + pouredAway`. */
export interface Nutrients {
  /** In the solution now; undefined while nobody can tell. */
  solution: number | undefined;
  in: number;
  takenUp: number;
  pouredAway: number;
  /** By how much measured ECs moved the reckoning, up or down. */
  corrected: number;
}

export function noNutrients(): Nutrients {
  return { solution: 0, in: 0, takenUp: 0, pouredAway: 0, corrected: 0 };
}

/** Solution or water of an EC is poured in; where its EC is not known, neither is that of the whole from then on. */
export function pourIn(now: Nutrients, EC: number | undefined, volume_L: number): void {
  if (now.solution === undefined) return;
  if (EC === undefined) {
    now.corrected -= now.solution;
    now.solution = undefined;
    return;
  }
  const more = EC * volume_L;
  now.solution += more;
  now.in += more;
}

/** The container is emptied. */
export function pourAway(now: Nutrients): void {
  now.pouredAway += now.solution ?? 0;
  now.solution = 0;
}

/** What goes with a volume drunk, never more than there is. A volume below zero takes back what was reckoned too much. */
export function takeUp(now: Nutrients, volume_L: number): void {
  if (now.solution === undefined) return;
  const asked = uptakeEC.mid * volume_L;
  const taken = asked < 0 ? Math.max(-now.takenUp, asked) : Math.min(now.solution, asked);
  now.solution -= taken;
  now.takenUp += taken;
}

/** A measured EC counts more than the reckoning. */
export function correct(now: Nutrients, EC: number, volume_L: number): void {
  const solution = EC * volume_L;
  now.corrected = now.corrected + solution - (now.solution ?? 0);
  now.solution = solution;
}

export function concentration({ solution }: Readonly<Nutrients>, volume_L: number): number | undefined {
  return solution === undefined || volume_L <= 0 ? undefined : solution / volume_L;
}
