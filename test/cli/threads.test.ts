// Many recipes, checked by this thread and two others from the real bundle: the answer is the same to the byte as from one thread.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inputOf } from '../../server/cli/open-recipes.ts';
import { startThreads } from '../../server/cli/thread.ts';
import { type BuiltCli, buildCli } from './built-cli.ts';
import { repository } from './repository.ts';
import { folderWith, runCli } from './run-cli.ts';

let cli: BuiltCli;
beforeAll(async () => {
  cli = await buildCli();
});
afterAll(() => cli.remove());

/** Enough of them for two other threads: some clean, some not, all borrowing their water; one is not text, one is a loop of `use`. */
const files: Readonly<Record<string, string | Uint8Array>> = {
  'shelf.grow.yaml': 'recipe: 1\nwaters:\n  brook: { pH: 7.1, alkalinity: 1 meq/L }\n',
  'rows/junk.grow.yaml': new Uint8Array([0x72, 0, 1, 2, 0xff]),
  'rows/loop.grow.yaml': 'recipe: 1\nuse: [./loop.grow.yaml]\n',
  ...Object.fromEntries(
    Array.from({ length: 230 }, (_, at) => [
      `rows/${String(at).padStart(3, '0')} é.grow.yaml`,
      `recipe: 1\nuse: [../shelf.grow.yaml]\nbatches:\n  b: { water: ${at % 7 === 0 ? 'brok' : 'brook'}, volume: ${at + 1} ${at % 5 === 0 ? 'cm' : 'L'} }\n`,
    ]),
  ),
};

/** The same question to one thread and to three. */
async function bothWays(args: readonly string[], folder = folderWith(files), file = cli.thread) {
  const alone = await runCli(['check', ...args], { folder });
  const together = await runCli(['check', ...args], { folder, threads: { file, count: 2 } });
  return { alone, together };
}

test.each(['text', 'json', 'sarif', 'markdown'])('--format %s', async format => {
  const { alone, together } = await bothWays(['--format', format]);
  expect(alone.code).toBe(1);
  expect(together).toEqual(alone);
});

test.each([[['--max', '9']], [['--fail-on', 'never']], [['rows', 'none.grow.yaml', 'shelf.grow.yaml', 'empty']]])(
  '%s',
  async args => {
    const { alone, together } = await bothWays(args);
    expect(alone.out).toContain('recipes checked');
    expect(together).toEqual(alone);
  },
);

test('--changed-since, of a file that all use', async () => {
  const { folder, put, commit } = repository(
    Object.fromEntries(
      Object.entries(files).flatMap(([name, text]) => (typeof text === 'string' ? [[name, text]] : [])),
    ),
  );
  commit();
  put({ 'shelf.grow.yaml': 'recipe: 1\nwaters:\n  brook: { pH: 7.2 }\n', 'rows/loop.grow.yaml': 'recipe: 1\n' });
  const { alone, together } = await bothWays(['--changed-since', 'HEAD'], folder);
  expect(alone.out).toContain('232 recipes checked');
  expect(together).toEqual(alone);
  put({ 'shelf.grow.yaml': 'recipe: 1\nwaters:\n  brook: { pH: 7.1, alkalinity: 1 meq/L }\n' });
  const one = await bothWays(['--changed-since', 'HEAD'], folder);
  expect(one.alone.out).toContain('1 recipe checked');
  expect(one.together).toEqual(one.alone);
});

test('standard input among them is read once, here', async () => {
  const folder = folderWith(files);
  const stdin = 'recipe: 1\nbatches:\n  b: { water: brok, volume: 4 L }\n';
  const args = ['check', 'rows', '-'];
  const alone = await runCli(args, { folder, stdin });
  expect(await runCli(args, { folder, stdin, threads: { file: cli.thread, count: 2 } })).toEqual(alone);
  expect(alone.out).toContain('-:3:15 error name-unknown');
});

describe('threads that are of no help change nothing', () => {
  test.each([
    ['that is not there', undefined],
    ['that ends at once', ''],
    ['that fails at once', "throw new Error('no');"],
    ['that ends in the middle', "require('node:worker_threads').parentPort.once('message', () => process.exit(1));"],
    ['that can do nothing', on('port.postMessage(undefined)')],
  ])('a program %s', async (_, program) => {
    const folder = folderWith(files);
    const file = join(folder, 'program.cjs');
    if (program !== undefined) writeFileSync(file, program);
    const { alone, together } = await bothWays(['rows'], folder, file);
    expect(together).toEqual(alone);
  });
});

test('another thread gives reports', async () => {
  const folder = folderWith(files);
  const [thread] = startThreads({ file: cli.thread, count: 1 }, { cwd: folder }, 1);
  const answer = await thread?.check([inputOf('rows/000 é.grow.yaml', folder), inputOf('none.grow.yaml', folder)]);
  thread?.stop();
  expect(answer?.map(one => (one.kind === 'checked' ? one.report.findings.map(({ code }) => code) : one.says))).toEqual(
    [['name-unknown', 'unit-mismatch'], 'none.grow.yaml: there is no such file'],
  );
});

test('the other threads do their share', async () => {
  const folder = folderWith(files);
  const file = join(folder, 'program.cjs');
  writeFileSync(file, on("port.postMessage(lot.map(() => ({ kind: 'unread', says: 'by another' })))"));
  const { err } = await runCli(['check', 'rows'], { folder, threads: { file, count: 2 } });
  // 232 recipes in 29 lots, of which each other thread takes every third.
  expect(err.match(/by another/gu)?.length).toBe(19 * 8);
});

test('a few recipes start no other thread', async () => {
  const folder = folderWith(files);
  const file = join(folder, 'program.cjs');
  writeFileSync(file, on("port.postMessage(lot.map(() => ({ kind: 'unread', says: 'by another' })))"));
  const few = Array.from({ length: 99 }, (_, at) => `rows/${String(at).padStart(3, '0')} é.grow.yaml`);
  const { err } = await runCli(['check', ...few], { folder, threads: { file, count: 2 } });
  expect(err).toBe('');
});

/** A program for another thread that does the same with each lot. */
function on(done: string): string {
  return `const { parentPort: port } = require('node:worker_threads'); port.on('message', lot => ${done});`;
}
