// Numbers that look random and are the same for the same seed.

export interface Random {
  /** From 0 up to, not including, 1. */
  readonly next: () => number;
  readonly number: (low: number, high: number, decimals: number) => string;
  readonly below: (count: number) => number;
  readonly of: <T>(items: readonly T[]) => T;
}

/** A 32-bit linear congruential generator with the constants of Numerical Recipes (Press et al., 3rd ed., §7.1), its high bits mixed down. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return ((state ^ (state >>> 16)) >>> 0) / 2 ** 32;
  };
  const below = (count: number): number => Math.floor(next() * count);
  return {
    next,
    below,
    number: (low, high, decimals) => (low + next() * (high - low)).toFixed(decimals),
    of: items => {
      const item = items[below(items.length)];
      if (item === undefined) throw new Error('nothing to choose from');
      return item;
    },
  };
}
