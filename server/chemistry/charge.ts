// The pH at which positive and negative charges match. Separate because everything that is dosed, mixed or aired ends
// here.

import type { Point } from './bracket.ts';
import { crossingBetween } from './bracket.ts';
import { bufferOf } from './buffer.ts';
import type { Pool } from './pool.ts';
import { fillAt, settle } from './speciate.ts';

export const lowestPH = -2;
export const highestPH = 16;

/** Fills the pool at the pH of electroneutrality, which is looked for from `near`. */
export function balance(pool: Pool, near = 7): void {
  if (!settleAtPH(pool, near, () => pool.charge)) balanceBetween(pool, near);
}

/**
 * Fills the pool at the pH at which `left` is zero, where that falls with pH as charge does: by Newton's steps over the buffer
 * value. False where they lead nowhere.
 */
export function settleAtPH(pool: Pool, near: number, left: () => number): boolean {
  pool.pH = near;
  return settle(pool, {
    // Between two buffers a step knows nothing of the next one.
    off: () => Math.max(-1, Math.min(1, left() / bufferOf(pool))),
    move: by => {
      pool.pH = Math.max(lowestPH, Math.min(highestPH, pool.pH + by));
    },
    width: width_pH,
  });
}

const width_pH = 1e-10;

/**
 * The same by a search that cannot fail: net charge falls as pH rises, so a bracket grown from `near` always closes; a solution
 * stronger than pH -2 or 16 is answered with that bound, and the charge that is left.
 */
export function balanceBetween(pool: Pool, near: number): void {
  const chargeAt = (pH: number): number => fillAt(pool, pH);
  let first: Point = { x: near, y: chargeAt(near) };
  if (first.y === 0) return;
  const direction = Math.sign(first.y);
  for (let step = 0.4; ; step *= 2) {
    const x = Math.min(highestPH, Math.max(lowestPH, first.x + direction * step));
    const second: Point = { x, y: chargeAt(x) };
    if (Math.sign(second.y) !== direction) {
      const found = crossingBetween(chargeAt, first, second, { width: 1e-9, enough: negligible(pool) });
      // The pool must end where the answer is, and the last try may have been the other end of the bracket.
      if (pool.pH !== found) chargeAt(found);
      return;
    }
    if (x === lowestPH || x === highestPH) return;
    first = second;
  }
}

/** The mass balance rests within 1e-11 of what is there; in pure water the least that still means 1e-8 in pH. */
function negligible(pool: Pool): number {
  return 1e-15 + 1e-11 * pool.ionicStrength;
}
