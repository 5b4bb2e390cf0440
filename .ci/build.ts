// Bundles the product with esbuild. With --watch it keeps building.

import { spawnSync } from 'node:child_process';
import { rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as esbuild from 'esbuild';
import { cacheFile } from '../server/cli/compiled.ts';
import { beside, bundles, options } from './bundles.ts';
import { thirdParty } from './third-party.ts';

const root = join(import.meta.dirname, '..');

const commandLine = join(root, 'dist', 'cli-main.cjs');

async function build(): Promise<void> {
  // What was compiled of an older bundle must not be run in place of the new one.
  await rm(cacheFile(commandLine), { force: true });
  const built = await Promise.all(bundles.map(bundle => esbuild.build(options(bundle))));
  await writeBeside();
  const inputs = built.flatMap(({ metafile }) => Object.keys(metafile?.inputs ?? {}));
  await writeFile(join(root, 'dist', 'third-party.txt'), await thirdParty(root, inputs));
  const maker = join(root, '.ci', 'compile-cache.ts');
  spawnSync(process.execPath, [...process.execArgv, maker, commandLine], { stdio: 'ignore' });
  for (const { outfile } of bundles) {
    const { size } = await stat(join(root, outfile));
    process.stdout.write(`${outfile} ${Math.round(size / 1000)} kB\n`);
  }
}

async function writeBeside(): Promise<void> {
  for (const [file, text] of Object.entries(beside)) await writeFile(join(root, file), text);
}

async function watch(): Promise<void> {
  await rm(cacheFile(commandLine), { force: true });
  const contexts = await Promise.all(bundles.map(bundle => esbuild.context({ ...options(bundle), logLevel: 'info' })));
  await writeBeside();
  await Promise.all(contexts.map(context => context.watch()));
}

await (process.argv.includes('--watch') ? watch() : build());
