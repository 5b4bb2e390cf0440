// Which recipes a change touches: those that it changes, and those that use what it changes, directly or not.

import { join } from 'node:path';
import { changedSince } from '../host/changed.ts';
import { rootOf, uriOf } from '../host/disk.ts';
import type { Workspace } from '../workspace/workspace.ts';
import type { Input } from './open-recipes.ts';

export interface Since {
  /** Whether a recipe, its `use` followed, is touched. */
  isTouched(uri: string, workspace: Workspace): boolean;
}

/** Asks Git once for each repository that the inputs are in; a text says why it cannot tell. */
export function touchedSince(revision: string, inputs: readonly Input[], cwd: string): Since | string {
  const uris = new Set<string>();
  const roots = new Set(inputs.map(input => rootOf(input.path, cwd)));
  for (const root of roots) {
    const changed = changedSince(revision, root);
    if (changed.kind === 'trouble') return changed.says;
    for (const name of changed.names) uris.add(uriOf(join(root, name)));
  }
  return {
    isTouched: (uri, workspace) => uris.has(uri) || workspace.usedBy(uri).some(used => uris.has(used)),
  };
}
