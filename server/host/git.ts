// Reads from a git repository through the `git` program: what a file held at a revision, which files were moved since one. Nothing is ever
// written, and what keeps it from answering is a value, not an exception.

import { spawnSync } from 'node:child_process';
import { isAbsolute, relative, resolve, sep } from 'node:path';

export interface Repository {
  /** The folder that holds everything. */
  readonly root: string;
}

export interface GitTrouble {
  readonly kind: 'trouble';
  readonly why: 'no-git' | 'no-repository' | 'no-commits' | 'no-revision' | 'no-file' | 'failed';
  /** For the one who asked, without a full stop. */
  readonly says: string;
}

/** A file as a revision holds it. */
export interface BlobEntry {
  /** From the root of the repository, with forward slashes. */
  readonly path: string;
  readonly id: string;
}

/** A commit, by the name that the reader gave it. */
export interface Revision {
  readonly kind: 'revision';
  readonly name: string;
  readonly commit: string;
}

/** The repository round a folder. */
export function repositoryOf(folder: string): Repository | GitTrouble {
  const found = git(folder, ['rev-parse', '--show-toplevel']);
  if (found.kind === 'trouble') return found;
  if (found.code === 0) return { root: resolve(textOf(found.out).replace(/\r?\n$/u, '')) };
  if (/not a git repository/iu.test(found.err)) return trouble('no-repository', `${folder} is in no git repository`);
  return trouble('failed', firstLine(found.err));
}

/** The commit that a revision names: a branch, a tag, `HEAD~2`, a hash. */
export function revisionOf({ root }: Repository, name: string): Revision | GitTrouble {
  const none = trouble('no-revision', `there is no revision ${name}`);
  if (name === '' || name.startsWith('-')) return none;
  const found = git(root, ['rev-parse', '--verify', '--quiet', `${name}^{commit}`]);
  if (found.kind === 'trouble') return found;
  if (found.code === 0) return { kind: 'revision', name, commit: textOf(found.out).trim() };
  const head = git(root, ['rev-parse', '--verify', '--quiet', 'HEAD^{commit}']);
  if (head.kind === 'ran' && head.code !== 0) return trouble('no-commits', 'the repository has no commits yet');
  return none;
}

/** Every file below a folder at a revision; the empty path is the root. Links and submodules are no files. */
export function filesAt({ root }: Repository, { commit }: Revision, folder = ''): readonly BlobEntry[] | GitTrouble {
  const within = folder === '' ? [] : ['--', folder];
  const found = git(root, ['ls-tree', '-r', '-z', '--full-tree', commit, ...within]);
  if (found.kind === 'trouble') return found;
  if (found.code !== 0) return trouble('failed', firstLine(found.err));
  return textOf(found.out)
    .split('\0')
    .flatMap(line => {
      const parsed = /^100(?:644|755|664) blob (?<id>[0-9a-f]+)\t(?<path>[\s\S]*)$/u.exec(line)?.groups;
      return parsed?.id === undefined || parsed.path === undefined ? [] : [{ path: parsed.path, id: parsed.id }];
    });
}

/** What files hold, by their ids. All are read by one process. */
export function blobs({ root }: Repository, ids: readonly string[]): ReadonlyMap<string, Uint8Array> | GitTrouble {
  if (ids.length === 0) return new Map();
  const found = git(root, ['cat-file', '--batch'], `${[...new Set(ids)].join('\n')}\n`);
  if (found.kind === 'trouble') return found;
  if (found.code !== 0) return trouble('failed', firstLine(found.err));
  return readBatch(found.out);
}

function readBatch(out: Buffer): ReadonlyMap<string, Uint8Array> {
  const read = new Map<string, Uint8Array>();
  for (let at = 0; at < out.length; ) {
    const end = out.indexOf('\n', at);
    if (end === -1) break;
    const [id = '', kind, size] = out.subarray(at, end).toString('latin1').split(' ');
    at = end + 1;
    // `ID missing` has nothing behind its line.
    if (size === undefined) continue;
    const length = Number(size);
    if (kind === 'blob') read.set(id, out.subarray(at, at + length));
    at += length + 1;
  }
  return read;
}

