// What is known of a water whether or not it can be solved: its solution's figures, or what its report states where more is wanted.

import { valueAt } from '../../schema/place.ts';
import { given } from './figure.ts';
import type { SolutionFigures } from './solution.ts';
import type { WaterPlan } from './water.ts';
import { alkalinityOf } from './water-report.ts';

/** A report of which no water can be is not taken at its word: nothing of it is known. */
export function statedOf({ water, solved, impossible, figures }: WaterPlan): SolutionFigures {
  if (solved.kind === 'solved' || impossible !== undefined) return figures;
  const { pH, EC } = water.value;
  const at = (key: string) => valueAt([...water.path, key], water.file);
  return {
    ...figures,
    pH: pH === undefined ? figures.pH : given({ dimension: 'pH', value: pH }, at('pH')),
    EC: EC === undefined ? figures.EC : given(EC, at('EC')),
    alkalinity: alkalinityOf(water) ?? figures.alkalinity,
  };
}
