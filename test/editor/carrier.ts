// Makes the empty extension that carries a suite into the editor, so that what is tested is the packaged extension and
// not this folder.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildSync } from 'esbuild';

export interface Carrier {
  readonly folder: string;
  /** The bundled suite, which exports `run()`; it leaves its results beside itself. */
  readonly entry: string;
}

export function carry(
  folder: string,
  suite: string,
  contributes: object = {},
  host: 'node' | 'browser' = 'node',
): Carrier {
  mkdirSync(folder, { recursive: true });
  const entry = join(folder, `${suite}.js`);
  const manifest = {
    name: 'carrier',
    publisher: 'tidemark',
    version: '0.0.0',
    engines: { vscode: '^1.91.0' },
    capabilities: { untrustedWorkspaces: { supported: true } },
    contributes,
  };
  writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest));
  buildSync({
    entryPoints: [join(import.meta.dirname, 'suite', `${suite}.ts`)],
    outfile: entry,
    bundle: true,
    platform: host,
    format: 'cjs',
    target: host === 'node' ? 'node20' : 'es2022',
    external: ['vscode'],
    alias: host === 'node' ? {} : { 'node:assert/strict': join(import.meta.dirname, 'suite', 'web-assert.ts') },
    logLevel: 'warning',
  });
  return { folder, entry };
}
