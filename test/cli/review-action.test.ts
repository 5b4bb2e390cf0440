// What runs in builds, end to end but for the services: the steps of the action with an invented event and a stand-in for GitHub, the
// snippet for GitLab, the hooks for pre-commit. Repositories are made by Git, the command line is the bundled one.

import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { type BuiltCli, buildCli } from './built-cli.ts';
import { repository, type TestRepository } from './repository.ts';
import { folderWith } from './run-cli.ts';

const root = join(import.meta.dirname, '../..');
const actionFolder = join(root, '.github/actions/check');
const action = parse(readFileSync(join(actionFolder, 'action.yml'), 'utf8'));

let cli: BuiltCli;
/** A folder with a program `tidemark`, as a shell finds it. */
let bin: string;

beforeAll(async () => {
  cli = await buildCli();
  bin = mkdtempSync(join(tmpdir(), 'tidemark-bin-'));
  writeFileSync(join(bin, 'tidemark'), `#!/bin/sh\nexec "${process.execPath}" "${cli.file}" "$@"\n`);
  chmodSync(join(bin, 'tidemark'), 0o755);
}, 60_000);

afterAll(() => {
  cli.remove();
  rmSync(bin, { recursive: true, force: true });
});

const recipe = (water: string, dose: string) => `recipe: 1
waters:
  brook: { pH: 7.1, alkalinity: 1 meq/L }
feeds:
  leaf: { label: 2 mL/L, analysis: { N: 5 % }, density: 1.1 kg/L }
batches:
  cress: { water: ${water}, volume: 10 L, feed: { leaf: ${dose} } }
`;

/** A repository whose last commit changes a dose and misspells a water; another recipe was wrong before. */
function changed(): TestRepository & { readonly base: string } {
  const made = repository({
    'rows/cress é.grow.yaml': recipe('brook', '1 mL/L'),
    'old.grow.yaml': recipe('brok', '1 mL/L'),
  });
  const base = made.commit();
  made.put({ 'rows/cress é.grow.yaml': recipe('brok', '2 mL/L') });
  made.commit();
  return { ...made, base };
}

interface Comment {
  readonly id: number;
  body: string;
}

/** What GitHub answers of the comments of one pull request. */
class StandIn {
  readonly comments: Comment[] = [];
  readonly asked: string[] = [];
  /** What every request to write is answered, where not with success. */
  refuses: number | undefined;
  readonly #server: Server;

