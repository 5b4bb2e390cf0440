// The recipes that a command's paths name: files, all recipes in folders, standard input.

import { join } from 'node:path';
import { findRecipes, isFolder } from '../host/find-recipes.ts';
import { type Input, inputOf } from './open-recipes.ts';

export interface Inputs {
  readonly inputs: readonly Input[];
  readonly troubles: string[];
}

/** Every recipe that the paths name, each once. */
export function inputsOf(paths: readonly string[], stdinFilename: string | undefined, cwd: string): Inputs {
  const inputs = new Map<string, Input>();
  const troubles: string[] = [];
  const add = (named: string): void => {
    const input = inputOf(named, cwd, stdinFilename);
    if (!inputs.has(input.path)) inputs.set(input.path, input);
  };
  for (const path of paths) {
    const folder = inputOf(path, cwd).path;
    if (path === '-' || !isFolder(folder)) {
      add(path);
      continue;
    }
    const found = findRecipes(folder);
    for (const file of found.files) add(join(path, file.slice(folder.length)));
    for (const at of found.unlisted)
      troubles.push(`${join(path, at.slice(folder.length))}: this folder cannot be listed`);
    if (found.files.length === 0 && found.unlisted.length === 0)
      troubles.push(`${path}: there is no recipe (*.grow.yaml, *.grow.yml) in this folder`);
  }
  return { inputs: [...inputs.values()], troubles };
}
