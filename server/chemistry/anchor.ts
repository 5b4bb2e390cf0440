// A measured pH outranks a computed one: the charge that makes the solution show it. Separate because titrations,
// readings and lab reports all start from a measurement.

import type { Question } from './solution.ts';
import { carbonateOf, poolFor } from './solution.ts';
import { fillAt } from './speciate.ts';
import type { Totals } from './totals.ts';

/**
 * The totals with the imbalance that gives exactly this pH; in an open vessel with the carbonate that air then gives.
 * What the measurement says of the recipe is the answer's `imbalance` less the question's: positive, the solution holds
 * that much more base, eq/kg, than was thought.
 */
export function anchorTo(question: Question, pH: number): Totals {
  const pool = poolFor(question);
  // The imbalance moves nothing but the charge balance, so one step is exact.
  const gap = fillAt(pool, pH);
  const totals = question.air === 'closed' ? question.totals : { ...question.totals, CO3: carbonateOf(pool) };
  return { ...totals, imbalance: (totals.imbalance ?? 0) - gap };
}
