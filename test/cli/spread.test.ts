import { expect, test } from 'vitest';
import type { Checked } from '../../server/cli/check-inputs.ts';
import { inputOf } from '../../server/cli/open-recipes.ts';
import { type Lot, spread } from '../../server/cli/spread.ts';
import type { Thread } from '../../server/cli/thread.ts';

const lots = Array.from({ length: 12 }, (_, at): Lot => [inputOf(`${at}.grow.yaml`, '/')]);

function said(lot: Lot, by: string): readonly Checked[] {
  return lot.map(({ name }) => ({ kind: 'unread', says: `${name.replace('.grow.yaml', '')} ${by}` }));
}

async function* here(lot: Lot) {
  yield* said(lot, 'here');
}

function thread(name: string, check: (lot: Lot) => readonly Checked[] | undefined = lot => said(lot, name)): Thread {
  return { check: lot => Promise.resolve(check(lot)), stop() {} };
}

async function all(threads: readonly Thread[]): Promise<readonly string[]> {
  const told: string[] = [];
  for await (const one of spread(lots, threads, here)) if (one.kind === 'unread') told.push(one.says);
  return told;
}

test('lots go round, and what is said comes in their order', async () => {
  const told = await all([thread('left'), thread('right')]);
  expect(told.slice(0, 7)).toEqual(['0 here', '1 left', '2 right', '3 here', '4 left', '5 right', '6 here']);
  expect(told.map(one => Number.parseInt(one, 10))).toEqual(lots.map((_, at) => at));
});

test('the order does not depend on who is ready first', async () => {
  const last: (() => void)[] = [];
  const slow: Thread = {
    check: lot => new Promise(resolve => last.push(() => resolve(said(lot, 'slow')))),
    stop() {},
  };
  const answering = setInterval(() => last.shift()?.(), 1);
  const told = await all([slow, thread('quick')]);
  clearInterval(answering);
  expect(told.map(one => Number.parseInt(one, 10))).toEqual(lots.map((_, at) => at));
});

test('what a thread does not do is done here', async () => {
  const lame = thread('lame', lot => (lot[0]?.name === '1.grow.yaml' ? said(lot, 'lame') : undefined));
  expect((await all([lame])).slice(0, 5)).toEqual(['0 here', '1 lame', '2 here', '3 here', '4 here']);
});

test('a defect here is thrown as it is, after what came before it', async () => {
  const told: string[] = [];
  const run = async () => {
    const failing = async function* (lot: Lot) {
      if (lot[0]?.name === '3.grow.yaml') throw new Error('a defect');
      yield* said(lot, 'here');
    };
    for await (const one of spread(lots, [thread('lame', () => undefined)], failing))
      if (one.kind === 'unread') told.push(one.says);
  };
  await expect(run()).rejects.toThrow('a defect');
  expect(told).toEqual(['0 here', '1 here', '2 here']);
});

test('nobody is far ahead of what has been taken', async () => {
  const asked: string[] = [];
  const keen = thread('keen', lot => {
    asked.push(...lot.map(({ name }) => name));
    return said(lot, 'keen');
  });
  let taken = 0;
  for await (const _ of spread(lots, [keen], here)) {
    taken++;
    expect(asked.length).toBeLessThanOrEqual(Math.ceil((taken + 4) / 2));
  }
  expect(asked.length).toBe(6);
});
