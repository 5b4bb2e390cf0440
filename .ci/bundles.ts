// What is bundled: one file for each program, so that the package holds no modules folder. Apart from building, so that tests can
// build the same. The modules are ES modules, so the bundles, which editor and shell load as CommonJS, end in .cjs.

import { join } from 'node:path';
import type * as esbuild from 'esbuild';

const root = join(import.meta.dirname, '..');

/** A program: where it starts, what is made of it, and where it runs. */
export interface Bundle {
  readonly entry: string;
  readonly outfile: string;
  readonly platform: 'node' | 'browser';
  /** A module that can be required; or a script that just runs, as workers take nothing else. */
  readonly format?: 'cjs' | 'iife';
  /** What the place where it runs provides. */
  readonly external?: readonly string[];
  readonly banner?: string;
  readonly plugins?: readonly esbuild.Plugin[];
}

/** The command line starts faster without the language server in it: `serve` loads the server's own bundle beside it. */
const serverBeside: esbuild.Plugin = {
  name: 'server-beside',
  setup(build) {
    build.onResolve({ filter: /^\.\.\/node\.ts$/ }, () => ({ path: './server.cjs', external: true }));
  },
};

/** The YAML package for browsers differs only in that it needs nothing of Node; being ES modules it can be trimmed as well. */
const alias = { yaml: './node_modules/yaml/browser/index.js' };

/** What starts other programs loads half of Node's streams: it waits until one is started, as Git is. */
const childProcessLater: esbuild.Plugin = {
  name: 'child-process-later',
  setup(build) {
    build.onResolve({ filter: /^node:child_process$/ }, () => ({ path: 'child_process', namespace: 'later' }));
    build.onLoad({ filter: /.*/, namespace: 'later' }, () => ({
      contents: ['spawn', 'spawnSync', 'execFileSync']
        .map(name => `exports.${name} = (...args) => require('child_process').${name}(...args);`)
        .join('\n'),
    }));
  },
};

/**
 * The extension and the server run in Node and in browsers from the same bundle, which loads what only one of them has when it is
 * there. A host in a browser looks for the extension's entry with `.js` behind its name, and would take one that is not called `.cjs`
 * for an ES module; so the entry `client.cjs` is a line that names `client.cjs.js`, which is read as CommonJS for what build.ts writes.
 */
export const bundles: readonly Bundle[] = [
  { entry: 'client/extension.ts', outfile: 'dist/client.cjs.js', platform: 'node', external: ['vscode'] },
  { entry: 'server/start.ts', outfile: 'dist/server.cjs', platform: 'node', format: 'iife' },
  { entry: 'server/cli/launch.ts', outfile: 'dist/cli.cjs', platform: 'node', banner: '#!/usr/bin/env node' },
  { entry: 'server/cli/launch-thread.ts', outfile: 'dist/cli-thread.cjs', platform: 'node' },
  {
    entry: 'server/cli/main.ts',
    outfile: 'dist/cli-main.cjs',
    platform: 'node',
    plugins: [serverBeside, childProcessLater],
  },
];

/** Small files that stand beside the bundles, by their names. */
export const beside: Readonly<Record<string, string>> = {
  'dist/client.cjs': 'module.exports = require("./client.cjs.js");\n',
  'dist/package.json': '{ "type": "commonjs" }\n',
};

export function options(bundle: Bundle): esbuild.BuildOptions {
  return {
    absWorkingDir: root,
    entryPoints: [bundle.entry],
    outfile: bundle.outfile,
    bundle: true,
    platform: bundle.platform,
    format: bundle.format ?? 'cjs',
    target: bundle.platform === 'node' ? 'node20' : 'es2022',
    external: [...(bundle.external ?? [])],
    // The packages that have an entry for browsers have one for Node too; both are found.
    conditions: ['browser'],
    alias,
    plugins: [...(bundle.plugins ?? [])],
    ...(bundle.banner === undefined ? {} : { banner: { js: bundle.banner } }),
    // ES modules are preferred because only they can be trimmed to what is used.
    mainFields: ['module', 'main'],
    minify: true,
    charset: 'ascii',
    // Bundles that are loaded as scripts can require, but not import.
    supported: { 'dynamic-import': false },
    // The licences of what is bundled stand in a file of their own.
    legalComments: 'none',
    metafile: true,
    logLevel: 'warning',
  };
}
