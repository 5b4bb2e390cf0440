// `tidemark completion`: the script by which a shell completes commands, options and values.

import { type Asked, commandTree } from '../args.ts';
import { completionFor } from '../completion.ts';
import { type ExitCode, exit, type Io } from '../output.ts';

export function completion(
  { shell }: Extract<Asked, { command: 'completion' }>,
  checkFormats: readonly string[],
  io: Io,
): ExitCode {
  io.out.write(
    completionFor(
      shell,
      commandTree(checkFormats, () => {}),
    ),
  );
  return exit.clean;
}
