// Which files Git says have changed since a revision. Apart from reading what they held, because it asks for names only.

import { firstLine, type GitTrouble, git, repositoryOf, revisionOf } from './git.ts';

export type Changed =
  /** From the root of the repository, with forward slashes. */
  { readonly kind: 'changed'; readonly names: readonly string[] } | GitTrouble;

/**
 * All files of the repository round a folder that differ from where a revision and this branch parted, in what is committed or not yet;
 * those that are gone and those that Git does not know yet included.
 */
export function changedSince(name: string, folder: string): Changed {
  const repository = repositoryOf(folder);
  if ('kind' in repository) return repository;
  const revision = revisionOf(repository, name);
  if (revision.kind === 'trouble') return revision;
  const { root } = repository;
  const parted = git(root, ['merge-base', revision.commit, 'HEAD']);
  if (parted.kind === 'trouble') return parted;
  // A shallow clone may not hold where they parted.
  const from = parted.code === 0 ? parted.out.toString('utf8').trim() : revision.commit;
  // A moved file goes by both names: whoever used the old one is touched too.
  const known = git(root, ['diff', '--name-only', '-z', '--no-renames', '--no-ext-diff', from, '--']);
  if (known.kind === 'trouble') return known;
  const unknown = git(root, ['ls-files', '--others', '--exclude-standard', '-z']);
  if (unknown.kind === 'trouble') return unknown;
  for (const ran of [known, unknown])
    if (ran.code !== 0) return { kind: 'trouble', why: 'failed', says: firstLine(ran.err) };
  const names = `${known.out.toString('utf8')}${unknown.out.toString('utf8')}`.split('\0').filter(one => one !== '');
  return { kind: 'changed', names: [...new Set(names)] };
}
