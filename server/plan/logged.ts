// The entries of a log with their numbers, each as one object for as long as it says the same at the same place.

import type { LogEntry } from '../recipe/seen.ts';
import { memo } from './memo.ts';

export interface Logged {
  readonly index: number;
  readonly entry: LogEntry;
}

/** The entries that could be read; the same list for the same log. */
export const loggedIn = memo((log: readonly (LogEntry | undefined)[]): readonly Logged[] =>
  log.flatMap((entry, index) => (entry === undefined ? [] : [keepLogged(entry, index)])),
);

const keepLogged = memo((entry: LogEntry, index: number): Logged => ({ index, entry }));
