// Prints the results of the suites. It stands apart because the browser-served and the desktop editor report alike.
import type { Result } from './suite/test.ts';

/** A line for each test and one for all; the exit code tells whether one failed. */
export function report(results: readonly Result[]): number {
  for (const { name, failure, milliseconds } of results) {
    process.stdout.write(`${failure === undefined ? 'ok  ' : 'FAIL'} ${name} (${milliseconds} ms)\n`);
    if (failure !== undefined) process.stdout.write(`${failure.replace(/^/gm, '       ')}\n`);
  }
  const failed = results.filter(result => result.failure !== undefined).length;
  process.stdout.write(`${results.length - failed} passed, ${failed} failed\n`);
  return failed === 0 ? 0 : 1;
}
