// The workspaces in which recipes are opened one after another: for each root one, which keeps the files that its recipes have used,
// so that what many borrow from is read once.

import { diskFiles } from '../host/disk.ts';
import { Workspace } from '../workspace/workspace.ts';

export class Shelves {
  readonly #byRoot = new Map<string, Shelf>();

  /** Begun anew when it holds many files, and forgotten when there are many roots. */
  of(root: string): Shelf {
    const known = this.#byRoot.get(root);
    if (known !== undefined && known.workspace.uris.length <= mostKept) return known;
    const shelf = new Shelf(root);
    this.#byRoot.delete(root);
    this.#byRoot.set(root, shelf);
    const [oldest] = this.#byRoot.keys();
    if (this.#byRoot.size > mostRoots && oldest !== undefined) this.#byRoot.delete(oldest);
    return shelf;
  }
}

const mostKept = 100;
const mostRoots = 8;

class Shelf {
  readonly workspace = new Workspace();
  readonly #files;

  constructor(root: string) {
    this.#files = diskFiles(root);
  }

  /** Reads what is used, and what that uses, until nothing more is wanted. */
  async readWanted(): Promise<void> {
    const { workspace } = this;
    for (let wanted = workspace.wanted(); wanted.length > 0; wanted = workspace.wanted()) {
      for (const uri of wanted) workspace.arrived(uri, await this.#files.read(uri));
    }
  }
}
