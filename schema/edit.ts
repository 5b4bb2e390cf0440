// What a fix or a command wants changed, said in places. Only `server/syntax/edit.ts` turns these into text.

import type { Path, Place } from './place.ts';

export type Edit =
  /** Puts `text` (YAML as it is to be written) in place of a value or of a slice of a scalar. */
  | { readonly kind: 'replace'; readonly at: Place; readonly text: string }
  /** Gives the pair at a path another key. `nth` tells equal keys apart. */
  | { readonly kind: 'rename'; readonly path: Path; readonly nth?: number; readonly key: string }
  /** Adds `key: text` to the map at a path, after its last pair; `first`: at the top of the file, before its first key. */
  | {
      readonly kind: 'insert';
      readonly into: Path;
      readonly key: string;
      readonly text: string;
      readonly first?: boolean;
    }
  /**
   * Adds an item to the list at a path, after its last item, or before the item of a number. The list is made when the key is missing.
   */
  | { readonly kind: 'append'; readonly to: Path; readonly text: string; readonly before?: number }
  /** Takes out the pair or item at a path with its line. `nth` tells equal keys apart. */
  | { readonly kind: 'remove'; readonly path: Path; readonly nth?: number };
