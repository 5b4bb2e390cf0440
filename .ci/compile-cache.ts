// Keeps what the engine compiles while the command line works, so that it need not be compiled again at each start. Runs in a
// process of its own, because the command line runs in it: `tsx .ci/compile-cache.ts dist/cli-main.cjs`.

import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { cacheFile, compile } from '../server/cli/compiled.ts';

const file = resolve(process.argv[2] ?? 'dist/cli-main.cjs');
const sample = join(import.meta.dirname, '..', 'samples', 'lighthouse', 'kitchen.grow.yaml');
const compiled = compile(file);
for (const command of ['plan', 'check']) {
  process.argv = [process.execPath, file, command, sample];
  await compiled.run().main();
}
writeFileSync(cacheFile(file), compiled.script.createCachedData());
