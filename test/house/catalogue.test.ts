// The catalogue of findings is whole: every code has its row, its check (by type, and as a file of its name), its example and its page.

import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type FindingCode, findingRow, findings } from '../../schema/findings.ts';
import { exampleCodes } from '../findings/example.ts';

const root = join(import.meta.dirname, '../..');
const codes = Object.keys(findings) as readonly FindingCode[];

test('every finding has an example, and every example is of a finding', () => {
  expect([...exampleCodes()].sort()).toEqual([...codes].sort());
});

test('every check stands in a file named by its code', () => {
  const checked = codes.filter(code => findingRow(code).from === 'check');
  const files = readdirSync(join(root, 'server/checks'));
  expect(checked.filter(code => !files.includes(`${code}.ts`))).toEqual([]);
});

test('every finding has a page', () => {
  const missing = codes.filter(code => !existsSync(join(root, `schema/reference/findings/${code}.md`)));
  expect(missing).toEqual([]);
});

test('what may hurt says so', () => {
  const hurting = codes.filter(code => /acid|adjuster|vessel-overfilled/u.test(code));
  expect(hurting.filter(code => findingRow(code).caution === undefined)).toEqual([]);
});
