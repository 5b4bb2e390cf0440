// Where a solution ends when it stands open: CO2 leaves or enters until it is in balance with the air above.

import type { Air, Solution } from './solution.ts';
import { solve } from './solution.ts';

/** The solution after standing in air, its other ions unchanged. */
export function standInAir(solution: Solution, air: Exclude<Air, 'closed'> = 'open'): Solution {
  return solve({
    totals: solution.totals,
    temperature_C: solution.temperature_C,
    medium: solution.medium,
    air,
    near: solution.pH,
  });
}
