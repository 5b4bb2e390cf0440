// Opens the one recipe of a command, or says why it cannot be read.

import { relative } from 'node:path';
import { originOfCopy } from '../host/blob-copy.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { type Input, inputOf, openRecipes, slashed } from './open-recipes.ts';
import { complain, type Io } from './output.ts';

/** Undefined where it cannot be read, which has then been said. */
export async function openOne(
  asked: { readonly file: string; readonly stdinFilename?: string },
  io: Io,
): Promise<{ readonly input: Input; readonly snapshot: Snapshot } | undefined> {
  const input = atItsOrigin(inputOf(asked.file, io.cwd, asked.stdinFilename), io.cwd);
  const [opened] = await openRecipes([input], io);
  if (opened?.kind === 'opened') return opened;
  complain(io, `${input.name}: ${opened?.says ?? 'it cannot be read'}`);
  return undefined;
}

/** A copy that git made to compare it is read as the file that it is a copy of, with all that this file uses. */
function atItsOrigin(input: Input, cwd: string): Input {
  const origin = input.fromStdin ? undefined : originOfCopy(input.path, cwd);
  return origin === undefined
    ? input
    : { ...input, path: origin, name: slashed(relative(cwd, origin)), copy: input.path };
}
