import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { parseDocument } from 'yaml';
import { coreValue } from '../../server/syntax/core-value.ts';
import { openDocument } from '../../server/syntax/document.ts';
import { readText } from '../../server/syntax/read-text.ts';
import { readUsual } from '../../server/syntax/read-usual.ts';
import { readYaml } from '../../server/syntax/read-yaml.ts';
import { openQuoteAt } from '../../server/syntax/tokens.ts';
import { makeRecipe } from '../bench/make-recipe.ts';
import { sample, shelf } from '../fuzz/sample.ts';
import { change, oddText, soundText } from './odd-text.ts';

vi.setConfig({ testTimeout: 120_000 });

/** Whether a text is read the fast way; if it is, as the `yaml` package reads it. */
function isRead(text: string): boolean {
  const tree = readUsual(text);
  if (tree === undefined) return false;
  expect({ tree, notes: [] }, JSON.stringify(text)).toStrictEqual(readYaml(text));
  return true;
}

/** How many of some texts and of the entries of each are read the fast way. */
function readAmong(texts: fc.Arbitrary<string>, numRuns: number): number {
  let read = 0;
  fc.assert(
    fc.property(texts, text => {
      for (const part of [text, ...openDocument(text).entries.map(entry => entry.text)]) if (isRead(part)) read++;
    }),
    { numRuns },
  );
  return read;
}

const folder = join(import.meta.dirname, '..', '..', 'samples');
const samples = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter(path => path.endsWith('.grow.yaml'))
  .map(path => readFileSync(join(folder, path), 'utf8'));

test('Every entry of the samples and of drawn recipes is read the fast way, whatever its line breaks', () => {
  const texts = [...samples, shelf, makeRecipe(200), makeRecipe(1000, 7)];
  expect(texts.length).toBeGreaterThan(9);
  for (const text of texts.flatMap(one => [one, one.replaceAll(/\r?\n/g, '\r\n')])) {
    const left = openDocument(text).entries.filter(entry => !isRead(entry.text));
    expect(left.map(entry => entry.text)).toEqual([]);
  }
});

const usual = [
  '', '\n', '# note', '# note\r\n\n  # more\n', 'a:', 'a: ', 'a:  # note\n', 'a:\n\n# note\nb: 1', 'a: 1 # note', 'a: x#y', 'a: x:y#z', "'a': \"b: c # d\"", 'a: "°C 🌿"',
  'a: -0', 'a: 0o17\nb: 0xFf\nc: 1_000\nd: 1.10\ne: 2027-02-01\nf: .inf\ng: -.INF\nh: .nan\ni: ~\nj: Null\nk: TRUE\nl: 1e999\nm: 123456789012345678901234567890', '7: seven', 'null: 1\n~: 2\ntrue: 3',
  'a:\n- 1\n- b: 2\n  c: 3\n-\n- - d\n  - e\nf: 4', 'a:\n  -\n  - # note\n  - x', '- a\n- b: 1\n', '  - a: 1\n    b:\n      c: 2\n', 'a:\n    b\n', 'a:\n  "b"\nc: 1', 'a:\n  { b: 1 }\n', '- { a: 1 }\n- [b]',
  'a: {}', 'a: []', 'a: [ ]', 'a: { b: 1, c: [2, { d: 3 }], }', 'a: {\n  b: 1, # note\n  c: 2\n  }\nd: 1', 'a: [\n    1,\n    2]', 'a: { b: x#y, "c": \'d, e\' }', '{ a: 1 }', '[a, b]', '<<: { a: 1 }', '---: 1', '...a: 1',
  '__proto__: { constructor: 1 }', 'a: b\\n', 'a: R & D', 'a: 5 * 3', 'a: wait!', 'a: ?x', 'a: -x', 'a: :x', 'a: a\u0085b\u2028c\u2029d\u00a0e', 'a: \u{10ffff}\ud800', 'a:b: c', 'a : b', "'': 1",
  `${'k'.repeat(900)}: 1`, `a: ${'['.repeat(50)}${']'.repeat(50)}`, `a: ${'{ b: '.repeat(50)}1${' }'.repeat(50)}`, '- '.repeat(60).concat('x'), 'a: { b: 50 % of label }', 'a: x"y\'z', 'a: [x y, -1]',
]; // biome-ignore format: a table

test.each(usual)('what is usual is read the fast way: %j', text => {
  expect(isRead(text)).toBe(true);
});

