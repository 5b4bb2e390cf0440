import { expect, test } from 'vitest';
import { nearest, spellingDistance } from '../../schema/nearest.ts';

const sections = ['waters', 'feeds', 'adjusters', 'tools', 'containers', 'targets', 'stages', 'plantings', 'batches'];

test.each([
  ['water', 'waters'],
  ['Feeds', 'feeds'],
  ['fedes', 'feeds'],
  ['bathces', 'batches'],
  ['adjuster', 'adjusters'],
  ['contaners', 'containers'],
])('%s is near %s', (word, meant) => {
  expect(nearest(word, sections)).toBe(meant);
});

test.each(['fish', 'x', '', 'temperature', 'a'.repeat(100)])('%j is near nothing', word => {
  expect(nearest(word, sections)).toBeUndefined();
});

test('two letters that changed places count as one slip', () => {
  expect(spellingDistance('feeds', 'fedes')).toBe(1);
  expect(spellingDistance('', 'abc')).toBe(3);
});

test('of equally near words the first is taken', () => {
  expect(nearest('stake', ['state', 'stage'])).toBe('state');
});
