// Opens recipes one after another and lets go of each before the next, so that a thousand take no more memory than one. What they use
// is read once and kept for those that follow.

import { dirname } from 'node:path';
import { readDisk, rootOf, textOfBytes, uriOf } from '../host/disk.ts';
import type { Workspace } from '../workspace/workspace.ts';
import type { Input, Opened } from './open-recipes.ts';
import type { Io } from './output.ts';
import type { Shelves } from './shelves.ts';

/** Says for a recipe whose `use` has been followed whether it is wanted at all. */
export type IsWanted = (uri: string, workspace: Workspace) => boolean;

/** The inputs in their order, those that are not wanted left out. */
export async function* eachRecipe(
  inputs: readonly Input[],
  io: Pick<Io, 'cwd' | 'readInput'>,
  shelves: Shelves,
  isWanted: IsWanted,
): AsyncGenerator<Opened & { readonly root: string }> {
  const roots = new Map<string, string>();
  for (const input of inputs) {
    // Recipes of one folder have one root, and finding it asks the disk.
    const folder = dirname(input.path);
    const root = roots.get(folder) ?? rootOf(input.path, io.cwd);
    roots.set(folder, root);
    const shelf = shelves.of(root);
    const { workspace } = shelf;
    const uri = uriOf(input.path);
    // What another recipe has used is open already, with the same text.
    const kept = workspace.has(uri) && !input.fromStdin;
    if (!kept) {
      const read = input.fromStdin
        ? ({ kind: 'text', text: textOfBytes(io.readInput()) } as const)
        : readDisk(input.path);
      if (read.kind === 'none') {
        yield { kind: 'unread', input, says: read.says, root };
        continue;
      }
      workspace.open(uri, read.text);
    }
    await shelf.readWanted();
    if (isWanted(uri, workspace)) {
      const snapshot = workspace.snapshot(uri);
      if (snapshot === undefined) throw new Error('a recipe that was opened is not there');
      yield { kind: 'opened', input, snapshot, root };
    }
    if (!kept) workspace.close(uri);
  }
}
