// What git shows of a recipe when `tidemark plan` converts it for comparisons: the set-up of two lines, with the bundled program.

import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import * as esbuild from 'esbuild';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { bundles, options } from '../../.ci/bundles.ts';
import { repository } from './repository.ts';

const bin = mkdtempSync(join(tmpdir(), 'tidemark-bin-'));
const program = join(bin, 'tidemark');

beforeAll(async () => {
  const needed = bundles.filter(({ outfile }) => outfile.includes('cli'));
  await Promise.all(
    needed.map(bundle =>
      esbuild.build({ ...options(bundle), outfile: join(bin, bundle.outfile.replace('dist/', '')) }),
    ),
  );
  writeFileSync(program, `#!/bin/sh\nexec "${process.execPath}" "${join(bin, 'cli.cjs')}" "$@"\n`);
  chmodSync(program, 0o755);
}, 60_000);

afterAll(() => rmSync(bin, { recursive: true, force: true }));

beforeEach(() => {
  vi.stubEnv('PATH', `${bin}${delimiter}${process.env.PATH ?? ''}`);
});
afterEach(() => vi.unstubAllEnvs());

const shelf = 'recipe: 1\nfeeds:\n  stem: { label: 2 mL/L }\ntools:\n  syringe: { smallest: 0.5 mL, largest: 10 mL }\n';
const cress = `# Cress on the sill of the yard window, from the first thaw on.
recipe: 1
use: [./shelf.grow.yaml]
batches:
  first:
    feed: { stem: label } # by the label
    volume: 20 L
`;
const folder = 'Küche und Hof';

/** A repository set up as the README says, with one commit of two recipes in a folder whose name is not plain. */
function converting() {
  const made = repository({
    '.gitattributes': '*.grow.yaml diff=grow-recipe\n',
    [`${folder}/cress.grow.yaml`]: cress,
    [`${folder}/shelf.grow.yaml`]: shelf,
  });
  made.git('config', 'diff.grow-recipe.textconv', 'tidemark plan --fail-on never --format text');
  made.commit();
  return made;
}

/** The changed lines alone, without git's own heads. */
function changedLines(diff: string): readonly string[] {
  return diff.split('\n').filter(line => /^[+-](?![+-]{2} )/u.test(line));
}

const amounts = [
  '-  volume            20 L',
  '+  volume            10 L',
  '-    stem            40 mL = 4 × 10 mL syringe',
  '+    stem            20 mL = 2 × 10 mL syringe',
];

test('git diff tells amounts in place of lines, from the working tree and from any folder', () => {
  const { put, git } = converting();
  put({ [`${folder}/cress.grow.yaml`]: cress.replace('20 L', '10 L') });
  expect(changedLines(git('diff'))).toEqual(expect.arrayContaining(amounts));
  expect(changedLines(git('-C', folder, 'diff', '.'))).toEqual(expect.arrayContaining(amounts));
}, 60_000);

test('git log -p and git show tell them of commits', () => {
  const { put, commit, git } = converting();
  put({ [`${folder}/cress.grow.yaml`]: cress.replace('20 L', '10 L') });
  commit();
  expect(changedLines(git('log', '-p', '-1'))).toEqual(expect.arrayContaining(amounts));
  expect(changedLines(git('show', 'HEAD'))).toEqual(expect.arrayContaining(amounts));
}, 60_000);

test('a renamed file is compared with itself, and a copy in another folder with its own shelf', () => {
  const { put, commit, git } = converting();
  git('mv', `${folder}/cress.grow.yaml`, 'porch.grow.yaml');
  put({ 'porch.grow.yaml': cress.replace('20 L', '10 L').replace('./shelf', `./${folder}/shelf`) });
  commit();
  const shown = git('show', 'HEAD');
  expect(shown).toContain('rename to porch.grow.yaml');
  expect(changedLines(shown)).toEqual(expect.arrayContaining(amounts));
}, 60_000);

test('a comment changes nothing that is shown, and nothing tells of this machine', () => {
  const { put, commit, git } = converting();
  put({ [`${folder}/cress.grow.yaml`]: `# by the window\n${cress}` });
  commit();
  expect(changedLines(git('show', 'HEAD'))).toEqual([]);
  const all = git('log', '-p');
  expect(all).not.toContain(tmpdir());
  expect(all).not.toContain('git-blob');
}, 60_000);

test('the same recipe gives the same lines, each a fact', () => {
  const { folder: root } = converting();
  const plan = () =>
    spawnSync(program, ['plan', '--format', 'text', `${folder}/cress.grow.yaml`], { cwd: root, encoding: 'utf8' })
      .stdout;
  expect(plan()).toBe(plan());
  expect(plan()).toMatch(/^ {2}volume +20 L$/mu);
}, 60_000);

test('what is no recipe does not stop git', () => {
  const { put, git } = converting();
  put({ [`${folder}/cress.grow.yaml`]: '<<<<<<< ours\n\0' });
  expect(git('diff')).toContain('not-yaml');
}, 60_000);
