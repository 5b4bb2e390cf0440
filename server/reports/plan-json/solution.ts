// The chemistry of a solution for programs: pH, EC, saturation. Apart from the batch, because a batch has it twice, as predicted and
// after the adjustment, and a water has it too.

import type { PlanJson } from '../../../schema/plan-json.ts';
import type { Figure } from '../../plan/figure.ts';
import type { SolutionFigures } from '../../plan/solution.ts';

export type SolutionJson = PlanJson['batches'][string]['predicted'];

/** Gives a figure's number, times what its unit asks, or null; and keeps what is missing under the keys. */
export type NumberUnder = (key: readonly string[], figure: Figure, times?: number) => number | null;

export function solutionJson(figures: SolutionFigures, inAir: SolutionFigures, number: NumberUnder): SolutionJson {
  return {
    pH: number(['pH'], figures.pH),
    pH_in_air: number(['pH_in_air'], inAir.pH),
    EC_mS_per_cm: number(['EC_mS_per_cm'], figures.EC),
    // A figure counts millimoles.
    ionicStrength_mol_per_L: number(['ionicStrength_mol_per_L'], figures.ionicStrength, 1e-3),
    saturation: {
      gypsum: index('gypsum'),
      brushite: index('brushite'),
      struvite: index('struvite'),
      calcite: index('calcite'),
      hydroxyapatite: index('hydroxyapatite'),
    },
  };

  function index(mineral: keyof SolutionJson['saturation']): number | null {
    return number(['saturation', mineral], figures.saturation[mineral]);
  }
}
