// How much of an acid or base takes a solution to a pH, and what each amount gives. Weak acids need no rule of their
// own: a reagent is what it adds to the totals, and the charge balance does the rest.

import type { Point } from './bracket.ts';
import { crossingBetween } from './bracket.ts';
import { mediumAt } from './network.ts';
import type { Question, Solution } from './solution.ts';
import { poolFor, solve } from './solution.ts';
import { fillAt, pour } from './speciate.ts';
import type { Totals } from './totals.ts';
import { addTotals } from './totals.ts';

/** What one unit of a reagent (a mole, a millilitre, a gram) adds, mol. */
export type Reagent = Totals;

export type Dose =
  /** Units of the reagent per kilogram of water. */
  | { readonly kind: 'dose'; readonly amount: number; readonly evaluations: number }
  | { readonly kind: 'cannot-reach'; readonly why: 'wrong-direction' | 'too-weak' };

/**
 * The dose that brings the solution to `target`. At that pH the charge of the mixture changes steadily with the dose,
 * so the dose is a crossing, not a search over pH. `most` bounds it, units per kilogram. The reagent's water is left out.
 */
export function doseTo(question: Question, reagent: Reagent, target: number, most: number): Dose {
  const medium = question.medium ?? mediumAt(question.temperature_C);
  const pool = poolFor({ ...question, medium }, reagent);
  const chargeWith = (amount: number): number => {
    pour(pool, addTotals(question.totals, reagent, amount));
    return fillAt(pool, target);
  };
  const none: Point = { x: 0, y: chargeWith(0) };
  if (Math.abs(none.y) < negligible) return { kind: 'dose', amount: 0, evaluations: 1 };
  const trial: Point = { x: most * 1e-6, y: chargeWith(most * 1e-6) };
  const slope = (trial.y - none.y) / trial.x;
  if (slope * none.y >= 0) return { kind: 'cannot-reach', why: 'wrong-direction' };
  // Nearly straight, so the first guess overshoots a little and mostly closes the bracket at once.
  let below = none;
  let amount = Math.min(most, (-none.y / slope) * 1.02);
  let evaluations = 2;
  for (;;) {
    const above: Point = { x: amount, y: chargeWith(amount) };
    evaluations += 1;
    if (Math.sign(above.y) !== Math.sign(none.y)) {
      const found = crossingBetween(chargeWith, below, above, {
        width: Math.max(amount * 1e-10, 1e-15),
        enough: 1e-14,
      });
      return { kind: 'dose', amount: found.at, evaluations: evaluations + found.evaluations };
    }
    if (amount >= most) return { kind: 'cannot-reach', why: 'too-weak' };
    below = above;
    amount = Math.min(most, amount * 2);
  }
}

const negligible = 1e-14;

/** The solution with this much of the reagent in it, solved. */
export function withDose(question: Question, reagent: Reagent, amount: number, near?: number): Solution {
  const totals = addTotals(question.totals, reagent, amount);
  return solve(near === undefined ? { ...question, totals } : { ...question, totals, near });
}

/** pH at each dose, in the order given: the titration curve. */
export function titrationCurve(
  question: Question,
  reagent: Reagent,
  amounts: readonly number[],
): readonly CurvePoint[] {
  const medium = question.medium ?? mediumAt(question.temperature_C);
  let near = 7;
  return amounts.map(amount => {
    const { pH } = withDose({ ...question, medium }, reagent, amount, near);
    near = pH;
    return { amount, pH };
  });
}

export interface CurvePoint {
  readonly amount: number;
  readonly pH: number;
}
