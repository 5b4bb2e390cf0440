import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { diskFiles, pathOf, readDisk, rootOf, textOfBytes, uriOf } from '../../server/host/disk.ts';
import { resolved } from '../../server/recipe/use.ts';

function newFolder(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'tidemark-disk-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

test('the root is the repository round a file', () => {
  const folder = newFolder();
  mkdirSync(join(folder, '.git'));
  mkdirSync(join(folder, 'a/b'), { recursive: true });
  expect(rootOf('a/b/x.grow.yaml', folder)).toBe(folder);
  expect(rootOf('b/x.grow.yaml', join(folder, 'a'))).toBe(folder);
});

test('without a repository it is the current folder, or that of a file elsewhere', () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'a/b'), { recursive: true });
  expect(rootOf('a/b/x.grow.yaml', folder)).toBe(folder);
  expect(rootOf(join(folder, 'a/x.grow.yaml'), join(folder, 'a/b'))).toBe(join(folder, 'a'));
});

test('what is absent, a folder or outside is told apart', async () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'in/deep.grow.yaml'), { recursive: true });
  writeFileSync(join(folder, 'out.grow.yaml'), 'recipe: 1');
  const files = diskFiles(join(folder, 'in'));
  const read = (path: string) => files.read(uriOf(join(folder, path)));
  expect(await read('in/none.grow.yaml')).toEqual({ kind: 'none', why: 'absent' });
  expect(await read('in/deep.grow.yaml')).toEqual({ kind: 'none', why: 'unreadable' });
  expect(await read('out.grow.yaml')).toEqual({ kind: 'none', why: 'outside' });
  expect(await read('in-between.grow.yaml')).toEqual({ kind: 'none', why: 'outside' });
  expect(await diskFiles().read(uriOf(join(folder, 'out.grow.yaml')))).toEqual({ kind: 'text', text: 'recipe: 1' });
  expect(await files.read('untitled:one')).toEqual({ kind: 'none', why: 'unreadable' });
  expect(readDisk(join(folder, 'in'))).toMatchObject({ kind: 'none', why: 'directory' });
});

test.each(['/a b/é+ü@(1).grow.yaml', "/100%/x'y!.grow.yaml", '/ä/#1?.grow.yaml'])(
  'a path has one URI, as `use` spells it: %s',
  path => {
    expect(pathOf(uriOf(path))).toBe(path);
    const name = path.slice(path.lastIndexOf('/') + 1);
    expect(resolved(uriOf(path.replace(name, 'other.grow.yaml')), `./${name}`)).toBe(uriOf(path));
  },
);

test('bytes that are not UTF-8 are marked by a pair of replacement characters', () => {
  expect(textOfBytes(Buffer.from('a\u00e9 \ufffd', 'utf8'))).toBe('a\u00e9 \ufffd');
  expect(textOfBytes(Buffer.from('\ufeffa', 'utf8'))).toBe('\ufeffa');
  expect(textOfBytes(new Uint8Array([0x61, 0xe9, 0x62]))).toBe('a\ufffd\ufffdb');
});