const unusual = [
  'a', '"a"', '- a\nb: 1', 'a: 1\na: 2', 'a: { b: 1, b: 2 }', 'a:\tb', '\ta: 1', '\uFEFFa: 1', 'a: 1\rb: 2', 'a: &x 1', 'a: *x', 'a: !!str 1', '--- \na: 1', 'a: 1\n...\n', '%YAML 1.2\n---\na: 1',
  '? a\n: b', ': a', 'a: |\n  b\n', 'a: >-\n  b\n', '|\n a', 'a: b\n  c', 'a: "b\n  c"', "a: 'b\n\n  c'", 'a: "\\u00e9"', "a: 'it''s'", 'a: "b', "a: 'b", 'a: "b" c', 'a: {b: 1', 'a: [1', 'a: {x}',
  'a: {\nb: 1}', 'a: [\n]', 'a: { b }', 'a: { b: }', 'a: [b: 1]', 'a: [,]', 'a: [1,,2]', 'a: { "b":1 }', 'a: { b: 1 } c', 'a: [1]#x', 'a: "b"#x', 'a: b: c', 'a: - b', 'a: @x', 'a: `x`', 'a: %x', 'a: , x',
  'a:\n  b: 1\n c: 2', ' a: 1\nb: 2', 'a: 1\n b: 2', '- a\n - b', 'a:\n  - 1\n - 2', 'a: {b: 1}\n  c: 2', '{a: 1}: b', '[a]: b', `${'k'.repeat(1100)}: 1`, `k${' '.repeat(1100)}: 1`, 'a: 1\nb\nc: 3',
  'a: [x, y z: 1]', 'a: [- 1]', 'a: {? b : c}', '<<<<<<< ours: 1', 'a: 1\n=======\nb: 2', `a: ${'['.repeat(70)}${']'.repeat(70)}`, '- '.repeat(80).concat('x'), `# ${'['.repeat(70)}`, 'a: [1\n  2]', '{ a: 1,\nb: 2 }',
]; // biome-ignore format: a table

test.each(unusual)('what is not usual is left to the package: %j', text => {
  expect(isRead(text)).toBe(false);
});

test('Whatever is read the fast way is read as the package reads it', () => {
  expect(readAmong(oddText, 3000)).toBeGreaterThan(500);
  expect(readAmong(soundText, 1000)).toBeGreaterThan(500);
});

test('That holds for changed recipes', () => {
  const changed = fc
    .tuple(fc.constantFrom(...samples, sample, makeRecipe(60)), fc.array(change, { minLength: 1, maxLength: 5 }))
    .map(([start, changes]) =>
      changes.reduce((text, one) => {
        const from = Math.floor(one.from * text.length);
        return text.slice(0, from) + one.text + text.slice(from + one.length);
      }, start),
    );
  expect(readAmong(changed, 300)).toBeGreaterThan(3000);
});

/** Signs that YAML gives a meaning, in sets that go together. */
const signSets = [
  ['a', ':', ' ', '\n', '-', '#'],
  ['a: ', 'b:', '\n', '  ', '- ', '#', ' #'],
  ['a: ', '{', '}', 'b: ', 'c', ',', '\n', ' '],
  ['a: ', '[', ']', 'b: ', 'c', ', ', '\n', ' '],
  ['a: ', '"', "'", 'b', '\\', '\n', ' ', '- '],
  ['a: ', '|', '>', '?', '&', '*', '!', '\n ', '\n'],
  ['---', '...', '%', 'a: 1', '\r\n', '\n', ' ', '- '],
];

test('That holds for every short text of the signs that YAML knows', () => {
  let read = 0;
  for (const signs of signSets) grow('', signs, 4);
  expect(read).toBeGreaterThan(1000);

  function grow(text: string, signs: readonly string[], left: number): void {
    if (isRead(text)) read++;
    if (left > 0) for (const sign of signs) grow(text + sign, signs, left - 1);
  }
});

test('That holds for longer texts of such signs', () => {
  const soups = signSets.map(signs => fc.array(fc.constantFrom(...signs), { minLength: 5, maxLength: 20 }));
  const soup = fc.oneof(...soups, fc.array(fc.constantFrom(...signSets.flat()), { minLength: 5, maxLength: 20 }));
  expect(
    readAmong(
      soup.map(signs => signs.join('')),
      6000,
    ),
  ).toBeGreaterThan(500);
});

test('No quote stays open in a text about which there is nothing to note', () => {
  const signs = fc.constantFrom(...signSets.flat(), "'", '"', "''", 'x');
  const texts = fc.oneof(
    oddText,
    fc.array(signs, { maxLength: 12 }).map(drawn => drawn.join('')),
  );
  let quiet = 0;
  const check = (text: string) => {
    if (readText(text).notes.length > 0) return;
    quiet++;
    expect(openQuoteAt(text), JSON.stringify(text)).toBe(undefined);
  };
  fc.assert(fc.property(texts, check), { numRuns: 4000 });
  expect(quiet).toBeGreaterThan(400);
});

test('A plain text means what it means to the package', () => {
  const parts = ['0', '1', '7', '9', '.', '-', '+', 'e', 'E', 'o', 'x', 'b', 'f', '_', 'inf', 'Inf', 'nan', 'NaN', 'null', 'Null', 'NULL', 'true', 'TRUE', 'yes', '~', 'False', ':', '0o', '0x']; // biome-ignore format: a table
  let numbers = 0;
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...parts), { minLength: 1, maxLength: 6 }), signs => {
      const text = signs.join('');
      const document = parseDocument(`- ${text}`, { schema: 'core' });
      const value = document.getIn([0]);
      if (document.errors.length > 0 || (typeof value === 'object' && value !== null)) return;
      const own = coreValue(text);
      expect(own, text).toBe(value);
      if (typeof own === 'number') numbers++;
    }),
    { numRuns: 5000 },
  );
  expect(numbers).toBeGreaterThan(100);
});
