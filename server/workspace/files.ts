// The interface by which text arrives: an editor's open documents, a disk, a virtual file system, a test. Apart from the
// workspace, which never reads a file itself.

import type { NoFile } from '../recipe/use.ts';

/** What a file holds, or why it cannot be had. */
export type FileText =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'none'; readonly why: NoFile };

/** Reads a file by its URI. The one promise below the protocol. */
export interface Files {
  read(uri: string): Promise<FileText>;
}
