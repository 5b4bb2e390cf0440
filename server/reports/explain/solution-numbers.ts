// The numbers of a solution that can be explained: a batch has one as mixed and one in the end, a water is one.

import { type SolutionFigures, shownMinerals } from '../../plan/solution.ts';
import { type ExplainedNumber, under } from './explained-number.ts';

/** The numbers of a solution; where `short` is given, its figures can be asked for directly under those keys too. */
export function solutionNumbers(
  keys: readonly string[],
  figures: () => SolutionFigures,
  inAir: () => SolutionFigures,
  short?: readonly string[],
): readonly ExplainedNumber[] {
  const one = (names: readonly [string, ...string[]], figure: ExplainedNumber['figure']): ExplainedNumber => {
    const [first, ...others] = names;
    const also = others.map(name => [...keys, name]);
    const direct = short === undefined ? [] : names.map(name => [...short, name]);
    return under([...keys, first], figure, [...also, ...direct]);
  };
  return [
    one(['pH'], () => figures().pH),
    one(['pH_in_air'], () => inAir().pH),
    one(['EC_mS_per_cm', 'EC'], () => figures().EC),
    one(['ionicStrength_mol_per_L', 'ionicStrength'], () => figures().ionicStrength),
    ...shownMinerals.map(mineral => one([`saturation/${mineral}`], () => figures().saturation[mineral])),
  ];
}
