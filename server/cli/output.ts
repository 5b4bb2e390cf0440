// Where the command line prints and reads: two streams, standard input, the environment. As a value, so that tests can stand in for
// a terminal.

import type { Day } from '../../schema/date.ts';
import { colourPaint, type Paint, plainPaint } from '../reports/print/paint.ts';

export interface Output {
  readonly isTTY: boolean;
  write(text: string): void;
}

export interface Io {
  /** The answer, and nothing else. */
  readonly out: Output;
  /** What went wrong, and notes. */
  readonly err: Output;
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The day that it is where the command runs. */
  today(): Day;
  /** All of standard input. */
  readInput(): Uint8Array;
  /** Other threads that may help: the program that they run, and how many there are, where that is not left to the machine. */
  readonly threads?: { readonly file: string; readonly count?: number };
}

/** How a command ends. */
export const exit = { clean: 0, findings: 1, trouble: 2, defect: 3 } as const;
export type ExitCode = (typeof exit)[keyof typeof exit];

/** Colours for a terminal that wants them: `--no-color`, then FORCE_COLOR, then NO_COLOR, then what the stream is. */
export function paintFor(output: Output, env: Io['env'], wanted: boolean): Paint {
  return wanted && hasColour(output, env) ? colourPaint : plainPaint;
}

function hasColour(output: Output, env: Io['env']): boolean {
  const { FORCE_COLOR: force, NO_COLOR: no, TERM: terminal } = env;
  if (force !== undefined && force !== '') return force !== '0' && force !== 'false';
  if (no !== undefined && no !== '') return false;
  return output.isTTY && terminal !== 'dumb';
}

/** Says on standard error what keeps a command from its answer. */
export function complain(io: Io, text: string): void {
  io.err.write(`tidemark: ${text}\n`);
}
