// How much of an acid or base takes a solution to a pH, and what each amount gives. Weak acids need no rule of their
// own: a reagent is what it adds to the totals, and the charge balance does the rest.

import type { Point } from './bracket.ts';
import { crossingBetween } from './bracket.ts';
import { chargeBrought } from './buffer.ts';
import { mediumAt } from './network.ts';
import { type Contents, contentsOf, type Pool, pour } from './pool.ts';
import type { Question, Solution } from './solution.ts';
import { poolFor, solutionOf, solve } from './solution.ts';
import { fillAt, settle } from './speciate.ts';
import type { Totals } from './totals.ts';
import { addTotals } from './totals.ts';

/** What one unit of a reagent (a mole, a millilitre, a gram) adds, mol. */
export type Reagent = Totals;

export type Dose =
  /** Units of the reagent per kilogram of water, and the solution with it. */
  | { readonly kind: 'dose'; readonly amount: number; readonly solution: () => Solution }
  | { readonly kind: 'cannot-reach'; readonly why: 'wrong-direction' | 'too-weak' };

/**
 * The dose that brings the solution to `target`. At that pH the charge of the mixture changes steadily with the dose, so the dose
 * is the charge over what a unit brings of it, and no search over pH. `most` bounds it, units per kilogram. The reagent's water is
 * left out.
 */
export function doseTo(question: Question, reagent: Reagent, target: number, most: number): Dose {
  const pool = poolFor(question, reagent);
  const first = contentsOf(pool.forms, question.totals);
  const more = contentsOf(pool.forms, reagent);
  const found = settledDose(pool, target, first, more);
  const dose = found !== undefined && found <= most ? found : doseBetween(pool, target, first, more, most);
  if (typeof dose === 'string') return { kind: 'cannot-reach', why: dose };
  return {
    kind: 'dose',
    amount: dose,
    solution: () => solutionOf(pool, addTotals(question.totals, reagent, dose)),
  };
}

/** Undefined where Newton's steps find none above zero. */
function settledDose(pool: Pool, target: number, first: Contents, more: Contents): number | undefined {
  let dose = 0;
  pool.pH = target;
  const isSettled = settle(pool, {
    off: () => -pool.charge / chargeBrought(pool, more),
    move: by => {
      dose = Math.max(0, dose + by);
      pour(pool, first, more, dose);
    },
    width: negligible / largestOf(more),
  });
  return isSettled && dose > 0 ? dose : undefined;
}

/** Charge that counts for nothing, eq/kg. */
const negligible = 1e-14;

function largestOf({ amounts, charge, unknown }: Contents): number {
  return amounts.reduce((largest, amount) => Math.max(largest, amount), Math.abs(charge) + Math.abs(unknown));
}

/** The same by a search that cannot fail, which also tells why no dose does it. */
function doseBetween(
  pool: Pool,
  target: number,
  first: Contents,
  more: Contents,
  most: number,
): number | 'wrong-direction' | 'too-weak' {
  const chargeWith = (amount: number): number => {
    pour(pool, first, more, amount);
    return fillAt(pool, target);
  };
  const none: Point = { x: 0, y: chargeWith(0) };
  if (Math.abs(none.y) < negligible) return 0;
  const trial: Point = { x: most * 1e-6, y: chargeWith(most * 1e-6) };
  const slope = (trial.y - none.y) / trial.x;
  if (slope * none.y >= 0) return 'wrong-direction';
  // Nearly straight, so the first guess overshoots a little and mostly closes the bracket at once.
  let below = none;
  let amount = Math.min(most, (-none.y / slope) * 1.02);
  for (;;) {
    const above: Point = { x: amount, y: chargeWith(amount) };
    if (Math.sign(above.y) !== Math.sign(none.y)) {
      const stop = { width: Math.max(amount * 1e-10, 1e-15), enough: negligible };
      const found = crossingBetween(chargeWith, below, above, stop);
      // The pool must end where the answer is, and the last try may have been the other end of the bracket.
      chargeWith(found);
      return found;
    }
    if (amount >= most) return 'too-weak';
    below = above;
    amount = Math.min(most, amount * 2);
  }
}

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
