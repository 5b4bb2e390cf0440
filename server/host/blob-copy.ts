// Git hands a converter of diffs a copy of a file in the temporary folder. What the file uses lies beside the file itself, so this finds
// where the copy came from.

import { basename, dirname, join } from 'node:path';
import { pathInRepository, pathOfText, repositoryOf } from './git.ts';

/**
 * The path from which git took a copy; undefined where a path is no such copy. Where nothing tells, the file's name in the current
 * folder, which is the root of the repository when git runs a converter.
 */
export function originOfCopy(path: string, cwd: string): string | undefined {
  const name = nameOfCopy(path);
  if (name === undefined) return undefined;
  const repository = repositoryOf(cwd);
  if ('kind' in repository || pathInRepository(repository, path) !== undefined) return undefined;
  const found = pathOfText(repository, path, name);
  return join(repository.root, found ?? name);
}

/** Git calls copies `git-blob-XXXXXX/NAME`; before version 2.34 `XXXXXX_NAME`. */
function nameOfCopy(path: string): string | undefined {
  if (/^git-blob-\w{6}$/u.test(basename(dirname(path)))) return basename(path);
  return /^\w{6}_(?<name>.+)$/u.exec(basename(path))?.groups?.name;
}
