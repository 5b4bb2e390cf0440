// The nearest spelling to a word that is not known: for "did you mean". Letter case costs nothing; swapping two
// neighbouring letters costs as much as one wrong letter, because that is how hands slip.

const longestWord = 60;

/** The candidate most like `word`, or `undefined` when none is near enough. Of equals, the first. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length === 0 || longestWord < word.length) return undefined;
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let bestCost = allowance(wanted.length) + 1;
  for (const candidate of candidates) {
    if (bestCost <= Math.abs(candidate.length - wanted.length)) continue;
    const cost = spellingDistance(wanted, candidate.toLowerCase());
    // A short word may not lose or change all its letters and still be called near.
    if (cost < bestCost && cost < Math.max(1, Math.min(wanted.length, candidate.length))) {
      best = candidate;
      bestCost = cost;
    }
  }
  return best;
}

/** How many slips are forgiven in a word of this length. */
function allowance(length: number): number {
  if (length <= 4) return 1;
  return length <= 8 ? 2 : 3;
}

/** Letters to insert, remove, change or swap with their neighbour to turn one word into the other. */
export function spellingDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let cost = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped = 1 < row && 1 < column && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) cost = Math.min(cost, (beforeLast[column - 2] ?? 0) + 1);
      current.push(cost);
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length] ?? 0;
}
