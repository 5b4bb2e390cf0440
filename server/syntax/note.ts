// What the syntax has to say about a text: codes and parameters, never sentences to print. Apart from the catalogue of
// findings, which words them.

import type { Path } from '../../schema/place.ts';
import type { Range } from './tree.ts';

export type SyntaxFinding =
  /** Not YAML here; `reason` says in plain words what is wrong. */
  | { readonly code: 'yaml-invalid'; readonly params: { readonly reason: string } }
  /** A key that its map has already. */
  | { readonly code: 'name-duplicate'; readonly params: { readonly name: string } }
  | { readonly code: 'tab-indent'; readonly params: Record<never, never> }
  | { readonly code: 'conflict-marker'; readonly params: { readonly marker: string } }
  | { readonly code: 'second-document'; readonly params: Record<never, never> }
  | { readonly code: 'alias-limit'; readonly params: { readonly limit: number } }
  | { readonly code: 'file-too-large'; readonly params: { readonly limit: number } }
  | { readonly code: 'not-yaml'; readonly params: Record<never, never> };

/**
 * A finding and where it is. Broken text has no paths, so a note always carries a raw range, counted from the start of
 * its entry. Where a pair can be named, `path` (below the entry's base) and `nth` (among equal keys) name it too.
 */
export type SyntaxNote = SyntaxFinding & { readonly range: Range; readonly path?: Path; readonly nth?: number };
