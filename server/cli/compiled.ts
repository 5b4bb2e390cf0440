// Loads a bundle with what the engine compiled of it when it was built: most of the time to start is compiling. Where the compiled
// part is missing, or was made by another engine, the bundle is compiled like every other.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { Script } from 'node:vm';

export interface Compiled {
  readonly script: Script;
  /** Runs the bundle as a module, each time anew, and gives what it exports. */
  readonly run: () => CommandLine;
}

type CommandLine = typeof import('./main.ts');

/** Bundles are plain ASCII, so their bytes are their characters. */
export function compile(file: string): Compiled {
  const source = readFileSync(file, 'latin1');
  const cachedData = cacheOf(file);
  const wrapped = `(function (exports, require, module, __filename, __dirname) {${source}\n})`;
  const script = new Script(wrapped, { filename: file, ...(cachedData === undefined ? {} : { cachedData }) });
  return {
    script,
    run() {
      const module = { exports: {} as CommandLine };
      script.runInThisContext()(module.exports, createRequire(file), module, file, dirname(file));
      return module.exports;
    },
  };
}

/** Where the compiled part of a bundle lies. */
export function cacheFile(file: string): string {
  return file.replace(/\.cjs$/u, '.cache');
}

function cacheOf(file: string): Buffer | undefined {
  try {
    return readFileSync(cacheFile(file));
  } catch {
    return undefined;
  }
}
