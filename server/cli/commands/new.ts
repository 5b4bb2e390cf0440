// `tidemark new`: a recipe to start from, printed or written to a file that is not there yet.

import { closeSync, openSync, writeSync } from 'node:fs';
import { resolve } from 'node:path';
import { isRecipeName } from '../../host/find-recipes.ts';
import { starter } from '../../reports/starter.ts';
import type { Asked } from '../args.ts';
import { complain, type ExitCode, exit, type Io } from '../output.ts';

export function newRecipe({ name, us }: Extract<Asked, { command: 'new' }>, io: Io): ExitCode {
  const text = starter(us ? 'us' : 'metric', io.today());
  if (name === undefined) {
    io.out.write(text);
    return exit.clean;
  }
  const file = isRecipeName(name) ? name : `${name}.grow.yaml`;
  const trouble = create(resolve(io.cwd, file), text);
  complain(io, `${file}: ${trouble ?? 'written; `tidemark plan` shows what it comes to.'}`);
  return trouble === undefined ? exit.clean : exit.trouble;
}

/** Writes a new file; what is there already is never touched. */
function create(path: string, text: string): string | undefined {
  try {
    const descriptor = openSync(path, 'wx');
    try {
      writeSync(descriptor, text);
    } finally {
      closeSync(descriptor);
    }
    return undefined;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    if (code === 'EEXIST') return 'it is there already; nothing was written';
    if (code === 'ENOENT') return 'its folder is not there; nothing was written';
    return code === 'EACCES' || code === 'EPERM' || code === 'EROFS'
      ? 'writing it is not permitted; nothing was written'
      : `it cannot be written (${code})`;
  }
}
