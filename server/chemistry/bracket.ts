// Finds where a function crosses zero, always: the answer stays between two points of opposite sign. Separate because
// pH, dose and carbonate are all found this way.

/** When a crossing is known well enough: the bracket is this narrow, or the value this near to zero. */
export interface Stop {
  readonly width: number;
  readonly enough: number;
}

/** A point and the function's value there. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The crossing between `a` and `b`, whose values differ in sign (or are zero). Chandrupatla's 1997 method: inverse
 * quadratic steps where they can be trusted, halving where not.
 */
export function crossingBetween(f: (x: number) => number, a: Point, b: Point, { width, enough }: Stop): number {
  let here = b;
  let other = a;
  let before = a;
  // What is sought is mostly near straight between two points that somebody chose: the first step is along the line.
  let step = Math.min(0.98, Math.max(0.02, b.y / (b.y - a.y)));
  let evaluations = 0;
  if (a.y === 0) return a.x;
  if (b.y === 0) return b.x;
  for (;;) {
    const x = here.x + step * (other.x - here.x);
    const next: Point = { x, y: f(x) };
    evaluations += 1;
    if (Math.sign(next.y) === Math.sign(here.y)) {
      before = here;
      here = next;
    } else {
      before = other;
      other = here;
      here = next;
    }
    const best = Math.abs(here.y) < Math.abs(other.y) ? here : other;
    const gap = Math.abs(other.x - here.x);
    if (Math.abs(best.y) <= enough || gap <= width || evaluations >= mostEvaluations) return best.x;
    const xi = (here.x - other.x) / (before.x - other.x);
    const phi = (here.y - other.y) / (before.y - other.y);
    const mayCurve = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
    step = mayCurve
      ? (here.y / (other.y - here.y)) * (before.y / (other.y - before.y)) +
        ((before.x - here.x) / (other.x - here.x)) * (here.y / (before.y - here.y)) * (other.y / (before.y - other.y))
      : 0.5;
    const least = width / (2 * gap);
    step = Math.min(1 - least, Math.max(least, step));
  }
}

const mostEvaluations = 200;