/** What one file held at a revision. */
export function fileAt(repository: Repository, revision: Revision, path: string): Uint8Array | GitTrouble {
  const none = trouble('no-file', `${path} is not in ${revision.name}`);
  const listed = filesAt(repository, revision, path);
  if ('kind' in listed) return listed;
  const entry = listed.find(one => one.path === path);
  if (entry === undefined) return none;
  const read = blobs(repository, [entry.id]);
  return 'kind' in read ? read : (read.get(entry.id) ?? none);
}

/** The files that git takes for moved, old names by new ones: from a revision to another, or to the working tree. */
export function movedSince(
  { root }: Repository,
  { commit }: Revision,
  until?: Revision,
): ReadonlyMap<string, string> | GitTrouble {
  const ends = until === undefined ? [commit] : [commit, until.commit];
  const found = git(root, ['diff', '--name-status', '-z', '-M', '--diff-filter=R', '--no-ext-diff', ...ends, '--']);
  if (found.kind === 'trouble') return found;
  if (found.code !== 0) return trouble('failed', firstLine(found.err));
  // A letter with its likeness, the old name, the new name.
  const words = textOf(found.out).split('\0');
  const moved = new Map<string, string>();
  for (let at = 0; at + 2 < words.length; at += 3) moved.set(words[at + 2] ?? '', words[at + 1] ?? '');
  return moved;
}

/**
 * The path that a text has in a repository, or once had: the tracked file that holds it, the only tracked file of its name, or a path
 * of its name in history. The text is read from a file.
 */
export function pathOfText({ root }: Repository, file: string, name: string): string | undefined {
  const hashed = git(root, ['hash-object', '--no-filters', '--', file]);
  const listed = git(root, ['ls-files', '--stage', '-z']);
  if (hashed.kind === 'trouble' || listed.kind === 'trouble') return undefined;
  const id = textOf(hashed.out).trim();
  const tracked = textOf(listed.out)
    .split('\0')
    .map(line => /^\d+ ([0-9a-f]+) \d\t([\s\S]+)$/u.exec(line) ?? [])
    .map(([, blob, path]) => ({ id: blob, path }))
    .filter(({ path }) => isNamed(path, name));
  const [only, ...others] = tracked;
  const same = tracked.find(one => one.id === id) ?? (others.length === 0 ? only : undefined);
  if (same?.path !== undefined) return same.path;
  const found = git(root, ['log', '--all', '--format=', '--name-only', '-z', `--find-object=${id}`]);
  if (found.kind === 'trouble') return undefined;
  return textOf(found.out)
    .split('\0')
    .map(path => path.replace(/^\n/u, ''))
    .find(path => isNamed(path, name));
}

function isNamed(path: string | undefined, name: string): boolean {
  return path === name || path?.endsWith(`/${name}`) === true;
}

/** A path as git names it, from the root and with forward slashes; undefined for one outside the repository. */
export function pathInRepository({ root }: Repository, path: string): string | undefined {
  const way = relative(root, path);
  if (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way)) return undefined;
  return way.split(sep).join('/');
}

type Ran = { readonly kind: 'ran'; readonly code: number; readonly out: Buffer; readonly err: string };

/** Runs git without a shell. Messages are asked for in English, since some are looked at; names come as they are. */
export function git(cwd: string, args: readonly string[], input = ''): Ran | GitTrouble {
  const { error, status, stdout, stderr } = spawnSync(
    'git',
    ['--literal-pathspecs', '-c', 'core.quotePath=false', ...args],
    {
      cwd,
      input,
      maxBuffer: mostOutput,
      windowsHide: true,
      env: { ...process.env, LC_ALL: 'C', GIT_OPTIONAL_LOCKS: '0', GIT_TERMINAL_PROMPT: '0' },
    },
  );
  if (error !== undefined) {
    const isAbsent = 'code' in error && error.code === 'ENOENT';
    return isAbsent
      ? trouble('no-git', 'the program git is not found')
      : trouble('failed', `git cannot be run (${error.message})`);
  }
  return { kind: 'ran', code: status ?? 1, out: stdout, err: textOf(stderr) };
}

const mostOutput = 1 << 29;

function trouble(why: GitTrouble['why'], says: string): GitTrouble {
  return { kind: 'trouble', why, says };
}

function textOf(bytes: Buffer): string {
  return bytes.toString('utf8');
}

export function firstLine(err: string): string {
  const [line = ''] = err.trim().split('\n');
  return line === '' ? 'git failed' : line.replace(/^(?:fatal|error): /u, 'git says: ');
}
