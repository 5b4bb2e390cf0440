// The amounts of several feeds that bring several sums nearest to their bands: least squares with bounds, by Newton's steps among the
// amounts that no bound holds. Knows nothing of feeds.

/** A sum to be brought into a band: what is there already, and what a unit of each feed adds. */
export interface BlendRow {
  readonly base: number;
  readonly perUnit: readonly number[];
  readonly low: number;
  readonly high: number;
  /** What a miss of one unit of the sum counts. */
  readonly weight: number;
}

/**
 * The amounts, zero or more and at most `limits`, whose weighted squared distances from the bands are least. Among equals those
 * nearest to the middle of the bands, among these the smallest. The miss is convex and made of parabolas, so a step either ends at
 * the least or finds another bound or band end; the order is fixed, so the answer is too.
 */
export function blend(rows: readonly BlendRow[], limits: readonly number[]): readonly number[] {
  // Amounts are counted in units of equal effect, so that grams of a trace weigh as much as grams of a salt.
  const units = limits.map((_, index) => unitOf(rows, index));
  const scaled = rows.map(row => ({ ...row, perUnit: row.perUnit.map((per, index) => per * (units[index] ?? 1)) }));
  const bounds = limits.map((limit, index) => limit / (units[index] ?? 1));
  let amounts: readonly number[] = bounds.map(() => 0);
  let cost = costOf(scaled, amounts);
  for (let step = 0; step < mostSteps; step++) {
    const next = stepFrom(scaled, bounds, amounts, cost);
    if (next === undefined) break;
    amounts = next.amounts;
    cost = next.cost;
  }
  return amounts.map((amount, index) => amount * (units[index] ?? 1));
}

/** Far more than it takes: a handful of feeds ends within some twenty. */
const mostSteps = 500;
/** How much nearness to the middle counts beside nearness to the band. */
const middleWeight = 1e-4;
/** How much the size of the amounts counts: only enough to choose among equals. */
const sizeWeight = 1e-12;

function unitOf(rows: readonly BlendRow[], index: number): number {
  const square = rows.reduce((sum, { perUnit, weight }) => sum + weight * (perUnit[index] ?? 0) ** 2, 0);
  return square > 0 ? 1 / Math.sqrt(square) : 1;
}

/** The weighted squared distance of some amounts from the bands, with a little for the distance from their middles. */
export function missOf(rows: readonly BlendRow[], amounts: readonly number[]): number {
  return rows.reduce((sum, row) => {
    const { outside, off } = distances(row, amounts);
    return sum + row.weight * (outside ** 2 + middleWeight * off ** 2);
  }, 0);
}

/** What is made least: the miss, and among equals the size. */
function costOf(rows: readonly BlendRow[], amounts: readonly number[]): number {
  return amounts.reduce((sum, amount) => sum + sizeWeight * amount ** 2, missOf(rows, amounts));
}

function distances(row: BlendRow, amounts: readonly number[]): { readonly outside: number; readonly off: number } {
  const sum = amounts.reduce((total, amount, index) => total + amount * (row.perUnit[index] ?? 0), row.base);
  const outside = sum < row.low ? sum - row.low : sum > row.high ? sum - row.high : 0;
  return { outside, off: sum - (row.low + row.high) / 2 };
}

interface Better {
  readonly amounts: readonly number[];
  readonly cost: number;
}

/** A step to a smaller cost; undefined where there is none. */
function stepFrom(
  rows: readonly BlendRow[],
  bounds: readonly number[],
  amounts: readonly number[],
  cost: number,
): Better | undefined {
  const slopes = amounts.map((amount, index) =>
    rows.reduce(
      (sum, row) => {
        const { outside, off } = distances(row, amounts);
        return sum + 2 * row.weight * (row.perUnit[index] ?? 0) * (outside + middleWeight * off);
      },
      2 * sizeWeight * amount,
    ),
  );
  const free = amounts.flatMap((amount, index) => {
    const slope = slopes[index] ?? 0;
    const held = (amount <= 0 && slope >= 0) || (amount >= (bounds[index] ?? 0) && slope <= 0);
    return held ? [] : [index];
  });
  if (free.length === 0) return undefined;
  const direction = inward(rows, bounds, amounts, free, slopes);
  for (let length = 1; length > 1e-12; length /= 2) {
    const tried = amounts.map((amount, index) => {
      const along = direction.get(index) ?? 0;
      return Math.min(bounds[index] ?? 0, Math.max(0, amount + length * along));
    });
    const now = costOf(rows, tried);
    if (now < cost * (1 - 1e-14) - Number.MIN_VALUE) return { amounts: tried, cost: now };
  }
  return undefined;
}

/** Newton's step among the free amounts, without those that it would push through the bound on which they stand. */
function inward(
  rows: readonly BlendRow[],
  bounds: readonly number[],
  amounts: readonly number[],
  free: readonly number[],
  slopes: readonly number[],
): ReadonlyMap<number, number> {
  const step = newton(rows, amounts, free, slopes);
  const staying = free.filter(index => {
    const [amount = 0, along = 0] = [amounts[index], step.get(index)];
    return !((amount <= 0 && along < 0) || (amount >= (bounds[index] ?? 0) && along > 0));
  });
  if (staying.length === free.length) return step;
  if (staying.length > 0) return inward(rows, bounds, amounts, staying, slopes);
  // Alone, an amount always goes down its slope.
  const steepest = free.reduce((a, b) => (Math.abs(slopes[b] ?? 0) > Math.abs(slopes[a] ?? 0) ? b : a), free[0] ?? 0);
  return newton(rows, amounts, [steepest], slopes);
}

/** By how much each free amount moves to where the slopes vanish, were the ends of the bands and the bounds not there. */
function newton(
  rows: readonly BlendRow[],
  amounts: readonly number[],
  free: readonly number[],
  slopes: readonly number[],
): ReadonlyMap<number, number> {
  const bends = rows.map(row => row.weight * ((distances(row, amounts).outside === 0 ? 0 : 1) + middleWeight));
  const matrix = free.map(a =>
    free.map(b =>
      rows.reduce(
        (sum, row, index) => sum + 2 * (bends[index] ?? 0) * (row.perUnit[a] ?? 0) * (row.perUnit[b] ?? 0),
        a === b ? 2 * sizeWeight : 0,
      ),
    ),
  );
  const by = solveSymmetric(
    matrix,
    free.map(index => -(slopes[index] ?? 0)),
  );
  return new Map(free.map((index, at) => [index, by[at] ?? 0]));
}

/** Solves a symmetric positive system by elimination, with the largest pivot left each time. */
function solveSymmetric(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  const size = rows.length;
  for (let at = 0; at < size; at++) {
    const pivot = rows.reduce(
      (best, row, index) => (index >= at && Math.abs(row[at] ?? 0) > Math.abs(rows[best]?.[at] ?? 0) ? index : best),
      at,
    );
    const [top, chosen] = [rows[at], rows[pivot]];
    if (top === undefined || chosen === undefined || (chosen[at] ?? 0) === 0) continue;
    rows[at] = chosen;
    rows[pivot] = top;
    for (const [index, row] of rows.entries()) {
      if (index === at) continue;
      const times = (row[at] ?? 0) / (chosen[at] ?? 1);
      for (let column = at; column <= size; column++) row[column] = (row[column] ?? 0) - times * (chosen[column] ?? 0);
    }
  }
  return rows.map((row, index) => ((row[index] ?? 0) === 0 ? 0 : (row[size] ?? 0) / (row[index] ?? 1)));
}
