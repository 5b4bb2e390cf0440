import { expect, test, vi } from 'vitest';
import { interned, memo } from '../../server/plan/memo.ts';

/** A function that is remembered, and how often it has computed. */
function counted<A extends readonly unknown[]>() {
  let computed = 0;
  const ask = memo((..._: A): object => {
    computed += 1;
    return {};
  });
  return { ask, computed: () => computed };
}

const [red, green, blue] = [{}, {}, {}];

test('the same arguments are computed once', () => {
  const { ask, computed } = counted<[object, string, object | undefined]>();
  expect(ask(red, 'on', green)).toBe(ask(red, 'on', green));
  expect(ask(red, 'on', undefined)).toBe(ask(red, 'on', undefined));
  expect(computed()).toBe(2);
});

test('an object that is asked about with others in turn has the earlier answers too', () => {
  const { ask, computed } = counted<[object, object]>();
  const first = [ask(red, green), ask(red, blue), ask(red, red)];
  const again = [ask(red, green), ask(red, blue), ask(red, red)];
  for (const [index, answer] of again.entries()) expect(answer).toBe(first[index]);
  expect(computed()).toBe(3);
});

test('arguments before the first object, or no object at all, tell calls apart as well', () => {
  const { ask, computed } = counted<[string, object?]>();
  const first = [ask('a', red), ask('b', red), ask('a'), ask('b')];
  expect(new Set(first).size).toBe(4);
  for (const [index, answer] of [ask('a', red), ask('b', red), ask('a'), ask('b')].entries()) {
    expect(answer).toBe(first[index]);
  }
  expect(computed()).toBe(4);
});

test('computing may ask about the same object, and all answers are kept', () => {
  const compute = vi.fn((of: object, left: number): object => (left === 0 ? {} : { below: ask(of, left - 1) }));
  const ask = memo(compute);
  const whole = ask(red, 2);
  expect(whole).toEqual({ below: { below: {} } });
  for (const left of [0, 1, 2]) ask(red, left);
  expect(ask(red, 2)).toBe(whole);
  expect(compute).toHaveBeenCalledTimes(3);
});

test('lists of the same members are one list, whatever stands between', () => {
  const keep = interned<unknown>();
  const lists = [[], [red], [red, green], [green, red], ['a'], ['a', red]];
  const kept = lists.map(keep);
  expect(new Set(kept).size).toBe(lists.length);
  for (const [index, list] of lists.entries()) expect(keep([...list])).toBe(kept[index]);
});
