// Which recipes a change touches: those that it changes, and those that use what it changes, directly or not.

import { join } from 'node:path';
import { changedSince } from '../host/changed.ts';
import { rootOf, uriOf } from '../host/disk.ts';
import type { Workspace } from '../workspace/workspace.ts';
import type { Input } from './open-recipes.ts';

/** The URIs of what has changed. Asks Git once for each repository that the inputs are in; a text says why it cannot tell. */
export function changedFiles(revision: string, inputs: readonly Input[], cwd: string): ReadonlySet<string> | string {
  const uris = new Set<string>();
  const roots = new Set(inputs.map(input => rootOf(input.path, cwd)));
  for (const root of roots) {
    const changed = changedSince(revision, root);
    if (changed.kind === 'trouble') return changed.says;
    for (const name of changed.names) uris.add(uriOf(join(root, name)));
  }
  return uris;
}

/** Whether a recipe, its `use` followed, is touched by these changes. */
export function isTouched(uri: string, workspace: Workspace, changed: ReadonlySet<string>): boolean {
  return changed.has(uri) || workspace.usedBy(uri).some(used => changed.has(used));
}
