// How near a solution is to dropping a solid: the saturation index, log10 of ion product over solubility product.

import { logGamma } from './activity.ts';
import type { Solution } from './solution.ts';
import type { Mineral } from './tables/minerals.ts';
import { minerals } from './tables/minerals.ts';
import { logKAt } from './tables/reactions.ts';
import type { Species } from './tables/species.ts';
import { isSpecies, species } from './tables/species.ts';

/** Above zero the solid may form, below zero it dissolves; undefined where one of its ions is not in the solution. */
export function saturationIndex(solution: Solution, mineral: Mineral): number | undefined {
  const { gives, logK } = minerals[mineral];
  let sum = -logKAt(logK, solution.medium.solvent.temperature_K);
  for (const [ion, number = 0] of Object.entries(gives)) {
    const activity = isSpecies(ion) ? logActivity(solution, ion) : undefined;
    if (activity === undefined) return undefined;
    sum += number * activity;
  }
  return sum;
}

/** log10 of a species' activity; undefined where there is none of it. */
export function logActivity(solution: Solution, key: Species): number | undefined {
  if (key === 'H+') return -solution.pH;
  const amount = solution.species[key] ?? 0;
  if (amount <= 0) return undefined;
  return Math.log10(amount) + logGamma(solution.medium.slope, solution.ionicStrength, species[key].charge);
}
