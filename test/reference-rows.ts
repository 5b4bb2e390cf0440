// Reads the rows of published values in `test/reference`, and compares by a row's own tolerance.

import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { SourceKey } from '../schema/sources.ts';

export interface ReferenceRow {
  readonly id: string;
  /** Relative. */
  readonly tolerance: number;
  /** Why that tolerance. */
  readonly why: string;
  readonly source: SourceKey;
}

export function referenceRows<R extends ReferenceRow>(name: string): readonly R[] {
  const text = readFileSync(new URL(`./reference/${name}.jsonl`, import.meta.url), 'utf8');
  return text
    .split('\n')
    .filter(line => line !== '')
    .map(line => JSON.parse(line) as R);
}

/** Fails with both values where ours lies farther from theirs than the relative tolerance. */
export function expectNear(ours: number, theirs: number, tolerance: number): void {
  const difference = theirs === 0 ? Math.abs(ours) : Math.abs(ours / theirs - 1);
  expect(difference, `ours ${ours}, theirs ${theirs}`).toBeLessThanOrEqual(tolerance);
}
