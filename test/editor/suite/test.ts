// A test inside the editor and how a list of them is run. It stands apart because the editor's host loads one file and
// knows no test runner of ours.
import { writeFileSync } from 'node:fs';
import { rejectFailures, resultsOf } from './results.ts';

export interface Test {
  readonly name: string;
  readonly run: () => Promise<void>;
}

export interface Result {
  readonly name: string;
  /** What went wrong; absent where the test passed. */
  readonly failure?: string;
  readonly milliseconds: number;
}

/** Runs the tests in order and leaves the results beside the running file; rejects where one failed. */
export async function runTests(tests: readonly Test[], resultsFile: string): Promise<void> {
  const results = await resultsOf(tests);
  writeFileSync(resultsFile, JSON.stringify(results));
  rejectFailures(results);
}
