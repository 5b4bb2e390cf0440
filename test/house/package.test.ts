// What is shipped: exactly the files that are meant, small, and whole.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const vsce = join(root, 'node_modules', '.bin', 'vsce');
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

const shipped = [
  'CHANGELOG.md',
  'LICENSE',
  'README.md',
  'client/icons/recipe-dark.svg',
  'client/icons/recipe-light.svg',
  'client/icons/tidemark.png',
  'client/language/configuration.json',
  'client/language/grow-recipe.tmLanguage.json',
  'client/language/snippets.json',
  'dist/cli-main.cjs',
  'dist/cli-thread.cjs',
  'dist/cli.cjs',
  'dist/client.cjs',
  'dist/client.cjs.js',
  'dist/package.json',
  'dist/server.cjs',
  'dist/third-party.txt',
  'package.json',
  'schema/grow-recipe.schema.json',
];

let folder = '';
let vsix = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-package-'));
  vsix = join(folder, 'tidemark.vsix');
  // The bundles are not built here, since other tests run them at the same time: `npm run build` comes first.
  const flags = ['--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links'];
  execFileSync(vsce, ['package', ...flags, '--out', vsix], { cwd: root, stdio: 'pipe' });
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('the package holds the programs, the language and the schema, and nothing of the sources or tests', () => {
  const listed = execFileSync(vsce, ['ls', '--no-dependencies'], { cwd: root, encoding: 'utf8' });
  expect(listed.trim().split('\n').sort()).toEqual(shipped);
}, 120_000);

test('the package stays under 700 kB', () => {
  expect(statSync(vsix).size).toBeLessThan(700_000);
});

test('every file that the manifest names is shipped', () => {
  const named = JSON.stringify(manifest).match(/"(?:\.\/)?(?:client|dist|schema)\/[^"]*\.\w+"/g) ?? [];
  const files = named.map(text => text.replace(/^"(?:\.\/)?|"$/g, ''));
  expect(files.length).toBeGreaterThan(5);
  for (const file of files) expect(shipped).toContain(file);
});

test('the bundles need no other module', () => {
  for (const [bundle, provided] of [
    ['dist/client.cjs', ['./client.cjs.js']],
    ['dist/client.cjs.js', ['vscode']],
    ['dist/server.cjs', []],
    ['dist/cli.cjs', []],
    ['dist/cli-thread.cjs', []],
    ['dist/cli-main.cjs', ['./server.cjs']],
  ] as const) {
    const required = [...readFileSync(join(root, bundle), 'utf8').matchAll(/\brequire\("([^"]+)"\)/g)].flatMap(
      ([, name]) => name ?? [],
    );
    const foreign = required.filter(name => !builtinModules.includes(name.replace(/^node:/, '')));
    expect([...new Set(foreign)]).toEqual(provided);
  }
});
