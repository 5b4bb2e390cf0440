import { expect, test } from 'vitest';
import type { Edit } from '../../schema/edit.ts';
import { openDocument } from '../../server/syntax/document.ts';
import { textEdits, withChanges } from '../../server/syntax/edit.ts';

/** The text after some edits. */
function edited(text: string, ...edits: Edit[]): string {
  return withChanges(text, textEdits(openDocument(text), edits));
}

const value = { kind: 'value' } as const;

test('A value is replaced and its comment stays where it was', () => {
  const edit: Edit = { kind: 'replace', at: { path: ['a', 'pH'], part: value }, text: '7' };
  expect(edited('a:\n  pH:   6.5   # tap\n', edit)).toBe('a:\n  pH:   7   # tap\n');
  expect(edited('a:\n  pH:  # tap\n', edit)).toBe('a:\n  pH: 7  # tap\n');
  expect(edited('a: { pH: 6, EC: 1 }\n', edit)).toBe('a: { pH: 7, EC: 1 }\n');
  expect(edited('a: { pH }\n', edit)).toBe('a: { pH: 7 }\n');
});

test('A slice is replaced inside its quotes', () => {
  const edit: Edit = { kind: 'replace', at: { path: ['a'], part: { kind: 'slice', from: 2, to: 7 } }, text: 'gal' };
  expect(edited('a: "5 galon"\n', edit)).toBe('a: "5 gal"\n');
  expect(edited("a: '5 galon'\n", edit)).toBe("a: '5 gal'\n");
});

test('A key is renamed in its own quotes, the second of equal ones too', () => {
  expect(edited('a: 1\n"b": 2\n', { kind: 'rename', path: ['b'], key: 'c' })).toBe('a: 1\n"c": 2\n');
  expect(edited('a: 1\na: 2\n', { kind: 'rename', path: ['a'], nth: 1, key: 'b' })).toBe('a: 1\nb: 2\n');
  expect(edited('a: 1\n', { kind: 'rename', path: ['a'], key: 'b: c' })).toBe('"b: c": 1\n');
});

test('A pair goes behind the last of its map, in its style', () => {
  const edit: Edit = { kind: 'insert', into: ['a', 'b'], key: 'k', text: '1' };
  expect(edited('a:\n    b:\n        c: 2 # note\n\nd: 1\n', edit)).toBe(
    'a:\n    b:\n        c: 2 # note\n        k: 1\n\nd: 1\n',
  );
  expect(edited('a:\n  b: { c: 2 }\n', edit)).toBe('a:\n  b: { c: 2, k: 1 }\n');
  expect(edited('a:\n  b: {}\n', edit)).toBe('a:\n  b: { k: 1 }\n');
  expect(edited('a:\n  b: # note\n', edit)).toBe('a:\n  b: # note\n    k: 1\n');
  expect(edited('a:\r\n  b:\r\n    c: 2', edit)).toBe('a:\r\n  b:\r\n    c: 2\r\n    k: 1');
  expect(edited('a:\n  c: 1\n', edit)).toBe('a:\n  c: 1\n  b:\n    k: 1\n');
});

test('An item goes behind the last of its list, which is made where it is missing', () => {
  const edit: Edit = { kind: 'append', to: ['log'], text: '{ pH: 6 }' };
  expect(edited('log:\n- a # note\n# end\n', edit)).toBe('log:\n- a # note\n- { pH: 6 }\n# end\n');
  expect(edited('log:\n  - a\nb: 1\n', edit)).toBe('log:\n  - a\n  - { pH: 6 }\nb: 1\n');
  expect(edited('log: [a]\n', edit)).toBe('log: [a, { pH: 6 }]\n');
  expect(edited('log: []\n', edit)).toBe('log: [{ pH: 6 }]\n');
  expect(edited('log:\n', edit)).toBe('log:\n  - { pH: 6 }\n');
  expect(edited('a: 1', edit)).toBe('a: 1\nlog:\n  - { pH: 6 }');
  expect(edited('a: 1\n', edit, { ...edit, text: '{ pH: 7 }' })).toBe('a: 1\nlog:\n  - { pH: 6 }\n  - { pH: 7 }\n');
});

test('An item goes before another one, and remarks stay above what they stand above', () => {
  const before = (at: number): Edit => ({ kind: 'append', to: ['log'], text: '{ pH: 6 }', before: at });
  expect(edited('log:\n- a # note\n# on b\n- b\n', before(1))).toBe('log:\n- a # note\n- { pH: 6 }\n# on b\n- b\n');
  expect(edited('log: # note\n  - a\n  - b\n', before(0))).toBe('log: # note\n  - { pH: 6 }\n  - a\n  - b\n');
  expect(edited('log:\r\n  - a:\n      1\r\n  - b\r\n', before(1))).toBe(
    'log:\r\n  - a:\n      1\r\n  - { pH: 6 }\r\n  - b\r\n',
  );
  expect(edited('log: [a, b] # note\n', before(0))).toBe('log: [{ pH: 6 }, a, b] # note\n');
  expect(edited('log: [a, b]\n', before(1))).toBe('log: [a, { pH: 6 }, b]\n');
  expect(edited('log:\n  - a\n', before(1))).toBe('log:\n  - a\n');
  expect(edited('log:\n  -\n    a\n', before(0))).toBe('log:\n  -\n    a\n');
});

test('A pair or item goes with its line or its comma', () => {
  expect(edited('a: 1\nb: 2 # gone\nc: 3\n', { kind: 'remove', path: ['b'] })).toBe('a: 1\nc: 3\n');
  expect(edited('a: { b: 1, c: 2 }\n', { kind: 'remove', path: ['a', 'b'] })).toBe('a: { c: 2 }\n');
  expect(edited('a: { b: 1, c: 2 }\n', { kind: 'remove', path: ['a', 'c'] })).toBe('a: { b: 1 }\n');
  expect(edited('a: { b: 1 }\n', { kind: 'remove', path: ['a', 'b'] })).toBe('a: {}\n');
  expect(edited('a:\n- b: 1\n  c: 2\n- d\n', { kind: 'remove', path: ['a', 0, 'b'] })).toBe('a:\n- c: 2\n- d\n');
  expect(edited('a:\n- b: 1\n  c: 2\n- d\n', { kind: 'remove', path: ['a', 0] })).toBe('a:\n- d\n');
});

test('An edit at a place that does not exist changes nothing', () => {
  expect(edited('a: 1\n', { kind: 'remove', path: ['b'] }, { kind: 'insert', into: ['a'], key: 'k', text: '1' })).toBe(
    'a: 1\n',
  );
});
