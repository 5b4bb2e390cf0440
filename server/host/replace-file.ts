// Puts a new text in the place of a file at once: whoever reads it sees the old text or the new one, never a part.

import {
  closeSync,
  fchmodSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';

/**
 * Replaces the text of a file that still reads `before`. Answers what keeps it from being written, and then has changed nothing.
 * Links are followed, and the file keeps its permissions.
 */
export function replaceFile(path: string, before: string, after: string): string | undefined {
  try {
    const real = realpathSync(path);
    // Bytes that are no UTF-8 would be lost; and somebody may have saved the file since it was read.
    if (!readFileSync(real).equals(Buffer.from(before))) {
      return 'it has changed since it was read, or is not UTF-8; nothing was written';
    }
    const temporary = join(dirname(real), `.${basename(real)}.${process.pid}.new`);
    try {
      writeWhole(temporary, after, statSync(real).mode & 0o777);
      renameSync(temporary, real);
    } catch (error) {
      rmSync(temporary, { force: true });
      throw error;
    }
    return undefined;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return code === 'EACCES' || code === 'EPERM' || code === 'EROFS'
      ? 'writing it is not permitted; nothing was written'
      : `it cannot be written (${code}); nothing was written`;
  }
}

function writeWhole(path: string, text: string, mode: number): void {
  const descriptor = openSync(path, 'wx', mode);
  try {
    // The mode given at opening is cut by the process's mask.
    fchmodSync(descriptor, mode);
    const bytes = Buffer.from(text);
    for (let at = 0; at < bytes.length; ) at += writeSync(descriptor, bytes, at);
    // On the disk before the old text is given up.
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
