// Measures the command line over many recipes, against floors taken in the same run: the bare parse of the same files by the same
// parser, bundled the same way, and the start of Node. `npx tsx test/bench/many.ts [RECIPES]` prints ratios; they are what counts.

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as esbuild from 'esbuild';
import { options } from '../../.ci/bundles.ts';
import { buildCli } from '../cli/built-cli.ts';
import { makeRecipe } from './make-recipe.ts';
import { spreadOf } from './measure.ts';

const count = Number(process.argv[2] ?? 1000);
const runs = 5;
const root = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'tidemark-many-'));

const bareParse = `import { parseDocument } from 'yaml';
import { readdirSync, readFileSync } from 'node:fs';
for (const name of readdirSync(process.argv[2])) parseDocument(readFileSync(process.argv[2] + '/' + name, 'utf8'));`;

/** Loaded before a program; tells at its end what it took. */
const watcher = `
process.on('exit', () => require('node:fs').writeFileSync(process.env.TIDEMARK_TOOK, JSON.stringify({
  wall: performance.now(), cpu: (process.cpuUsage().user + process.cpuUsage().system) / 1000, memory: process.resourceUsage().maxRSS / 1024,
})));`;

interface Took {
  /** Milliseconds from the start of the process. */
  readonly wall: number;
  readonly cpu: number;
  /** Megabytes at most. */
  readonly memory: number;
}

try {
  const cli = await buildCli();
  writeFileSync(join(folder, 'watcher.cjs'), watcher);
  const parser = join(folder, 'bare.cjs');
  await esbuild.build({
    ...options({ entry: '', outfile: parser, platform: 'node' }),
    stdin: { contents: bareParse, resolveDir: root, loader: 'js' },
    entryPoints: [],
    outfile: parser,
  });
  const sets = {
    scenario: recipesIn('scenario', count, () =>
      readFileSync(join(root, 'samples/lighthouse/kitchen.grow.yaml'), 'utf8'),
    ),
    nursery: recipesIn('nursery', count, at => makeRecipe(100, at + 1)),
    few: recipesIn('few', Math.ceil(count / 10), at => makeRecipe(100, at + 1)),
  };
  const one = recipesIn('one', 1, () => makeRecipe(40));
  const print = (line: string) => process.stdout.write(`${line}\n`);
  print(`| ${count} recipes | bare parse, CPU | check, CPU | ratio | check, wall | memory |`);
  print('| --- | ---: | ---: | ---: | ---: | ---: |');
  for (const [name, at] of Object.entries(sets)) {
    const [bare, check] = together([parser, at], [cli.file, 'check', '--format', 'concise', at]);
    const ratio = (check.cpu / bare.cpu).toFixed(2);
    print(
      `| ${name} | ${bare.cpu.toFixed(0)} ms | ${check.cpu.toFixed(0)} ms | ${ratio} | ${check.wall.toFixed(0)} ms | ${check.memory.toFixed(0)} MB |`,
    );
  }
  writeFileSync(join(folder, 'nothing.cjs'), '0');
  const [nothing, start] = together([join(folder, 'nothing.cjs')], [cli.file, 'check', one]);
  print(
    `\nstart: check of one recipe ${start.cpu.toFixed(0)} ms of CPU, \`node -e 0\` ${nothing.cpu.toFixed(0)} ms: ${(start.cpu / nothing.cpu).toFixed(2)} times`,
  );
  cli.remove();
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function recipesIn(name: string, recipes: number, textOf: (at: number) => string): string {
  const at = join(folder, name);
  mkdirSync(at);
  for (let number = 0; number < recipes; number++) {
    writeFileSync(join(at, `r${String(number).padStart(5, '0')}.grow.yaml`), textOf(number));
  }
  if (name === 'scenario') cpSync(join(root, 'samples/lighthouse/shelf.grow.yaml'), join(at, 'shelf.grow.yaml'));
  return at;
}

/** The medians of two programs run in turn, so that what else the machine does strikes both. */
function together(first: readonly string[], second: readonly string[]): readonly [Took, Took] {
  const took: [Took[], Took[]] = [[], []];
  for (let run = 0; run < runs; run++) {
    took[0].push(runOnce(first));
    took[1].push(runOnce(second));
  }
  return [medianOf(took[0]), medianOf(took[1])];
}

function runOnce(args: readonly string[]): Took {
  const file = join(folder, 'took.json');
  spawnSync(process.execPath, ['--require', join(folder, 'watcher.cjs'), ...args], {
    env: { ...process.env, TIDEMARK_TOOK: file },
    stdio: 'ignore',
  });
  return JSON.parse(readFileSync(file, 'utf8'));
}

function medianOf(all: readonly Took[]): Took {
  const median = (of: (took: Took) => number): number => spreadOf(all.map(of)).p50;
  return { wall: median(({ wall }) => wall), cpu: median(({ cpu }) => cpu), memory: median(({ memory }) => memory) };
}
