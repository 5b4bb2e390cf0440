// What narrows a check: --changed-since in repositories made by Git, --max, and the formats through the command.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { repository } from './repository.ts';
import { folderWith, runCli } from './run-cli.ts';

const shelf = 'recipe: 1\nwaters:\n  brook: { pH: 7.1, alkalinity: 1 meq/L }\n';
const user = 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches:\n  b: { water: brook, volume: 4 L }\n';
const alone = 'recipe: 1\nwaters:\n  well: { pH: 7.1 }\nbatches:\n  b: { water: well, volume: 4 L }\n';
const wrong = 'recipe: 1\nbatches:\n  b: { water: brok, volume: 4 L }\n';

async function changed(folder: string, ...args: string[]) {
  const { code, out, err } = await runCli(['check', '--format', 'json', '--changed-since', ...args], { folder });
  return { code, err, files: out === '' ? undefined : JSON.parse(out).files };
}

describe('--changed-since', () => {
  const files = {
    'shelf.grow.yaml': shelf,
    'user.grow.yaml': user,
    'far/user of user é.grow.yaml': 'recipe: 1\nuse: [../user.grow.yaml]\n',
    'alone.grow.yaml': alone,
  };

  test('a recipe that is changed, new, or not known to Git yet is checked', async () => {
    const { folder, put, commit } = repository(files);
    commit();
    expect(await changed(folder, 'HEAD')).toEqual({ code: 0, err: '', files: [] });
    put({ 'alone.grow.yaml': `${alone}# a remark\n`, 'rows/ new é.grow.yaml': alone });
    expect((await changed(folder, 'HEAD')).files).toEqual(['alone.grow.yaml', 'rows/ new é.grow.yaml']);
    commit();
    expect((await changed(folder, 'HEAD~1')).files).toEqual(['alone.grow.yaml', 'rows/ new é.grow.yaml']);
  });

  test('so is one that uses what has changed, directly or not, and one whose shelf is gone or has another name', async () => {
    const { folder, put, git, commit } = repository(files);
    commit();
    put({ 'shelf.grow.yaml': `${shelf}# a remark\n` });
    const users = ['far/user of user é.grow.yaml', 'shelf.grow.yaml', 'user.grow.yaml'];
    expect((await changed(folder, 'HEAD')).files).toEqual(users);
    git('checkout', '--quiet', '.');
    git('mv', 'shelf.grow.yaml', 'board.grow.yaml');
    const { code, files: touched } = await changed(folder, 'HEAD');
    expect(touched).toEqual(['board.grow.yaml', ...users.filter(name => name !== 'shelf.grow.yaml')]);
    expect(code).toBe(1);
  });

  test('what another branch has changed since they parted is none of this one', async () => {
    const { folder, put, git, commit } = repository(files);
    commit();
    git('checkout', '--quiet', '-b', 'mine');
    put({ 'user.grow.yaml': `${user}# mine\n` });
    commit();
    git('checkout', '--quiet', 'main');
    put({ 'alone.grow.yaml': `${alone}# theirs\n` });
    commit();
    git('checkout', '--quiet', 'mine');
    expect((await changed(folder, 'main')).files).toEqual(['far/user of user é.grow.yaml', 'user.grow.yaml']);
  });

  test('from a folder inside the repository, and of named paths only', async () => {
    const { folder, put, commit } = repository(files);
    commit();
    put({ 'far/near.grow.yaml': alone, 'alone.grow.yaml': `${alone}# more\n` });
    expect((await changed(join(folder, 'far'), 'HEAD')).files).toEqual(['near.grow.yaml']);
    expect((await changed(folder, 'HEAD', 'alone.grow.yaml')).files).toEqual(['alone.grow.yaml']);
  });

  test('nothing changed is an answer in every format', async () => {
    const { folder, commit } = repository({ 'a.grow.yaml': wrong });
    commit();
    for (const format of ['text', 'sarif', 'gitlab', 'junit', 'markdown', 'github', 'concise']) {
      const { code, out } = await runCli(['check', '--changed-since', 'HEAD', '--format', format], { folder });
      expect({ format, code }).toEqual({ format, code: 0 });
      expect(out).not.toBe('');
    }
  });

  test('a revision that is not there, or is an option in disguise', async () => {
    const { folder, commit } = repository({ 'a.grow.yaml': wrong });
    commit();
    for (const revision of ['no-such-branch', '--output=x']) {
      const { code, out, err } = await runCli(['check', `--changed-since=${revision}`], { folder });
      expect({ code, out, err }).toEqual({
        code: 2,
        out: '',
        err: `tidemark: --changed-since: there is no revision ${revision}\n`,
      });
    }
  });

  test('no commit yet, and no repository', async () => {
    const { folder } = repository({ 'a.grow.yaml': wrong });
    expect((await changed(folder, 'HEAD')).err).toBe('tidemark: --changed-since: the repository has no commits yet\n');
    const outside = folderWith({ 'a.grow.yaml': wrong });
    const answer = await changed(outside, 'HEAD');
    expect(answer.code).toBe(2);
    expect(answer.err).toMatch(/^tidemark: --changed-since: .* is in no git repository\n$/);
  });
});

describe('--max', () => {
  test('so many findings are printed; the exit code and the count are those of all', async () => {
    const batches = Array.from({ length: 5 }, (_, at) => `  b${at}: { water: brok, volume: 4 L }\n`).join('');
    const folder = folderWith({ 'a.grow.yaml': `recipe: 1\nbatches:\n${batches}`, 'b.grow.yaml': wrong });
    const { code, out, err } = await runCli(['check', '--max', '2', '--format', 'concise'], { folder });
    expect(out).toMatchInlineSnapshot(`
      "a.grow.yaml:3:16: error name-unknown: There is no water named \`brok\`.
      a.grow.yaml:4:16: error name-unknown: There is no water named \`brok\`.
      2 recipes checked: 6 errors.
      "
    `);
    expect(err).toBe('tidemark: 4 more findings are not shown (--max 2).\n');
    expect(code).toBe(1);
    expect((await runCli(['check', '--max', '0'], { folder })).code).toBe(1);
  });

  test('what is no count is refused', async () => {
    const { code, err } = await runCli(['check', '--max', 'many'], {});
    expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining('A whole number is wanted.') });
  });
});

test('services are told paths from the root of the repository, wherever the check runs', async () => {
  const { folder, commit } = repository({ 'rows/north/a.grow.yaml': wrong });
  commit();
  mkdirSync(join(folder, 'rows/south'));
  for (const [from, path] of [
    ['rows', 'north'],
    ['rows/south', '../north/a.grow.yaml'],
    ['.', join(folder, 'rows')],
  ] as const) {
    const { out } = await runCli(['check', '--format', 'gitlab', path], { folder: join(folder, from) });
    expect(JSON.parse(out)[0].location.path).toBe('rows/north/a.grow.yaml');
  }
});

test('a recipe that another has used before is checked with what it holds itself', async () => {
  const files = {
    'a.grow.yaml': 'recipe: 1\nuse: [./z.grow.yaml]\n',
    'z.grow.yaml': wrong,
    'm.grow.yaml': 'recipe: 1\nuse: [./z.grow.yaml]\n',
  };
  const { out } = await runCli(['check', '--format', 'json'], { files });
  expect(JSON.parse(out).findings.map(({ file, code }: { file: string; code: string }) => `${file} ${code}`)).toContain(
    'z.grow.yaml name-unknown',
  );
});
