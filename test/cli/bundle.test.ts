// The command line as it is shipped: bundled, in a process of its own, with real streams. The rest is tested in this process.

import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as esbuild from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundles, options } from '../../.ci/bundles.ts';
import { cacheFile, compile } from '../../server/cli/compiled.ts';
import type { Answer } from './run-cli.ts';
import { folderWith } from './run-cli.ts';

const dist = mkdtempSync(join(tmpdir(), 'tidemark-dist-'));
const cli = join(dist, 'cli.cjs');
const main = join(dist, 'cli-main.cjs');

beforeAll(async () => {
  const needed = bundles.filter(({ outfile }) => /^dist\/(?:cli|server)/u.test(outfile));
  await Promise.all(
    needed.map(bundle =>
      esbuild.build({ ...options(bundle), outfile: join(dist, bundle.outfile.replace('dist/', '')) }),
    ),
  );
  const maker = join(import.meta.dirname, '../../.ci/compile-cache.ts');
  spawnSync(process.execPath, ['--import', 'tsx', maker, main], { stdio: 'ignore' });
}, 60_000);

afterAll(() => rmSync(dist, { recursive: true, force: true }));

interface Talk {
  readonly cwd?: string;
  readonly stdin?: string;
  /** Closes standard output after the first piece. */
  readonly enoughAtOnce?: boolean;
  /** Standard input stays open until this has been answered. */
  readonly until?: string;
}

function tidemark(
  args: readonly string[],
  { cwd = dist, stdin = '', enoughAtOnce = false, until }: Talk = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [cli, ...args], { cwd, env: { ...process.env, FORCE_COLOR: '' } });
    let [out, err] = ['', ''];
    child.stdout.on('data', (piece: Buffer) => {
      out += piece.toString();
      if (enoughAtOnce) child.stdout.destroy();
      if (until !== undefined && out.includes(until)) child.stdin.end();
    });
    child.stderr.on('data', (piece: Buffer) => {
      err += piece.toString();
    });
    child.on('error', reject);
    child.on('close', code => resolve({ code: code ?? -1, out, err }));
    child.stdin.on('error', () => {});
    child.stdin.write(stdin);
    if (until === undefined) child.stdin.end();
  });
}

const good = 'recipe: 1\nwaters:\n  brook: { pH: 7 }\nbatches:\n  b: { water: brook, volume: 4 L }\n';

test('checks a file and standard input', async () => {
  const cwd = folderWith({ 'é a.grow.yaml': good });
  expect(await tidemark(['check', 'é a.grow.yaml'], { cwd })).toEqual({
    code: 0,
    out: '1 recipe checked, nothing found.\n',
    err: '',
  });
  expect((await tidemark(['check', '-'], { stdin: `${good}x: 1\n` })).code).toBe(1);
  expect((await tidemark(['check', 'none.grow.yaml'], { cwd })).code).toBe(2);
});

test('what was compiled at the build is taken', () => {
  expect(compile(main).script.cachedDataRejected).toBe(false);
});

test('what was compiled by another engine is no harm', async () => {
  const cwd = folderWith({ 'a.grow.yaml': good });
  const text = readFileSync(cacheFile(main));
  writeFileSync(cacheFile(main), Buffer.from(text).fill(7, 0, 16));
  expect((await tidemark(['check', 'a.grow.yaml'], { cwd })).code).toBe(0);
  writeFileSync(cacheFile(main), text);
});

test('a long answer is whole at the end of the process', async () => {
  const batches = Array.from({ length: 3000 }, (_, index) => `  b${index}: { water: brok, volume: 4 L }\n`).join('');
  const { out, code } = await tidemark(['check', '--format', 'json', '-'], {
    stdin: `recipe: 1\nbatches:\n${batches}`,
  });
  expect(code).toBe(1);
  expect(out.length).toBeGreaterThan(500_000);
  expect(JSON.parse(out).findings.length).toBeGreaterThanOrEqual(3000);
});

test('who reads may stop before the end', async () => {
  const batches = Array.from({ length: 3000 }, (_, index) => `  b${index}: { water: brok, volume: 4 L }\n`).join('');
  const { code, err } = await tidemark(['check', '-'], {
    stdin: `recipe: 1\nbatches:\n${batches}`,
    enoughAtOnce: true,
  });
  expect({ code, err }).toEqual({ code: 1, err: '' });
});

test('nor is it a failure where other threads help', async () => {
  const wrong = 'recipe: 1\nbatches:\n  b: { water: brok, volume: 4 L }\n';
  const cwd = folderWith(Object.fromEntries(Array.from({ length: 400 }, (_, at) => [`r${at}.grow.yaml`, wrong])));
  const { code, err } = await tidemark(['check'], { cwd, enoughAtOnce: true });
  expect({ code, err }).toEqual({ code: 1, err: '' });
  expect((await tidemark(['check'], { cwd })).out).toContain('400 recipes checked: 400 errors.');
});

test('serves a language client, and loads the server only then', async () => {
  const message = JSON.stringify({
    jsonrpc: '2.0',
    id: 1,
    method: 'initialize',
    params: { processId: null, rootUri: null, capabilities: {} },
  });
  const { out, err } = await tidemark(['serve', '--stdio'], {
    stdin: `Content-Length: ${Buffer.byteLength(message)}\r\n\r\n${message}`,
    until: '"name":"tidemark"',
  });
  expect(err).toBe('');
  expect(out).toContain('"name":"tidemark"');
});
