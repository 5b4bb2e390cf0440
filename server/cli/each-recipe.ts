// Opens recipes one after another and lets go of each before the next, so that a thousand take no more memory than one. What they use
// is read once and kept for those that follow.

import { diskFiles, readDisk, rootOf, textOfBytes, uriOf } from '../host/disk.ts';
import type { Files } from '../workspace/files.ts';
import { Workspace } from '../workspace/workspace.ts';
import type { Input, Opened } from './open-recipes.ts';
import type { Io } from './output.ts';

export interface EachOptions {
  /** Says for a recipe whose `use` has been followed whether it is wanted at all. */
  readonly isWanted?: (uri: string, workspace: Workspace) => boolean;
}

/** The inputs in their order, those that are not wanted left out. */
export async function* eachRecipe(
  inputs: readonly Input[],
  io: Io,
  { isWanted = () => true }: EachOptions = {},
): AsyncGenerator<Opened & { readonly root: string }> {
  const shelves = new Shelves();
  for (const input of inputs) {
    const root = rootOf(input.path, io.cwd);
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
    await readWanted(shelf);
    if (isWanted(uri, workspace)) {
      const snapshot = workspace.snapshot(uri);
      if (snapshot === undefined) throw new Error('a recipe that was opened is not there');
      yield { kind: 'opened', input, snapshot, root };
    }
    if (!kept) workspace.close(uri);
  }
}

interface Shelf {
  readonly workspace: Workspace;
  readonly files: Files;
}

/** For each root a workspace with the files that its recipes have used so far; begun anew when it holds many. */
class Shelves {
  readonly #byRoot = new Map<string, Shelf>();

  of(root: string): Shelf {
    const known = this.#byRoot.get(root);
    if (known !== undefined && known.workspace.uris.length <= mostKept) return known;
    const shelf = { workspace: new Workspace(), files: diskFiles(root) };
    this.#byRoot.delete(root);
    this.#byRoot.set(root, shelf);
    const [oldest] = this.#byRoot.keys();
    if (this.#byRoot.size > mostRoots && oldest !== undefined) this.#byRoot.delete(oldest);
    return shelf;
  }
}

const mostKept = 100;
const mostRoots = 8;

/** Reads what is used, and what that uses, until nothing more is wanted. */
async function readWanted({ workspace, files }: Shelf): Promise<void> {
  for (let wanted = workspace.wanted(); wanted.length > 0; wanted = workspace.wanted()) {
    for (const uri of wanted) workspace.arrived(uri, await files.read(uri));
  }
}
