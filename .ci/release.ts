// Makes a release: tests, version, heading of the change log, package, and a list of what is in it. Nothing is published; the
// commit and the tag are left to the person who releases.

import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');

/** The change log with what was unreleased under the version's own heading, and a new empty place above it. */
export function released(changelog: string, version: string, day: string): string {
  const [before, after] = changelog.split(/^## Unreleased$/m);
  if (before === undefined || after === undefined) throw new Error('CHANGELOG.md has no heading `## Unreleased`');
  const [notes = ''] = after.split(/^## /m);
  if (notes.trim() === '') throw new Error('nothing stands under `## Unreleased`');
  return `${before}## Unreleased\n\n## ${version} (${day})${after}`;
}

/** Whether a version stands behind another: 1.10.0 behind 1.9.3. */
export function isLater(version: string, than: string): boolean {
  const [a, b] = [version, than].map(text => text.split('.').map(Number));
  if (a?.length !== 3 || a.some(part => !Number.isInteger(part))) return false;
  const at = a.findIndex((part, index) => part !== b?.[index]);
  return at !== -1 && (a[at] ?? 0) > (b?.[at] ?? 0);
}

function release(version: string): void {
  const npm = (...args: string[]): void => {
    execFileSync('npm', args, { cwd: root, stdio: 'inherit' });
  };
  npm('test');
  const changelog = join(root, 'CHANGELOG.md');
  const day = new Date().toISOString().slice(0, 10);
  writeFileSync(changelog, released(readFileSync(changelog, 'utf8'), version, day));
  npm('version', version, '--no-git-tag-version');
  npm('run', 'package', '--', '--out', `tidemark-${version}.vsix`);
  execFileSync('npx', ['vsce', 'ls', '--no-dependencies'], { cwd: root, stdio: 'inherit' });
  process.stdout.write(`tidemark-${version}.vsix is made. Look at it, commit, and tag v${version}.\n`);
}

if (process.argv[1] === import.meta.filename) {
  const [version = ''] = process.argv.slice(2);
  const { version: current } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  if (isLater(version, current)) {
    release(version);
  } else {
    process.stderr.write(`usage: npm run release VERSION, where VERSION is later than ${current}\n`);
    process.exitCode = 2;
  }
}
