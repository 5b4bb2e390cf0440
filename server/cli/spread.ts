// Deals lots of inputs in turn to this thread and to others, and gives what is said of them in the order of the lots.

import type { Checked } from './check-inputs.ts';
import type { Input } from './open-recipes.ts';
import type { Thread } from './thread.ts';

export type Lot = readonly Input[];

/** The others are kept supplied, but no further ahead than can be held: nobody takes a lot before those well ahead of it are through. */
export async function* spread(
  lots: readonly Lot[],
  threads: readonly Thread[],
  here: (lot: Lot) => AsyncIterable<Checked>,
): AsyncGenerator<Checked> {
  const hands = threads.length + 1;
  const dealt: ReturnType<Thread['check']>[] = [];
  for (const [at, lot] of lots.entries()) {
    for (const ahead of lots.slice(dealt.length, at + mostAhead * hands)) {
      const thread = threads[(dealt.length % hands) - 1];
      dealt.push(thread?.check(ahead) ?? ours);
    }
    // What another thread could not do is done here, where what goes wrong can be told.
    yield* (await dealt[at]) ?? here(lot);
    dealt[at] = ours;
  }
}

/** One lot to work on, and one that waits. */
const mostAhead = 2;

const ours = Promise.resolve(undefined);
