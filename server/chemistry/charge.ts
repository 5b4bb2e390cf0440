// The pH at which positive and negative charges match. Separate because everything that is dosed, mixed or aired ends
// here.

import type { Crossing, Point } from './bracket.ts';
import { crossingBetween } from './bracket.ts';
import type { Pool } from './speciate.ts';
import { fillAt } from './speciate.ts';

export const lowestPH = -2;
export const highestPH = 16;

/**
 * Fills the pool at the pH of electroneutrality. Net charge falls as pH rises, so a bracket grown from `near` always
 * closes; a solution stronger than pH -2 or 16 is answered with that bound and its residual.
 */
export function balance(pool: Pool, near = 7): Crossing {
  let last = near;
  const chargeAt = (pH: number): number => {
    last = pH;
    return fillAt(pool, pH);
  };
  let first: Point = { x: near, y: chargeAt(near) };
  if (first.y === 0) return { at: near, residual: 0, evaluations: 1 };
  const direction = Math.sign(first.y);
  let step = 0.4;
  let evaluations = 1;
  for (;;) {
    const x = Math.min(highestPH, Math.max(lowestPH, first.x + direction * step));
    const second: Point = { x, y: chargeAt(x) };
    evaluations += 1;
    if (Math.sign(second.y) !== direction) {
      const found = crossingBetween(chargeAt, first, second, { width: 1e-9, enough: negligible(pool) });
      // The pool must end where the answer is, and the last try may have been the other end of the bracket.
      const residual = last === found.at ? found.residual : chargeAt(found.at);
      return { at: found.at, residual, evaluations: evaluations + found.evaluations };
    }
    if (x === lowestPH || x === highestPH) return { at: x, residual: second.y, evaluations };
    first = second;
    step *= 2;
  }
}

/** The mass balance rests within 1e-11 of what is there; in pure water the least that still means 1e-8 in pH. */
function negligible(pool: Pool): number {
  return 1e-15 + 1e-11 * pool.ionicStrength;
}
