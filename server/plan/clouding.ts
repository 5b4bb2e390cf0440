// How near a solution is to clouding, in three words: a saturation index alone says little to a grower.

import { saturationIndex } from '../chemistry/saturate.ts';
import type { Solution } from '../chemistry/solution.ts';
import type { Figure } from './figure.ts';
import { type ShownMineral, type SolutionFigures, shownMinerals } from './solution.ts';

export type Nearness = 'dissolved' | 'near' | 'over';

export interface Clouding {
  readonly mineral: ShownMineral;
  readonly index: Figure<'number'>;
  readonly nearness: Exclude<Nearness, 'dissolved'>;
}

/** Indices of the reference databases differ by so much. */
const over = 0.05;

/** Constants and analyses scatter by so much; below it a solid stays dissolved (common practice in water treatment). */
const near = -0.3;

/** What of a solid's index is to be said. */
export function nearnessOf(index: Figure<'number'>): Nearness {
  if (index.kind === 'unknown') return 'dissolved';
  const { value } = index.quantity;
  return over < value ? 'over' : near < value ? 'near' : 'dissolved';
}

/** Whether one of these solids clouds a solution: in plain numbers, for most solutions stay clear and need no figures. */
export function isClouded(solution: Solution, solids: readonly ShownMineral[]): boolean {
  return solids.some(mineral => over < (saturationIndex(solution, mineral) ?? Number.NEGATIVE_INFINITY));
}

/**
 * The solids that may cloud a solution or are near to it. Hydroxyapatite is left out: nutrient solutions are over-saturated with it
 * nearly always and drop it only over weeks, so its index is for information.
 */
export function cloudingOf({ saturation }: SolutionFigures): readonly Clouding[] {
  return shownMinerals.flatMap(mineral => {
    if (mineral === 'hydroxyapatite') return [];
    const index = saturation[mineral];
    const nearness = nearnessOf(index);
    return nearness === 'dissolved' ? [] : [{ mineral, index, nearness }];
  });
}
