// What another thread does: it checks the lots of inputs that it is sent and answers each. Where one fails it says only that, and
// whoever asked finds out how.

import { parentPort, workerData } from 'node:worker_threads';
import { type Checked, type Checking, checkInputs } from './check-inputs.ts';
import { Shelves } from './shelves.ts';
import type { Lot } from './spread.ts';

export function work(): void {
  const checking: Checking = workerData;
  const shelves = new Shelves();
  let before = Promise.resolve();
  parentPort?.on('message', (lot: Lot) => {
    before = before.then(async () => parentPort?.postMessage(await checked(lot)));
  });

  async function checked(lot: Lot): Promise<readonly Checked[] | undefined> {
    const made: Checked[] = [];
    try {
      for await (const one of checkInputs(lot, checking, noInput, shelves)) made.push(one);
      return made;
    } catch {
      return undefined;
    }
  }
}

function noInput(): never {
  throw new Error('standard input is read by the first thread');
}
