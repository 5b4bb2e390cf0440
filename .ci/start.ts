// The first command of the README: builds, checks and plans a sample through the real command line, and tells how to open it in
// an editor.

import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const sample = 'samples/lighthouse/kitchen.grow.yaml';

run(join(root, 'node_modules', '.bin', 'tsx'), ['.ci/build.ts'], 'quiet');
tidemark('check', 'samples');
tidemark('plan', sample);
process.stdout.write(`
This is what ${sample} comes to. To see it beside the text:
  npm run editor    the samples in an editor in your browser (Linux x64; about 1.2 GB are installed once)
  or open this folder in desktop VS Code and press F5.
Your own recipe: name it my-plants.grow.yaml, and run
  node dist/cli.cjs plan my-plants.grow.yaml
`);

function tidemark(...args: readonly string[]): void {
  process.stdout.write(`\n$ tidemark ${args.join(' ')}\n`);
  run(process.execPath, ['dist/cli.cjs', ...args], 'shown');
}

/** Runs a program to its end; what it prints is shown, or only its errors. Ends with it where it fails. */
function run(program: string, args: readonly string[], output: 'shown' | 'quiet'): void {
  const stdio = ['ignore', output === 'shown' ? 'inherit' : 'ignore', 'inherit'] as const;
  const { status, error } = spawnSync(program, args, { cwd: root, stdio: [...stdio] });
  if (error !== undefined) throw error;
  if (status !== 0) process.exit(status ?? 1);
}