  constructor() {
    this.#server = createServer((request, response) => {
      let text = '';
      request.on('data', (piece: Buffer) => {
        text += piece.toString();
      });
      request.on('end', () => {
        this.asked.push(`${request.method} ${request.url} ${request.headers.authorization}`);
        const [status, answer] = this.#answer(request.method ?? '', request.url ?? '', text);
        response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(answer));
      });
    });
  }

  async start(): Promise<string> {
    await new Promise<void>(resolve => this.#server.listen(0, '127.0.0.1', resolve));
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}`;
  }

  stop(): void {
    this.#server.close();
  }

  #answer(method: string, url: string, text: string): readonly [number, unknown] {
    if (method === 'GET') {
      const page = Number(new URL(url, 'http://x').searchParams.get('page'));
      return [200, this.comments.slice((page - 1) * 100, page * 100)];
    }
    if (this.refuses !== undefined) return [this.refuses, { message: 'Resource not accessible by integration' }];
    const { body } = JSON.parse(text);
    if (method === 'POST') this.comments.push({ id: this.comments.length + 1, body });
    for (const comment of this.comments) if (url.endsWith(`/comments/${comment.id}`)) comment.body = body;
    return [200, {}];
  }
}

interface Step {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly summary: string;
  readonly outputs: Readonly<Record<string, string>>;
}

/** Runs the step of the action as a runner does: its shell lines, with inputs as they are set or left out. */
async function runStep(
  { folder }: TestRepository,
  event: unknown,
  { api = 'http://127.0.0.1:9', inputs = {} }: { api?: string; inputs?: Readonly<Record<string, string>> } = {},
): Promise<Step> {
  const place = folderWith({ 'event.json': JSON.stringify(event), summary: '', output: '' });
  const step = action.runs.steps.find((one: { id?: string }) => one.id === 'review');
  const given = (text: string): string =>
    text.replaceAll(/\$\{\{ inputs\.([\w-]+) \}\}/g, (_, name: string) => inputs[name] ?? action.inputs[name].default);
  const own = Object.fromEntries(
    Object.entries<string>(step.env).map(([name, text]) => [
      name,
      given(text).replace(/\$\{\{ github\.token \}\}/, 'job-token'),
    ]),
  );
  const child = spawn('bash', ['--noprofile', '--norc', '-eo', 'pipefail', '-c', step.run], {
    cwd: folder,
    env: {
      PATH: process.env.PATH,
      ...own,
      TIDEMARK_CLI: cli.file,
      GITHUB_ACTION_PATH: actionFolder,
      GITHUB_API_URL: api,
      GITHUB_EVENT_PATH: join(place, 'event.json'),
      GITHUB_OUTPUT: join(place, 'output'),
      GITHUB_REPOSITORY: 'grower/sill',
      GITHUB_STEP_SUMMARY: join(place, 'summary'),
      RUNNER_TEMP: place,
    },
  });
  let [out, err] = ['', ''];
  child.stdout.on('data', (piece: Buffer) => (out += piece.toString()));
  child.stderr.on('data', (piece: Buffer) => (err += piece.toString()));
  const code = await new Promise<number>(resolve => child.on('close', status => resolve(status ?? -1)));
  const read = (name: string): string => readFileSync(join(place, name), 'utf8');
  const outputs = Object.fromEntries(
    read('output')
      .trim()
      .split('\n')
      .map(line => line.split('=')),
  );
  return { code, out, err, summary: read('summary'), outputs };
}

const pull = (base: string) => ({ pull_request: { number: 7, base: { sha: base } } });

describe('the action', () => {
  test('annotates what has changed, comments once, and writes the comment anew with the next push', async () => {
    const change = changed();
    const github = new StandIn();
    const api = await github.start();
    for (let at = 0; at < 150; at++) github.comments.push({ id: 1000 + at, body: 'Looks good.' });

    const first = await runStep(change, pull(change.base), { api });
    expect(first.err).toBe('');
    expect(first.code).toBe(1);
    expect(first.out).toContain('::error file=rows/cress é.grow.yaml,line=7,');
    expect(first.out).not.toContain('old.grow.yaml');
    const comments = () => github.comments.filter(({ body }) => body.startsWith('<!-- tidemark:check -->'));
    expect(comments().length).toBe(1);
    expect(comments()[0]?.body).toContain('**1 error');
    expect(first.summary).toBe(comments()[0]?.body);

    change.put({ 'rows/cress é.grow.yaml': recipe('brook', '1 mL/L') });
    change.commit();
    const second = await runStep(change, pull(change.base), { api });
    github.stop();
    expect(second.code).toBe(0);
    expect(comments().length).toBe(1);
    expect(comments()[0]?.body).toContain('**Nothing found**');
    expect(github.asked.filter(line => !line.startsWith('GET')).map(line => line.split(' ')[0])).toEqual([
      'POST',
      'PATCH',
    ]);
    expect(new Set(github.asked.map(line => line.split(' ').slice(2).join(' ')))).toEqual(
      new Set(['Bearer job-token']),
    );
  });

  test('the comment tells what the change does to the doses', async () => {
    const change = changed();
    const { summary } = await runStep(change, pull(change.base), { inputs: { comment: 'false' } });
    expect(summary).toMatch(/leaf/);
    expect(summary).toMatch(/10 mL/);
    expect(summary).toMatch(/20 mL/);
  });

  test('a large change: the comment keeps its limit, and what the change does has its half', async () => {
    const many = (volume: number) =>
      `recipe: 1\nbatches:\n${Array.from({ length: 900 }, (_, at) => `  b-${at}: { water: brok, volume: ${volume} L }\n`).join('')}`;
    const made = repository({ 'rows/many.grow.yaml': many(20) });
    const base = made.commit();
    made.put({ 'rows/many.grow.yaml': many(21) });
    made.commit();
    const github = new StandIn();
    const api = await github.start();
    const { summary } = await runStep(made, pull(base), { api, inputs: { paths: 'rows' } });
    github.stop();
    const body = github.comments[0]?.body ?? '';
    expect(body.length).toBeLessThanOrEqual(65_000);
    expect(body).toContain('**900 errors');
    expect(body).toContain('| batch b-0 | volume | 20 L | 21 L | +1 L (+5 %) | (1) |');
    expect(body.match(/^\| batch /gmu)?.length).toBeGreaterThan(200);
    expect(body).toMatch(/_… and \d+ more lines: `tidemark diff` shows all._/);
    expect(summary.match(/^\| batch /gmu)?.length).toBeGreaterThan(body.match(/^\| batch /gmu)?.length ?? 0);
  });

  test('nothing found and nothing said before: no comment', async () => {
    const made = repository({ 'a.grow.yaml': 'recipe: 1\n' });
    const base = made.commit();
    const github = new StandIn();
    const { code } = await runStep(made, pull(base), { api: await github.start() });
    github.stop();
    expect({ code, comments: github.comments }).toEqual({ code: 0, comments: [] });
  });

  test.each([
    ['a fork, whose token may only read', 403],
    ['a service that is down', 503],
  ])('%s: a notice, and the summary; only the findings decide', async (_, status) => {
    const change = changed();
    const github = new StandIn();
    github.refuses = status;
    const api = await github.start();
    const { code, out, summary } = await runStep(change, pull(change.base), { api, inputs: { 'fail-on': 'never' } });
    github.stop();
    expect(code).toBe(0);
    expect(out).toMatch(new RegExp(`::notice::The comment could not be written \\(POST was answered ${status}\\)`));
    expect(summary).toContain('**1 error');
  });

  test('no network at all', async () => {
    const change = changed();
    const { code, out } = await runStep(change, pull(change.base));
    expect(code).toBe(1);
    expect(out).toContain('::notice::The comment could not be written');
  });

  test('a push is compared with what was there before; the first push of a branch checks everything', async () => {
    const change = changed();
    const push = await runStep(change, { before: change.base });
    expect(push.out).toContain('1 recipe checked');
    const first = await runStep(change, { before: '0'.repeat(40) });
    expect(first.out).toContain('2 recipes checked');
    expect((await runStep(change, {}, { inputs: { since: 'all', paths: 'rows\n' } })).out).toContain(
      '1 recipe checked',
    );
  });

  test('a commit that the clone does not hold: everything is checked, and a notice says why', async () => {
    const change = changed();
    const { code, out } = await runStep(change, pull('1'.repeat(40)), { inputs: { comment: 'false' } });
    expect(code).toBe(1);
    expect(out).toContain('::notice::The commit 111111111111 that the change began at is not in this clone');
    expect(out).toContain('2 recipes checked');
  });

  test('a clone of one commit fetches the other', async () => {
    const change = changed();
    const shallow = repository();
    shallow.git('remote', 'add', 'origin', `file://${change.folder}`);
    shallow.git('fetch', '--quiet', '--depth=1', 'origin', 'main');
    shallow.git('checkout', '--quiet', 'FETCH_HEAD');
    const { out } = await runStep(shallow, pull(change.base), { inputs: { comment: 'false' } });
    expect(out).toContain('1 recipe checked');
  });

  test('findings are left as SARIF for whoever uploads them', async () => {
    const change = changed();
    const { outputs } = await runStep(change, pull(change.base), { inputs: { comment: 'false' } });
    expect(outputs.findings).toMatch(/\.sarif$/);
  });

  test('what is built already is not built again', () => {
    const folder = folderWith({ 'dist/cli-main.cjs': '', '.github/actions/check/action.yml': '' });
    const [build] = action.runs.steps;
    const done = spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', '-c', build.run], {
      env: { PATH: '/usr/bin:/bin', GITHUB_ACTION_PATH: join(folder, '.github/actions/check') },
    });
    expect(done.status).toBe(0);
  });

  test('every input is used, described and documented', () => {
    const page = readFileSync(join(root, 'schema/reference/ci.md'), 'utf8');
    const step = JSON.stringify(action.runs.steps);
    for (const name of Object.keys(action.inputs)) {
      expect(step).toContain(`inputs.${name} `);
      expect(page).toContain(`| \`${name}\` |`);
    }
  });
});

