// The step of the action: runs the built command line over what a change touches, and brings its answers to where people look. It uses
// Node and Git only, so that it runs as it stands; the tests run the same file with an invented event.

import { spawnSync } from 'node:child_process';
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const { env } = process;
const cli = env.TIDEMARK_CLI || join(import.meta.dirname, '..', '..', '..', 'dist', 'cli.cjs');
const event = env.GITHUB_EVENT_PATH ? JSON.parse(readFileSync(env.GITHUB_EVENT_PATH, 'utf8')) : {};
const commentMark = '<!-- tidemark:check -->';
// GitHub's limits: characters of a comment, and what one step may add to the summary.
const mostOfComment = 65_000;
const mostOfSummary = 1_000_000;

const base = findBase();
const options = [
  '--fail-on',
  env.TIDEMARK_FAIL_ON || 'error',
  ...(base === undefined ? [] : ['--changed-since', base]),
];
const paths = (env.TIDEMARK_PATHS || '.')
  .split('\n')
  .map(path => path.trim())
  .filter(path => path !== '');

// What a change does is told of one path; of several, of all that lies here.
const scope = paths.length === 1 ? paths[0] : '.';

// The annotations are the step's own output.
const checked = tidemark(['check', '--format', 'github', ...options, '--', ...paths]);
process.stdout.write(checked.stdout);
process.stderr.write(checked.stderr);

const findings = join(env.RUNNER_TEMP || tmpdir(), `tidemark-${process.pid}.sarif`);
writeFileSync(findings, tidemark(['check', '--format', 'sarif', ...options, '--', ...paths]).stdout);
if (env.GITHUB_OUTPUT) appendFileSync(env.GITHUB_OUTPUT, `findings=${findings}\n`);

if (env.GITHUB_STEP_SUMMARY) appendFileSync(env.GITHUB_STEP_SUMMARY, report(mostOfSummary));

const number = event.pull_request?.number;
if (number !== undefined && env.TIDEMARK_COMMENT !== 'false') await keepComment(number, report(mostOfComment));

// Only what was found decides; a comment that could not be written does not.
process.exitCode = checked.status ?? 2;

/** The revision that the change began at, where this clone holds it; undefined to check everything. */
function findBase() {
  const wanted = env.TIDEMARK_SINCE || event.pull_request?.base?.sha || event.before;
  if (wanted === undefined || wanted === 'all' || /^0+$/.test(wanted)) return undefined;
  if (isHere(wanted)) return wanted;
  // A clone of one commit: the other one is fetched alone.
  git('fetch', '--quiet', '--no-tags', '--depth=1', 'origin', wanted);
  if (isHere(wanted)) return wanted;
  notice(
    `The commit ${wanted.slice(0, 12)} that the change began at is not in this clone, so all recipes are checked.`,
  );
  return undefined;
}

function isHere(revision) {
  return !revision.startsWith('-') && git('cat-file', '-e', `${revision}^{commit}`).status === 0;
}

/** Writes the one comment anew, or adds it. What keeps it from being written is a notice, never a failure. */
async function keepComment(number, body) {
  const api = `${env.GITHUB_API_URL || 'https://api.github.com'}/repos/${env.GITHUB_REPOSITORY}`;
  try {
    const old = await findComment(api, number);
    // Where nothing was found and nothing is said yet, there is nothing to say.
    if (old === undefined && isQuiet(body)) return;
    if (old?.body === body) return;
    if (old === undefined) await request('POST', `${api}/issues/${number}/comments`, { body });
    else await request('PATCH', `${api}/issues/comments/${old.id}`, { body });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    notice(
      `The comment could not be written (${why}); the same is in the summary of this job. Changes from forks may not write comments.`,
    );
  }
}

async function findComment(api, number) {
  for (let page = 1; ; page++) {
    const comments = await request('GET', `${api}/issues/${number}/comments?per_page=100&page=${page}`);
    const ours = comments.find(comment => comment.body?.startsWith(commentMark));
    if (ours !== undefined || comments.length < 100) return ours;
  }
}

async function request(method, url, content) {
  const response = await fetch(url, {
    method,
    headers: {
      accept: 'application/vnd.github+json',
      authorization: `Bearer ${env.TIDEMARK_TOKEN ?? ''}`,
      'content-type': 'application/json',
      'user-agent': 'tidemark',
      'x-github-api-version': '2022-11-28',
    },
    ...(content === undefined ? {} : { body: JSON.stringify(content) }),
    signal: AbortSignal.timeout(30_000),
  });
  if (!response.ok) throw new Error(`${method} was answered ${response.status}`);
  return response.json();
}

function isQuiet(body) {
  return /^\*\*Nothing found\*\*/m.test(body) && !body.includes('\n|');
}

/** What was found and what the change does, in at most so many characters: the findings leave half of them to the change. */
function report(most) {
  const found = findingsWithin(base === undefined ? most : most / 2);
  if (base === undefined) return found;
  const room = String(Math.min(most - found.length - 1, mostOfComment));
  const does = tidemark(['diff', '--format', 'markdown', '--max-characters', room, base, scope]).stdout;
  return does === '' ? found : `${found}\n${does}`;
}

/** Findings as Markdown: all of them, or as many as fit. */
function findingsWithin(most) {
  for (const max of [undefined, 100, 50, 20, 0]) {
    const few = max === undefined ? [] : ['--max', String(max)];
    const text = tidemark(['check', '--format', 'markdown', ...few, ...options, '--', ...paths]).stdout;
    if (text !== '' && text.length <= most) return text;
  }
  return `${commentMark}\n**The recipes could not be checked.**\n`;
}

function notice(text) {
  process.stdout.write(`::notice::${text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A')}\n`);
}

function tidemark(args) {
  return spawnSync(process.execPath, [cli, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 29,
    env: { ...env, NO_COLOR: '1' },
  });
}

function git(...args) {
  return spawnSync('git', args, { encoding: 'utf8' });
}
