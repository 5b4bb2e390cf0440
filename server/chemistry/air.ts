// Where a solution ends when it stands open: CO2 leaves or enters until it is in balance with the air above.

import { logActivity } from './saturate.ts';
import type { Air, Solution } from './solution.ts';
import { poolFor, solve } from './solution.ts';
import { fillAt } from './speciate.ts';
import { gases } from './tables/gases.ts';

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

/** Whether it ends above this pH: told by the sign of its charge there, so that nothing is searched. */
export function endsAbove(solution: Solution, pH: number, air: Exclude<Air, 'closed'> = 'open'): boolean {
  const { totals, temperature_C, medium } = solution;
  return fillAt(poolFor({ totals, temperature_C, medium, air }), pH) > 0;
}

/** Whether CO2 leaves it as it stands in air. */
export function losesCO2(solution: Solution): boolean {
  return gases.CO2.pressure_atm < pressureOver(solution);
}

/** Partial pressure of CO2 with which it is in balance, atm. */
export function pressureOver(solution: Solution): number {
  const carbonate = logActivity(solution, 'CO3-2');
  return carbonate === undefined ? 0 : 10 ** (carbonate - 2 * solution.pH) / solution.medium.carbonateInAir(1);
}
