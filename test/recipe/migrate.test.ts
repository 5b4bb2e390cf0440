// The way from version to version, tried with an invented table: the format has one version so far.

import { expect, test } from 'vitest';
import { type Migration, migrate } from '../../server/recipe/migrate.ts';
import { openDocument } from '../../server/syntax/document.ts';

const invented: readonly Migration[] = [
  {
    from: 1,
    to: 2,
    says: 'The title is called `name`.',
    edits: () => [{ kind: 'rename', path: ['title'], key: 'name' }],
  },
  {
    from: 2,
    to: 3,
    says: 'The start is not written any more.',
    edits: () => [{ kind: 'remove', path: ['start'] }],
  },
];

const old = `# Kept.\r\nrecipe: 1   # so is this\r\ntitle: 'Sorrel'\r\nstart: 2027-02-01\r\n\r\nx-note:   1.10\r\n`;

test('each step is taken in turn, and only what must change does', () => {
  expect(migrate(openDocument(old), invented, 3)).toEqual({
    kind: 'migrated',
    from: 1,
    says: ['The title is called `name`.', 'The start is not written any more.'],
    text: `# Kept.\r\nrecipe: 3   # so is this\r\nname: 'Sorrel'\r\n\r\nx-note:   1.10\r\n`,
  });
});

test('from the middle only what is left', () => {
  const from2 = openDocument('recipe: 2\nname: Sorrel\nstart: 2027-02-01\n');
  expect(migrate(from2, invented, 3)).toMatchObject({ from: 2, text: 'recipe: 3\nname: Sorrel\n' });
});

test('the newest stays, a later one is told apart, and so is one that says no version', () => {
  expect(migrate(openDocument('recipe: 3\n'), invented, 3)).toEqual({ kind: 'newest' });
  expect(migrate(openDocument('recipe: 4\n'), invented, 3)).toEqual({ kind: 'later', version: 4 });
  for (const text of ['', 'title: a\n', 'recipe:\n', 'recipe: 1.5\n', 'recipe: 0\n', "recipe: '1'\n", 'recipe: [1]\n'])
    expect(migrate(openDocument(text), invented, 3)).toEqual({ kind: 'unversioned' });
});

test('a hole in the table is a defect of ours, not of the recipe', () => {
  expect(() => migrate(openDocument('recipe: 1\n'), invented.slice(1), 3)).toThrow('no way from version 1');
});
