// Times and what is said of them: medians and the 95th percentile, wall clock and the processor's own.

import { readdirSync, readFileSync } from 'node:fs';

export interface Spread {
  readonly p50: number;
  readonly p95: number;
}

export function spreadOf(values: readonly number[]): Spread {
  const rising = [...values].sort((a, b) => a - b);
  const at = (share: number): number => rising[Math.min(rising.length - 1, Math.floor(rising.length * share))] ?? 0;
  return { p50: at(0.5), p95: at(0.95) };
}

/** Milliseconds of wall clock that something takes. */
export function wallOf(run: () => void): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

/** The median of some runs, after one that is not counted. */
export function medianOf(runs: number, run: () => void): number {
  run();
  return spreadOf(Array.from({ length: runs }, () => wallOf(run))).p50;
}

/** Milliseconds of processor time that this process took for something, its helpers such as the garbage collector included. */
export function cpuOf(run: () => void): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Milliseconds of processor time that all threads of another process have taken so far; Linux only, undefined elsewhere. */
export function cpuOfProcess(pid: number): number | undefined {
  try {
    const nanoseconds = readdirSync(`/proc/${pid}/task`).map(thread =>
      Number(readFileSync(`/proc/${pid}/task/${thread}/schedstat`, 'utf8').split(' ')[0]),
    );
    return nanoseconds.reduce((sum, one) => sum + one, 0) / 1e6;
  } catch {
    return undefined;
  }
}

/** Megabytes that a process holds in memory; Linux only, undefined elsewhere. */
export function memoryOfProcess(pid: number): number | undefined {
  try {
    const kilobytes = /^VmRSS:\s*(\d+)/mu.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
  } catch {
    return undefined;
  }
}
