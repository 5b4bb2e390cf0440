// Repositories made by Git itself, in folders of their own, for the tests of what reads them.

import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { folderWith } from './run-cli.ts';

export interface TestRepository {
  readonly folder: string;
  /** Writes files, or takes away those that are null. */
  put(files: Readonly<Record<string, string | null>>): void;
  /** Commits all there is and gives the commit. */
  commit(): string;
  git(...args: string[]): string;
}

export function repository(files: Readonly<Record<string, string>> = {}): TestRepository {
  const folder = folderWith({});
  rmSync(join(folder, '.git'), { recursive: true });
  const env = { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1' };
  const git = (...args: string[]): string =>
    execFileSync('git', ['-c', 'user.name=A Grower', '-c', 'user.email=grower@example.org', ...args], {
      cwd: folder,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      env,
    }).trim();
  const put: TestRepository['put'] = changed => {
    for (const [path, text] of Object.entries(changed)) {
      const at = join(folder, path);
      mkdirSync(dirname(at), { recursive: true });
      if (text === null) rmSync(at);
      else writeFileSync(at, text);
    }
  };
  git('init', '--quiet', '--initial-branch', 'main');
  put(files);
  return {
    folder,
    put,
    git,
    commit() {
      git('add', '--all');
      git('commit', '--quiet', '--allow-empty', '--message', 'A change.');
      return git('rev-parse', 'HEAD');
    },
  };
}
