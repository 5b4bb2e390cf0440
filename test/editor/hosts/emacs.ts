// Emacs with eglot, without a screen, set up by the lines that the README gives. Used where it is on the machine and never installed
// from here.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Result } from '../suite/test.ts';

const here = import.meta.dirname;
const longest = 120_000;

export function runEmacs(home: string, extension: string): readonly Result[] {
  const folder = join(home, 'emacs', 'recipes');
  cpSync(join(here, '..', 'recipes'), folder, { recursive: true });
  const env = {
    ...process.env,
    // Nobody's own settings and packages count.
    HOME: join(home, 'emacs'),
    TIDEMARK_SETUP: join(home, 'emacs', 'setup.el'),
    TIDEMARK_RESULTS: join(home, 'emacs', 'results.json'),
  };
  const emacs = (...args: readonly string[]) =>
    spawnSync('emacs', ['--batch', ...args], { cwd: folder, encoding: 'utf8', timeout: longest, env });
  const hasEglot = emacs('--eval', "(progn (require 'package) (package-initialize) (require 'eglot))");
  if (hasEglot.error !== undefined || hasEglot.status !== 0) {
    process.stdout.write('Emacs tests skipped: there is no Emacs with eglot on this machine\n');
    return [];
  }
  writeFileSync(env.TIDEMARK_SETUP, readmeSetup([process.execPath, join(extension, 'dist', 'cli.cjs')]));
  const { stdout, stderr } = emacs('-l', join(here, 'emacs', 'suite.el'));
  if (!existsSync(env.TIDEMARK_RESULTS)) {
    const failure = `${stdout}${stderr}` || 'it did not end';
    return [{ name: 'Emacs: the suite runs', failure, milliseconds: longest }];
  }
  const told: readonly Result[] = JSON.parse(readFileSync(env.TIDEMARK_RESULTS, 'utf8'));
  process.stdout.write(`Emacs tests run in ${emacs('--version').stdout.split('\n')[0] ?? 'Emacs'}\n`);
  return told.map(result => ({ ...result, name: `Emacs: ${result.name}` }));
}

/** The lines of the README, with the command as it stands in the package. */
function readmeSetup(command: readonly string[]): string {
  const readme = readFileSync(join(here, '..', '..', '..', 'README.md'), 'utf8');
  const lines = /```elisp\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
  return lines.replace('"tidemark"', command.map(word => JSON.stringify(word)).join(' '));
}
