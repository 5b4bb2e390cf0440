// The reports of recipes in their order. Where there are many, other threads check some of them; which makes no difference to what is
// said.

import { type Checked, type Checking, checkInputs } from './check-inputs.ts';
import type { Input } from './open-recipes.ts';
import type { Io } from './output.ts';
import { Shelves } from './shelves.ts';
import { type Lot, spread } from './spread.ts';

export async function* eachReport(inputs: readonly Input[], checking: Checking, io: Io): AsyncGenerator<Checked> {
  const shelves = new Shelves();
  const here = (lot: Lot): AsyncIterable<Checked> => checkInputs(lot, checking, io.readInput, shelves);
  // Standard input belongs to this thread.
  if (io.threads === undefined || inputs.length < many || inputs.some(({ fromStdin }) => fromStdin)) {
    yield* here(inputs);
    return;
  }
  const { startThreads } = await import('./thread.ts');
  const threads = startThreads(io.threads, checking, Math.floor(inputs.length / many));
  try {
    yield* spread(lotsOf(inputs), threads, here);
  } finally {
    for (const thread of threads) thread.stop();
  }
}

/** So many recipes are worth another thread, which must start and learn what is often done. */
const many = 200;

function lotsOf(inputs: readonly Input[]): readonly Lot[] {
  return Array.from({ length: Math.ceil(inputs.length / lotSize) }, (_, at) =>
    inputs.slice(at * lotSize, (at + 1) * lotSize),
  );
}

const lotSize = 8;
