// Another thread that checks recipes. One that cannot be started, or that ends before its time, gives no answer; whoever asked does
// the work then.

import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Checked, Checking } from './check-inputs.ts';
import type { Io } from './output.ts';
import type { Lot } from './spread.ts';

type Threads = NonNullable<Io['threads']>;

export interface Thread {
  /** Undefined where it could not be done. */
  check(lot: Lot): Promise<readonly Checked[] | undefined>;
  stop(): void;
}

/** As many as are worth it and as there are processors for. */
export function startThreads({ file, count }: Threads, checking: Checking, worth: number): readonly Thread[] {
  // The engine's own threads, which compile and collect garbage, take nearly as much again.
  const hands = Math.max(1, Math.min(Math.floor(availableParallelism() / 2), mostHands));
  return Array.from({ length: count ?? Math.min(hands - 1, worth) }, () => startThread(file, checking));
}

/** This thread included. Each has a heap of its own; more of them are not worth their memory. */
const mostHands = 8;

/** Starts one with the program in a file, which answers each lot of inputs in its order. */
function startThread(file: string, checking: Checking): Thread {
  const waiting: ((answer: readonly Checked[] | undefined) => void)[] = [];
  let worker = started(file, checking);
  worker?.on('message', (answer: readonly Checked[] | undefined) => waiting.shift()?.(answer));
  worker?.on('error', giveUp);
  worker?.on('exit', giveUp);
  return {
    check: lot =>
      new Promise(resolve => {
        waiting.push(resolve);
        if (worker === undefined) giveUp();
        else worker.postMessage(lot);
      }),
    stop: () => void worker?.terminate(),
  };

  function giveUp(): void {
    worker = undefined;
    for (const settle of waiting.splice(0)) settle(undefined);
  }
}

function started(file: string, checking: Checking): Worker | undefined {
  try {
    return new Worker(file, { workerData: checking });
  } catch {
    return undefined;
  }
}
