import { expect, test } from 'vitest';
import { applyChange, openDocument, textOf } from '../../server/syntax/document.ts';
import { offsetAt, positionAt } from '../../server/syntax/position.ts';

const shelf =
  'recipe: 1\nfeeds:\n  green: { label: 2 mL/L }\n  blue: { label: 3 mL/L }\nlog:\n- { on: 2027-03-01 }\n- { on: 2027-03-02 }\n';

/** The entries of a text, each as its base and its first line. */
function checkCut(text: string): readonly string[] {
  return openDocument(text).entries.map(entry => `${entry.base.join('/')}> ${entry.text.split('\n')[0]}`);
}

test('A section is cut at its children, a list at its own key too', () => {
  expect(checkCut(shelf)).toEqual([
    '> recipe: 1',
    '> feeds:',
    'feeds>   green: { label: 2 mL/L }',
    'feeds>   blue: { label: 3 mL/L }',
    '> log:',
    'log> - { on: 2027-03-01 }',
    'log> - { on: 2027-03-02 }',
  ]);
});

test('Comments and blank lines belong to the entry above them, those at the top to the first', () => {
  expect(openDocument('# top\n\na:\n  b: 1\n  # about c\n\n  c: 2\n').entries.map(entry => entry.text)).toEqual([
    '# top\n\na:\n',
    '  b: 1\n  # about c\n\n',
    '  c: 2\n',
  ]);
});

test('A value over several lines is no section', () => {
  expect(checkCut('title:\n  Reading room\n  greens\nuse: 1\n')).toEqual(['> title:', '> use: 1']);
  expect(checkCut('title:\n  "a: 1\n  b: 2"\n')).toEqual(['> title:']);
});

test('A file with document marks, or with anchors that something repeats, is one entry', () => {
  expect(checkCut(`---\n${shelf}`)).toEqual(['> ---']);
  expect(checkCut('a:\n  b: &x 1\nc: *x\n')).toEqual(['> a:']);
  expect(checkCut('a:\n  b: &x 1\nc: 1\n')).toHaveLength(3);
  expect(checkCut('{\na: 1,\nb: 2 }\n')).toEqual(['> {']);
});

test('After a key is typed in one entry all others are the same objects', () => {
  const before = openDocument(shelf);
  const at = shelf.indexOf('3 mL');
  const after = applyChange(before, { from: at, to: at + 1, text: '4' });
  expect(textOf(after)).toBe(shelf.replace('3 mL', '4 mL'));
  expect(after.entries.map((entry, index) => entry === before.entries[index])).toEqual([
    true,
    true,
    true,
    false,
    true,
    true,
    true,
  ]);
});

test('A line put in moves the entries after it and makes none of them anew', () => {
  const before = openDocument(shelf);
  const at = shelf.indexOf('  blue');
  const after = applyChange(before, { from: at, to: at, text: '  red: {}\n' });
  expect(after.entries).toHaveLength(before.entries.length + 1);
  expect(after.entries.filter(entry => !before.entries.includes(entry)).map(entry => entry.text)).toEqual([
    '  red: {}\n',
  ]);
});

test('A brace left open while typing leaves the entries beside it alone', () => {
  const before = openDocument(shelf);
  const at = shelf.indexOf(' }\n  blue');
  const after = applyChange(before, { from: at, to: at + 2, text: '' });
  expect(after.entries[3]).toBe(before.entries[3]);
  expect(after.entries[2]?.notes).toHaveLength(1);
});

test('Columns count in the encoding asked for, and CRLF ends a line where a lone CR does not', () => {
  const document = openDocument('\uFEFFa: é🌱x\r\nb: 1\rc\r\n');
  const x = 7;
  expect(positionAt(document, x, 'utf-16')).toEqual({ line: 0, character: 7 });
  expect(positionAt(document, x, 'utf-32')).toEqual({ line: 0, character: 6 });
  expect(positionAt(document, x, 'utf-8')).toEqual({ line: 0, character: 12 });
  expect(positionAt(document, 15)).toEqual({ line: 1, character: 5 });
  expect(offsetAt(document, { line: 0, character: 99 })).toBe(8);
  expect(offsetAt(document, { line: 0, character: 6 }, 'utf-16')).toBe(5);
  expect(offsetAt(document, { line: 9, character: 0 })).toBe(document.length);
});
