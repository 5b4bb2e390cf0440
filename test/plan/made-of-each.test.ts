import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { changedBetween, foundInEach, madeOfEach } from '../../server/plan/made-of-each.ts';

interface Pot {
  readonly name: string;
}

const pots = (names: string): readonly Pot[] => [...names].map(name => ({ name }));
const [a, b, c, d] = pots('abcd') as [Pot, Pot, Pot, Pot];

function labelling() {
  const make = vi.fn(({ name }: Pot, colour: string) => ({ label: `${colour} ${name}` }));
  const asked = () => {
    const names = make.mock.calls.map(([{ name }]) => name).join('');
    make.mockClear();
    return names;
  };
  return { make, asked };
}

test('only what stands where something else stood is made again', () => {
  const { make, asked } = labelling();
  const labels = madeOfEach(make);
  const first = labels([a, b, c], 'red');
  expect(asked()).toBe('abc');
  const second = labels([a, d, c], 'red');
  expect(asked()).toBe('d');
  expect(second.map(({ label }) => label)).toEqual(['red a', 'red d', 'red c']);
  expect(second[0]).toBe(first[0]);
  expect(second[2]).toBe(first[2]);
});

test('what is put in or taken out moves what stands behind it, and no more', () => {
  const { make, asked } = labelling();
  const labels = madeOfEach(make);
  labels([a, b, c], 'red');
  asked();
  expect(labels([a, d, b, c], 'red')).toHaveLength(4);
  expect(asked()).toBe('d');
  expect(labels([a, c], 'red').map(({ label }) => label)).toEqual(['red a', 'red c']);
  expect(asked()).toBe('');
});

test('the same things with the same beside them are the same list', () => {
  const { make, asked } = labelling();
  const labels = madeOfEach(make);
  const first = labels([a, b], 'red');
  expect(labels([a, b], 'red')).toBe(first);
  asked();
  expect(labels([a, b], 'blue')[0]?.label).toBe('blue a');
  expect(asked()).toBe('ab');
});

test('of what is given only what it touches is made again', () => {
  const make = vi.fn(({ name }: Pot, dry: readonly string[]) => ({ label: dry.includes(name) ? 'dry' : 'wet' }));
  const labels = madeOfEach(make, ([was], [is]) => {
    const changed = new Set([...changedBetween(was, is)]);
    return ({ name }) => changed.has(name);
  });
  labels([a, b, c], ['a']);
  make.mockClear();
  expect(labels([a, b, c], ['a', 'c']).map(({ label }) => label)).toEqual(['dry', 'wet', 'dry']);
  expect(make.mock.calls.map(([{ name }]) => name)).toEqual(['c']);
});

test('what is alike gives way to what was there, so that the list stays the same', () => {
  const initials = madeOfEach(
    ({ name }: Pot) => ({ initial: name[0] }),
    undefined,
    (before, now) => before.initial === now.initial,
  );
  const first = initials([{ name: 'chive' }, b]);
  expect(initials([{ name: 'cress' }, b])).toBe(first);
  expect(initials([{ name: 'dill' }, b])).not.toBe(first);
});

test('what is found in some of many things is one list', () => {
  const long = foundInEach(({ name }: Pot, most: number) => (name.length > most ? [name, `${name}!`] : []));
  expect(long([{ name: 'chive' }, a, { name: 'dill' }], 3)).toEqual(['chive', 'chive!', 'dill', 'dill!']);
  expect(long([a, b], 3)).toEqual([]);
});

test('However a list changes, what is made is what would be made of it anew', () => {
  const state = fc.record({
    things: fc.array(fc.constantFrom(a, b, c, d, ...pots('efgh')), { maxLength: 6 }),
    given: fc.subarray(['a', 'b', 'c', 'd', 'e']),
  });
  fc.assert(
    fc.property(fc.array(state, { minLength: 1, maxLength: 8 }), states => {
      const make = ({ name }: Pot, given: readonly string[]): string => `${name}${given.includes(name) ? '!' : ''}`;
      const made = madeOfEach(make, ([was], [is]) => {
        const changed = [...was.filter(name => !is.includes(name)), ...is.filter(name => !was.includes(name))];
        return ({ name }) => changed.includes(name);
      });
      for (const { things, given } of states) {
        expect(made(things, given)).toEqual(things.map(thing => make(thing, given)));
      }
    }),
  );
});

test('What has changed between two lists is all that only one of them has', () => {
  const list = fc.array(fc.constantFrom(...'abcdef'), { maxLength: 8 });
  fc.assert(
    fc.property(list, list, (before, now) => {
      const changed = changedBetween(before, now);
      for (const one of before) if (!now.includes(one)) expect(changed).toContain(one);
      for (const one of now) if (!before.includes(one)) expect(changed).toContain(one);
      expect(changedBetween(now, now)).toEqual([]);
    }),
  );
});
