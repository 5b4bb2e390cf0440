// Checks inputs one after another. What it is told and what it gives are plain data, so that another thread can be asked the same.

import { relative } from 'node:path';
import { type FileReport, reportOf } from '../reports/findings/reported.ts';
import { eachRecipe, type IsWanted } from './each-recipe.ts';
import { type Input, slashed } from './open-recipes.ts';
import type { Io } from './output.ts';
import type { Shelves } from './shelves.ts';
import { isTouched } from './since.ts';

export type Checked =
  | { readonly kind: 'checked'; readonly report: FileReport }
  /** Why there is nothing to check. */
  | { readonly kind: 'unread'; readonly says: string };

export interface Checking {
  /** The folder from which paths are counted. */
  readonly cwd: string;
  /** The URIs of files that have changed, where only what they touch is to be checked. */
  readonly changed?: ReadonlySet<string>;
}

/** In the order of the inputs, what is not to be checked left out. */
export async function* checkInputs(
  inputs: readonly Input[],
  { cwd, changed }: Checking,
  readInput: Io['readInput'],
  shelves: Shelves,
): AsyncGenerator<Checked> {
  const isWanted: IsWanted = (uri, workspace) => changed === undefined || isTouched(uri, workspace, changed);
  for await (const one of eachRecipe(inputs, { cwd, readInput }, shelves, isWanted)) {
    if (one.kind === 'unread') yield { kind: 'unread', says: `${one.input.name}: ${one.says}` };
    else yield { kind: 'checked', report: reportOf(one.snapshot, one.input.name, fromRoot(one.input, one.root)) };
  }
}

/** The path from the root; of what lies outside it, the whole path. Standard input without a name has only that. */
function fromRoot({ path, name, fromStdin }: Input, root: string): string {
  if (fromStdin && name === '-') return name;
  const way = slashed(relative(root, path));
  return way.startsWith('../') ? slashed(path) : way;
}
