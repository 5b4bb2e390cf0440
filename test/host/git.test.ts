import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import {
  blobs,
  fileAt,
  filesAt,
  movedSince,
  pathInRepository,
  pathOfText,
  type Repository,
  type Revision,
  repositoryOf,
  revisionOf,
} from '../../server/host/git.ts';
import { repository } from '../cli/repository.ts';

afterEach(() => vi.unstubAllEnvs());

/** A repository with one commit, as our own reader of git sees it. */
function committed(files: Readonly<Record<string, string>>) {
  const made = repository(files);
  made.commit();
  return { ...made, root: known(repositoryOf(made.folder)), head: revision(known(repositoryOf(made.folder)), 'HEAD') };
}

function known(found: ReturnType<typeof repositoryOf>): Repository {
  if ('kind' in found) throw new Error(found.says);
  return found;
}

function revision(of: Repository, name: string): Revision {
  const found = revisionOf(of, name);
  if (found.kind === 'trouble') throw new Error(found.says);
  return found;
}

/** A folder that is in no repository. */
function bare(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'tidemark-git-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

describe('what a revision holds', () => {
  test('a file reads as it was committed, whatever the working tree says', () => {
    const { root, head, put } = committed({ 'a.grow.yaml': 'old\n' });
    put({ 'a.grow.yaml': 'new\n' });
    expect(Buffer.from(fileAt(root, head, 'a.grow.yaml') as Uint8Array).toString()).toBe('old\n');
  });

  test('names with spaces, accents, quotes, signs and strokes come as they are', () => {
    const names = [
      'Küche/süße Beeren.grow.yaml',
      '-a.grow.yaml',
      'it\'s "new" (1).grow.yaml',
      '[x]*?.grow.yaml',
      ':b.grow.yaml',
    ];
    const { root, head } = committed(Object.fromEntries(names.map(name => [name, name])));
    const listed = filesAt(root, head);
    if ('kind' in listed) throw new Error(listed.says);
    expect(listed.map(({ path }) => path).sort()).toEqual([...names].sort());
    for (const name of names) expect(Buffer.from(fileAt(root, head, name) as Uint8Array).toString()).toBe(name);
  });

  test('a folder lists what is below it', () => {
    const { root, head } = committed({ 'plots/a.grow.yaml': '1', 'plots-old/a.grow.yaml': '2' });
    expect(filesAt(root, head, 'plots')).toMatchObject([{ path: 'plots/a.grow.yaml' }]);
  });

  test('bytes stay bytes', () => {
    const { root, head } = committed({ 'a.grow.yaml': 'a\r\n\0\nÄ' });
    expect(fileAt(root, head, 'a.grow.yaml')).toEqual(Buffer.from('a\r\n\0\nÄ'));
  });

  test('many files are read at once, and one that is not there is left out', () => {
    const { root, head } = committed({ 'a.grow.yaml': 'a', 'b.grow.yaml': '' });
    const listed = filesAt(root, head);
    const ids = 'kind' in listed ? [] : listed.map(({ id }) => id);
    const read = blobs(root, [...ids, '0'.repeat(40), ...ids]);
    expect([...(read as Map<string, Buffer>).values()].map(String)).toEqual(['a', '']);
  });
});

describe('what keeps it from answering is said', () => {
  test('a folder in no repository', () => {
    expect(repositoryOf(bare())).toMatchObject({ kind: 'trouble', why: 'no-repository' });
  });

  test('no git', () => {
    vi.stubEnv('PATH', bare());
    expect(repositoryOf(bare())).toEqual({ kind: 'trouble', why: 'no-git', says: 'the program git is not found' });
  });

  test('a repository without commits', () => {
    const root = known(repositoryOf(repository().folder));
    expect(revisionOf(root, 'HEAD')).toMatchObject({ why: 'no-commits', says: 'the repository has no commits yet' });
  });

  test.each(['mian', '', '--all', 'HEAD~9', 'HEAD^{tree}', 'a b'])('a revision that does not exist: %s', name => {
    const { root } = committed({ 'a.grow.yaml': 'a' });
    expect(revisionOf(root, name)).toEqual({
      kind: 'trouble',
      why: 'no-revision',
      says: `there is no revision ${name}`,
    });
  });

  test.each(['b.grow.yaml', 'plots', 'plots/', '../a.grow.yaml'])('a file that is not in a revision: %s', path => {
    const { root, head } = committed({ 'a.grow.yaml': 'a', 'plots/a.grow.yaml': 'a' });
    expect(fileAt(root, head, path)).toMatchObject({ kind: 'trouble' });
  });
});

describe('what was moved', () => {
  test('between revisions, and to what is staged', () => {
    const text = 'recipe: 1\ntitle: Cress\nstart: 2027-02-01\n';
    const { root, head, git, folder } = committed({ 'old name.grow.yaml': text });
    mkdirSync(join(folder, 'plots'));
    git('mv', 'old name.grow.yaml', 'plots/neu ä.grow.yaml');
    expect(movedSince(root, head)).toEqual(new Map([['plots/neu ä.grow.yaml', 'old name.grow.yaml']]));
    git('commit', '--quiet', '-m', 'Moved.');
    const now = revision(root, 'HEAD');
    expect(movedSince(root, head, now)).toEqual(new Map([['plots/neu ä.grow.yaml', 'old name.grow.yaml']]));
    expect(movedSince(root, now)).toEqual(new Map());
  });

  test('a text tells its path: the file that holds it, then the only one of its name, then one in history', () => {
    const { root, put, commit, folder } = committed({ 'plots/a.grow.yaml': 'one', 'b.grow.yaml': 'two' });
    const elsewhere = bare();
    const copy = (text: string, name: string): string | undefined => {
      const path = join(elsewhere, name);
      rmSync(path, { force: true });
      writeFileSync(path, text);
      return pathOfText(root, path, name);
    };
    put({ 'yard/a.grow.yaml': 'three' });
    commit();
    expect(copy('three', 'a.grow.yaml')).toBe('yard/a.grow.yaml');
    expect(copy('never committed', 'b.grow.yaml')).toBe('b.grow.yaml');
    expect(copy('never committed', 'a.grow.yaml')).toBeUndefined();
    put({ 'b.grow.yaml': null });
    commit();
    expect(copy('two', 'b.grow.yaml')).toBe('b.grow.yaml');
    expect(pathInRepository(root, join(folder, 'plots'))).toBe('plots');
    expect(pathInRepository(root, elsewhere)).toBeUndefined();
  });
});
