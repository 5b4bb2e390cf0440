// The whole test command: each step in order, and the first that fails ends it. The last line tells how many tests passed
// and failed, those of the editor included.

import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');

interface Counts {
  readonly passed: number;
  readonly failed: number;
}

interface Step {
  readonly name: string;
  readonly command: readonly [string, ...string[]];
  /** How many tests the step ran, from what it printed; a step without tests has none. */
  readonly counts?: (printed: string) => Counts;
}

/** The line by which the editor tests report: `12 passed, 0 failed`. */
const reported = /^(\d+) passed, (\d+) failed$/m;

function steps(resultFile: string): readonly Step[] {
  const bin = (name: string): string => join(root, 'node_modules', '.bin', name);
  return [
    { name: 'types', command: [bin('tsc'), '--noEmit'] },
    { name: 'lint and format', command: [bin('biome'), 'ci', '.'] },
    { name: 'unused code and packages', command: [bin('knip')] },
    { name: 'generated files', command: [bin('tsx'), '.ci/generate.ts', '--check'] },
    // What is packaged and run by tests is what is built now, not what an earlier build left.
    { name: 'bundles', command: [bin('tsx'), '.ci/build.ts'] },
    {
      name: 'tests',
      command: [bin('vitest'), 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${resultFile}`],
      counts: () => {
        const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(resultFile, 'utf8'));
        return { passed: numPassedTests, failed: numFailedTests };
      },
    },
    {
      name: 'editor',
      command: [bin('tsx'), 'test/editor/run.ts'],
      counts: printed => {
        const [, passed, failed] = reported.exec(printed) ?? [];
        return { passed: Number(passed ?? 0), failed: Number(failed ?? 0) };
      },
    },
  ];
}

/** Runs a step with its output shown, and gives what it printed and whether it succeeded. */
function run([program, ...args]: Step['command']): Promise<{ readonly printed: string; readonly succeeded: boolean }> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
    let printed = '';
    child.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
      process.stdout.write(chunk);
    });
    child.on('error', reject);
    child.on('close', code => resolve({ printed, succeeded: code === 0 }));
  });
}

async function testAll(): Promise<Counts> {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-test-'));
  const total = { passed: 0, failed: 0 };
  try {
    for (const step of steps(join(folder, 'vitest.json'))) {
      process.stdout.write(`\n== ${step.name}\n`);
      const started = Date.now();
      const { printed, succeeded } = await run(step.command);
      const counts = step.counts?.(printed) ?? { passed: 0, failed: 0 };
      total.passed += counts.passed;
      // A step that fails without a failed test is a failure all the same.
      total.failed += succeeded ? counts.failed : Math.max(1, counts.failed);
      process.stdout.write(
        `${step.name}: ${succeeded ? 'done' : 'FAILED'} in ${Math.round((Date.now() - started) / 1000)} s\n`,
      );
      if (!succeeded) break;
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return total;
}

const { passed, failed } = await testAll();
process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
