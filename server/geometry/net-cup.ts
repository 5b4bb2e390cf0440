// A net cup hangs from the rim into the container. What of it is below the level takes the place of solution: an upper
// bound, because mesh and wet medium hold some.

import { cone } from './cone.ts';
import type { Solid } from './solid.ts';

export interface NetCup {
  /** From the rim down to the cup's bottom. */
  readonly depth_cm: number;
  /** Outer diameter at the rim. */
  readonly top_cm: number;
  /** Outer diameter at the bottom. */
  readonly bottom_cm: number;
}

/** The cup as a solid that stands on its own bottom. */
export function netCup({ depth_cm, top_cm, bottom_cm }: NetCup): Solid {
  return cone({ kind: 'cone', top_cm, bottom_cm, height_cm: depth_cm });
}
