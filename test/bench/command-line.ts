// Measures the command line against floors taken in the same run: the start of Node, and the bare parse of the same files by the same
// parser, bundled the same way.

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as esbuild from 'esbuild';
import { options } from '../../.ci/bundles.ts';
import { buildCli } from '../cli/built-cli.ts';
import { makeRecipe } from './make-recipe.ts';
import { spreadOf } from './measure.ts';

/** What a program took from its start to its end. */
export interface Took {
  /** Milliseconds. */
  readonly wall: number;
  /** Milliseconds of processor time, all threads together. */
  readonly cpu: number;
  /** Megabytes at most. */
  readonly memory: number;
}

/** A kind of recipe, and what it takes to check such. */
export interface CheckTimes {
  readonly kind: string;
  readonly lines: number;
  /** `node -e 0`. */
  readonly node: Took;
  readonly one: Took;
  readonly bareParse: Took;
  readonly all: Took;
  /** Of a tenth of them. */
  readonly few: Took;
}

export interface CommandLineTimes {
  readonly recipes: number;
  readonly kinds: readonly CheckTimes[];
}

const root = join(import.meta.dirname, '../..');
const sample = join(root, 'samples/lighthouse');

/** Checks so many recipes of each kind, so many times. */
export async function measureCommandLine(recipes: number, runs: number): Promise<CommandLineTimes> {
  const cli = await buildCli();
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-many-'));
  try {
    const parser = await buildParser(folder);
    const nothing = join(folder, 'nothing.cjs');
    writeFileSync(nothing, '0');
    const started = spawnSync(process.execPath, [cli.file, 'new'], { encoding: 'utf8' }).stdout;
    cpSync(join(sample, 'shelf.grow.yaml'), join(folder, 'shelf.grow.yaml'));
    const scenario = readFileSync(join(sample, 'kitchen.grow.yaml'), 'utf8').replace('./shelf', '../shelf');
    const texts: Readonly<Record<string, (at: number) => string>> = {
      'as `new` begins': () => started,
      'a sample': () => scenario,
      drawn: at => makeRecipe(100, at + 1),
    };
    const kinds = Object.entries(texts).map(([kind, textOf], at): CheckTimes => {
      const [all, few, one] = [recipes, Math.ceil(recipes / 10), 1].map(count =>
        recipesIn(join(folder, `${at}-${count}`), count, textOf),
      );
      const check = (place = ''): readonly string[] => [cli.file, 'check', '--format', 'concise', place];
      return {
        kind,
        lines: textOf(0).split('\n').length - 1,
        ...inTurn(folder, 3 * runs, { node: [nothing], one: check(one) }),
        ...inTurn(folder, runs, { bareParse: [parser, all ?? ''], all: check(all), few: check(few) }),
      };
    });
    return { recipes, kinds };
  } finally {
    cli.remove();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function buildParser(folder: string): Promise<string> {
  const outfile = join(folder, 'bare.cjs');
  const contents = `import { parseDocument } from 'yaml';
import { readdirSync, readFileSync } from 'node:fs';
for (const name of readdirSync(process.argv[2])) parseDocument(readFileSync(process.argv[2] + '/' + name, 'utf8'));`;
  await esbuild.build({
    ...options({ entry: '', outfile, platform: 'node' }),
    stdin: { contents, resolveDir: root, loader: 'js' },
    entryPoints: [],
    outfile,
  });
  return outfile;
}

function recipesIn(folder: string, count: number, textOf: (at: number) => string): string {
  mkdirSync(folder);
  for (let at = 0; at < count; at++)
    writeFileSync(join(folder, `r${String(at).padStart(5, '0')}.grow.yaml`), textOf(at));
  return folder;
}

/** The medians of programs run in turn, so that what else the machine does strikes them all. */
function inTurn<Name extends string>(
  folder: string,
  runs: number,
  programs: Readonly<Record<Name, readonly string[]>>,
): Readonly<Record<Name, Took>> {
  const names = Object.keys(programs) as Name[];
  const rounds = Array.from({ length: runs }, () => names.map(name => runOnce(folder, programs[name])));
  const median = (at: number, of: keyof Took): number => spreadOf(rounds.map(round => round[at]?.[of] ?? 0)).p50;
  return Object.fromEntries(
    names.map((name, at) => [name, { wall: median(at, 'wall'), cpu: median(at, 'cpu'), memory: median(at, 'memory') }]),
  ) as Record<Name, Took>;
}

/** What it prints goes through pipes, as in a build. */
function runOnce(folder: string, program: readonly string[]): Took {
  const [watcher, took] = [join(folder, 'watcher.cjs'), join(folder, 'took.json')];
  writeFileSync(watcher, watching);
  const ran = spawnSync(process.execPath, ['--require', watcher, ...program], {
    cwd: folder,
    env: { ...process.env, TIDEMARK_TOOK: took },
    maxBuffer: 1e9,
  });
  if (ran.status !== 0) throw new Error(`${program.join(' ')}: ${ran.stderr.toString()}`);
  return JSON.parse(readFileSync(took, 'utf8'));
}

/** Loaded before a program; tells at its end what it took. */
const watching = `process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  const took = { wall: performance.now(), cpu: (user + system) / 1000, memory: process.resourceUsage().maxRSS / 1024 };
  require('node:fs').writeFileSync(process.env.TIDEMARK_TOOK, JSON.stringify(took));
});`;
