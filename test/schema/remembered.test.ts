import { expect, test } from 'vitest';
import { Remembered } from '../../schema/remembered.ts';

test('what is remembered about an object is told about that object only', () => {
  const seen = new Remembered<object, string>();
  const [red, green] = [{}, []];
  seen.set(red, 'first');
  seen.set(red, 'then');
  expect(seen.get(red)).toBe('then');
  expect(seen.get(green)).toBeUndefined();
});

test('who remembers does not disturb another, nor the object', () => {
  const [weights, names] = [new Remembered<object, number>(), new Remembered<object, string>()];
  const list = Object.freeze([1, 2]);
  weights.set(list, 2);
  names.set(list, 'pair');
  expect([weights.get(list), names.get(list)]).toEqual([2, 'pair']);
  expect(Reflect.ownKeys(list)).toEqual(['0', '1', 'length']);
});