/** The code block of the page of builds under a heading. */
function snippet(heading: string) {
  const page = readFileSync(join(root, 'schema/reference/ci.md'), 'utf8');
  const part = page.slice(page.indexOf(`## ${heading}`));
  return parse(/```yaml\n([\s\S]*?)```/.exec(part)?.[1] ?? '');
}

test('the snippet for GitLab leaves both reports and fails for what was found', () => {
  const change = changed();
  const { recipes } = snippet('GitLab');
  const ran = spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', '-c', recipes.script.join('\n')], {
    cwd: change.folder,
    encoding: 'utf8',
    env: { PATH: `${bin}:${process.env.PATH}` },
  });
  expect(ran.status).toBe(1);
  const { codequality, junit } = recipes.artifacts.reports;
  const [issue] = JSON.parse(readFileSync(join(change.folder, codequality), 'utf8'));
  expect(issue).toMatchObject({
    check_name: 'name-unknown',
    location: { path: 'rows/cress é.grow.yaml', lines: { begin: 7 } },
  });
  expect(readFileSync(join(change.folder, junit), 'utf8')).toContain('failures="1"');
});

describe('the hooks for pre-commit', () => {
  const hooks: readonly { id: string; entry: string; files: string; language: string }[] = parse(
    readFileSync(join(root, '.pre-commit-hooks.yaml'), 'utf8'),
  );

  test('they are those that the page names, and take recipes only', () => {
    expect(
      snippet('Before each commit')
        .repos[0].hooks.map((hook: { id: string }) => hook.id)
        .sort(),
    ).toEqual(hooks.map(hook => hook.id).sort());
    for (const { files, language } of hooks) {
      expect(language).toBe('node');
      for (const [name, wanted] of [
        ['a.grow.yaml', true],
        ['b/c.grow.yml', true],
        ['grow.yaml', false],
        ['a.grow.yaml.bak', false],
      ] as const)
        expect(new RegExp(files).test(name)).toBe(wanted);
    }
  });

  test('each runs over the files that are to be committed', () => {
    const { folder } = repository({ 'a b.grow.yaml': 'recipe:  1\n', 'c.grow.yaml': recipe('brok', '1 mL/L') });
    const run = (id: string) => {
      const entry = hooks.find(hook => hook.id === id)?.entry ?? 'false';
      return spawnSync(
        'bash',
        ['--noprofile', '--norc', '-c', `${entry} "$@"`, 'hook', 'a b.grow.yaml', 'c.grow.yaml'],
        {
          cwd: folder,
          encoding: 'utf8',
          env: { PATH: `${bin}:${process.env.PATH}` },
        },
      );
    };
    expect(run('tidemark-check').status).toBe(1);
    expect(run('tidemark-format').status).toBe(0);
    expect(readFileSync(join(folder, 'a b.grow.yaml'), 'utf8')).toBe('recipe: 1\n');
  });

  test('npm packs all that the command line needs, built', () => {
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    expect(scripts.prepack).toBe('npm run build');
    const folder = folderWith({
      'package.json': readFileSync(join(root, 'package.json'), 'utf8'),
      '.npmignore': readFileSync(join(root, '.npmignore'), 'utf8'),
    });
    mkdirSync(join(folder, 'dist'));
    for (const name of ['cli.cjs', 'cli-main.cjs', 'cli-thread.cjs', 'server.cjs', 'client.cjs', 'cli-main.cache'])
      writeFileSync(join(folder, 'dist', name), '');
    const packed = spawnSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
      cwd: folder,
      encoding: 'utf8',
    });
    const [{ files }]: [{ files: readonly { path: string }[] }] = JSON.parse(packed.stdout);
    expect(files.map(({ path }) => path).sort()).toEqual([
      'dist/cli-main.cjs',
      'dist/cli-thread.cjs',
      'dist/cli.cjs',
      'dist/server.cjs',
      'package.json',
    ]);
  });
});
