// What is generated is up to date: the generators run in memory and their texts are compared with the files.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { generated, stale } from '../../.ci/generate.ts';
import { root } from './source.ts';

const files = generated(root);

test('every generated file is what its source would give', () => {
  expect(stale(root, files)).toEqual([]);
});

test('the generators make the schema, the pages and a page for each finding', () => {
  const made = [...files.keys()];
  expect(made).toContain('schema/grow-recipe.schema.json');
  expect(made.filter(path => path.startsWith('schema/reference/findings/')).length).toBeGreaterThan(30);
  for (const text of files.values()) expect(text.length).toBeGreaterThan(200);
});

test('a changed, a missing and a left-over file are seen', () => {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-stale-'));
  const pages = join(folder, 'schema', 'reference', 'findings');
  mkdirSync(pages, { recursive: true });
  writeFileSync(join(pages, 'same.md'), 'same');
  writeFileSync(join(pages, 'changed.md'), 'before');
  writeFileSync(join(pages, 'left-over.md'), 'old');
  const made = new Map(
    ['same', 'changed', 'missing'].map(name => [`schema/reference/findings/${name}.md`, name] as const),
  );
  expect(stale(folder, made).map(path => path.slice('schema/reference/findings/'.length))).toEqual([
    'changed.md',
    'missing.md',
    'left-over.md',
  ]);
  rmSync(folder, { recursive: true });
});
