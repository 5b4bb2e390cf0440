// Gives files another text: prints it, tells which would change, or writes them. What that text is, a command says.

import { readDisk, textOfBytes } from '../host/disk.ts';
import { replaceFile } from '../host/replace-file.ts';
import type { Rewriting } from './args-files.ts';
import { inputsOf } from './inputs.ts';
import { complain, type ExitCode, exit, type Io } from './output.ts';

export type Rewritten =
  | { readonly kind: 'text'; readonly text: string }
  /** Why the file is left as it is. */
  | { readonly kind: 'refused'; readonly says: string };

/** The words of a command: what it does to a file, said of what is to be and of what has been done. */
export interface RewriteWords {
  readonly would: string;
  readonly done: string;
}

export function rewrite(
  { paths, check, write }: Rewriting & { readonly paths: readonly string[] },
  textFor: (text: string) => Rewritten,
  { would, done }: RewriteWords,
  io: Io,
): ExitCode {
  const { inputs, troubles } = inputsOf(paths, undefined, io.cwd);
  if (!check && !write && inputs.length > 1) {
    complain(io, 'one recipe is printed; for several say --write or --check.');
    return exit.trouble;
  }
  if (write && inputs.some(({ fromStdin }) => fromStdin)) {
    complain(io, 'standard input cannot be written to; leave out --write to print what it becomes.');
    return exit.trouble;
  }
  let changes = 0;
  for (const { path, name, fromStdin } of inputs) {
    const read = fromStdin ? ({ kind: 'text', text: textOfBytes(io.readInput()) } as const) : readDisk(path);
    const result = read.kind === 'text' ? textFor(read.text) : ({ kind: 'refused', says: read.says } as const);
    if (read.kind === 'none' || result.kind === 'refused') {
      troubles.push(`${name}: ${result.kind === 'refused' ? result.says : ''}`);
      continue;
    }
    const isChanged = result.text !== read.text;
    if (!check && !write) io.out.write(result.text);
    if (!isChanged) continue;
    changes++;
    if (check) io.out.write(`${name}: ${would}\n`);
    if (!write) continue;
    const trouble = replaceFile(path, read.text, result.text);
    if (trouble === undefined) complain(io, `${name}: ${done}`);
    else troubles.push(`${name}: ${trouble}`);
  }
  for (const trouble of troubles) complain(io, trouble);
  if (troubles.length > 0) return exit.trouble;
  return check && changes > 0 ? exit.findings : exit.clean;
}
