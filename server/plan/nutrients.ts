// The nutrients of one container, counted as EC × volume, in a balance that closes: what went in, and by what measured ECs corrected
// it, is in the solution, taken up or poured away.

import { uptakeEC } from './uptake.ts';

/** In mS/cm × L. `in + corrected = (solution or 0) + takenUp + pouredAway`. */
export interface Nutrients {
  /** In the solution now; undefined while nobody can tell. */
  readonly solution: number | undefined;
  readonly in: number;
  readonly takenUp: number;
  readonly pouredAway: number;
  /** By how much measured ECs moved the reckoning, up or down. */
  readonly corrected: number;
}

export const emptyContainer: Nutrients = { solution: 0, in: 0, takenUp: 0, pouredAway: 0, corrected: 0 };

/** Solution or water of an EC poured in; where its EC is not known, neither is that of the whole from then on. */
export function pouredIn(now: Nutrients, EC: number | undefined, volume_L: number): Nutrients {
  if (now.solution === undefined) return now;
  if (EC === undefined) return { ...now, corrected: now.corrected - now.solution, solution: undefined };
  const more = EC * volume_L;
  return { ...now, solution: now.solution + more, in: now.in + more };
}

/** The container emptied. */
export function pouredAway(now: Nutrients): Nutrients {
  return { ...now, pouredAway: now.pouredAway + (now.solution ?? 0), solution: 0 };
}

/** What goes with a volume drunk, never more than there is. A volume below zero takes back what was reckoned too much. */
export function drunk(now: Nutrients, volume_L: number): Nutrients {
  if (now.solution === undefined) return now;
  const asked = uptakeEC.mid * volume_L;
  const taken = asked < 0 ? Math.max(-now.takenUp, asked) : Math.min(now.solution, asked);
  return { ...now, solution: now.solution - taken, takenUp: now.takenUp + taken };
}

/** A measured EC counts more than the reckoning. */
export function measured(now: Nutrients, EC: number, volume_L: number): Nutrients {
  const solution = EC * volume_L;
  return { ...now, solution, corrected: now.corrected + solution - (now.solution ?? 0) };
}

export function concentration({ solution }: Nutrients, volume_L: number): number | undefined {
  return solution === undefined || volume_L <= 0 ? undefined : solution / volume_L;
}
