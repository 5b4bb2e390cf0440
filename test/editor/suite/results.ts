// Runs tests one after the other. It stands apart because results are left in different ways in Node and in a browser.
import type { Result, Test } from './test.ts';

const limit = 15_000;

export async function resultsOf(tests: readonly Test[]): Promise<readonly Result[]> {
  const results: Result[] = [];
  for (const test of tests) {
    const started = Date.now();
    const failure = await inTime(test.run()).then(
      () => undefined,
      (cause: unknown) => (cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)),
    );
    results.push({
      name: test.name,
      milliseconds: Date.now() - started,
      ...(failure === undefined ? {} : { failure }),
    });
  }
  return results;
}

/** Rejects where a test failed, which is how the editor is told. */
export function rejectFailures(results: readonly Result[]): void {
  const failed = results.filter(result => result.failure !== undefined);
  if (failed.length > 0) throw new Error(failed.map(({ name, failure }) => `${name}\n${failure}`).join('\n\n'));
}

function inTime(work: Promise<void>): Promise<void> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`not done after ${limit / 1000} s`)), limit);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
