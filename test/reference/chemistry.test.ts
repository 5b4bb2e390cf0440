// Every reference case of solution chemistry, at its tolerance. A miss prints the quantity, theirs, ours and the bar.

import { describe, expect, test } from 'vitest';
import { compareCase, readCases } from './chemistry-cases.ts';

const cases = readCases();
const topics = [...new Set(cases.map(({ topic }) => topic))];

test('the file holds the open half of the cases', () => {
  expect(cases.length).toBe(111);
});

describe.each(topics)('%s', topic => {
  test.each(cases.filter(given => given.topic === topic).map(given => [given.id, given] as const))('%s', (_, given) => {
    const rows = compareCase(given);
    expect(rows.length).toBeGreaterThan(0);
    const misses = rows
      .filter(row => !row.pass)
      .map(({ what, reference, ours, tolerance }) => `${what}: theirs ${reference}, ours ${ours}, within ${tolerance}`);
    expect(misses).toEqual([]);
  });
});
