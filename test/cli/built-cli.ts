// The command line as it is shipped, bundled into a folder of its own, for tests that start it as a program.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as esbuild from 'esbuild';
import { bundles, options } from '../../.ci/bundles.ts';

export interface BuiltCli {
  readonly folder: string;
  /** What a shell starts. */
  readonly file: string;
  /** What another thread starts. */
  readonly thread: string;
  remove(): void;
}

/** Without the language server: whoever serves builds that beside it. */
export async function buildCli(): Promise<BuiltCli> {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-dist-'));
  const needed = bundles.filter(({ outfile }) => /^dist\/cli/u.test(outfile));
  await Promise.all(
    needed.map(bundle =>
      esbuild.build({ ...options(bundle), outfile: join(folder, bundle.outfile.replace('dist/', '')) }),
    ),
  );
  const maker = join(import.meta.dirname, '../../.ci/compile-cache.ts');
  spawnSync(process.execPath, ['--import', 'tsx', maker, join(folder, 'cli-main.cjs')], { stdio: 'ignore' });
  return {
    folder,
    file: join(folder, 'cli.cjs'),
    thread: join(folder, 'cli-thread.cjs'),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
