// The entry of the command line: binds it to the process. It writes to the file descriptors themselves, which is faster to start
// than Node's streams and leaves nothing unwritten at the end.

import { fstatSync, readSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { type Day, dayOf } from '../../schema/date.ts';
import type { Io, Output } from './output.ts';
import { run } from './run.ts';

const io: Io = {
  out: outputTo(1),
  err: outputTo(2),
  cwd: process.cwd(),
  env: process.env,
  today,
  readInput,
  threads: { file: join(__dirname, 'cli-thread.cjs') },
};

/** Runs what the process was started with, to its exit code. */
export function main(): Promise<number> {
  return run(process.argv.slice(2), io);
}

/** In another thread: helps the first. */
export async function help(): Promise<void> {
  const { work } = await import('./work.ts');
  work();
}

function outputTo(descriptor: 1 | 2): Output {
  let isOpen = true;
  return {
    get isTTY() {
      // Only a terminal is worth asking: Node loads much to answer for it.
      return isDevice(descriptor) && (descriptor === 1 ? process.stdout : process.stderr).isTTY === true;
    },
    write(text) {
      const bytes = Buffer.from(text);
      for (let at = 0; isOpen && at < bytes.length; ) {
        const written = writeSome(descriptor, bytes, at);
        if (written === 'closed') isOpen = false;
        else at += written;
      }
    },
  };
}

/** Writes what the other side takes. Who reads through a pipe may have enough before the end, as `head` does: no failure. */
function writeSome(descriptor: number, bytes: Uint8Array, from: number): number | 'closed' {
  try {
    return writeSync(descriptor, bytes, from);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'EPIPE' || code === 'EOF') return 'closed';
    if (code !== 'EAGAIN') throw error;
    waitShortly();
    return 0;
  }
}

/** The calendar day of the machine's own zone: a grower's today. */
function today(): Day {
  const now = new Date();
  return dayOf(now.getFullYear(), now.getMonth() + 1, now.getDate());
}

/** Standard input to its end; nothing where it is closed. */
function readInput(): Uint8Array {
  const chunks: Uint8Array[] = [];
  for (;;) {
    const chunk = Buffer.alloc(65_536);
    try {
      const length = readSync(0, chunk);
      if (length === 0) return Buffer.concat(chunks);
      chunks.push(chunk.subarray(0, length));
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      if (code === 'EOF' || code === 'EBADF') return Buffer.concat(chunks);
      if (code !== 'EAGAIN') throw error;
      waitShortly();
    }
  }
}

/** For a pipe that somebody made non-blocking and that is full, or empty. */
function waitShortly(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
}

function isDevice(descriptor: number): boolean {
  try {
    return fstatSync(descriptor).isCharacterDevice();
  } catch {
    return false;
  }
}
