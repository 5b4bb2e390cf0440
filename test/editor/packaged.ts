// The package under test. It stands apart because tests, pictures and desktop runs must all take the same file.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const root = join(import.meta.dirname, '..', '..');

/** Builds the package and returns its path; the environment variable TIDEMARK_VSIX names one that is built already. */
export function packaged(): string {
  const built = process.env.TIDEMARK_VSIX;
  if (built) return resolve(built);
  execFileSync('npm', ['run', '--silent', 'package'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return join(root, `${name}-${version}.vsix`);
}
