import { expect, test } from 'vitest';
import type { Part, Path } from '../../schema/place.ts';
import { openDocument } from '../../server/syntax/document.ts';
import { nearestRange, rangeOf } from '../../server/syntax/place.ts';

const text = `recipe: 1
waters:
  mains: # tap
    pH: 7.8
    note: "a \\"b\\" \\u00e9nd"
    name: 'it''s so'
    more: plain words
      go on
    lines: |
      first 🌱
      second
    EC:
log:
- { on: 2027-03-01 }
- on: 2027-03-02
mains: 1
mains: 2
`;
const document = openDocument(text);

/** What is written at a place. */
function written(path: Path, part: Part): string | undefined {
  const range = rangeOf(document, { path, part });
  return range && text.slice(range.from, range.to);
}

test('Keys, values and whole sections have their ranges', () => {
  expect(written(['waters'], { kind: 'key' })).toBe('waters');
  expect(written(['waters', 'mains'], { kind: 'key' })).toBe('mains');
  expect(written(['waters', 'mains', 'pH'], { kind: 'value' })).toBe('7.8');
  expect(written(['waters'], { kind: 'value' })).toMatch(/^mains: # tap[\s\S]*EC:$/);
  expect(written(['log', 1, 'on'], { kind: 'value' })).toBe('2027-03-02');
  expect(written(['log', 0], { kind: 'value' })).toBe('{ on: 2027-03-01 }');
  expect(written(['log', 2], { kind: 'value' })).toBeUndefined();
});

test('Equal keys are told apart by their number', () => {
  expect(rangeOf(document, { path: ['mains'], part: { kind: 'key', nth: 1 } })?.from).toBe(text.lastIndexOf('mains'));
});

test('A slice is found through quotes, escapes and folded lines', () => {
  const slice = (key: string, from: number, to: number) =>
    written(['waters', 'mains', key], { kind: 'slice', from, to });
  expect(slice('note', 2, 5)).toBe('\\"b\\"');
  expect(slice('note', 6, 8)).toBe('\\u00e9n');
  expect(slice('name', 2, 5)).toBe("''s ");
  expect(slice('more', 12, 14)).toBe('go');
  expect(slice('lines', 6, 8)).toBe('🌱');
  expect(slice('lines', 9, 15)).toBe('second');
});

test('What is not written is shown at the nearest key', () => {
  const nearest = (path: Path) => {
    const range = nearestRange(document, { path, part: { kind: 'value' } });
    return text.slice(range.from, range.to);
  };
  expect(nearest(['waters', 'mains', 'alkalinity'])).toBe('mains');
  expect(nearest(['waters', 'mains', 'EC'])).toBe('EC');
  expect(nearest(['waters', 'rain', 'pH'])).toBe('waters');
  expect(nearest(['feeds', 'green'])).toBe('recipe: 1');
});
