// Finds recipe files in a folder. Apart from reading them, because it walks names only.

import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

export function isRecipeName(name: string): boolean {
  return /\.grow\.ya?ml$/u.test(name);
}

/** False too for what is not there or cannot be looked at. */
export function isFolder(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
  } catch {
    return false;
  }
}

export interface Found {
  /** Sorted, so that reports come in the same order everywhere. */
  readonly files: readonly string[];
  /** Folders that could not be listed. */
  readonly unlisted: readonly string[];
}

/** Every recipe below a folder. Hidden folders and `node_modules` are passed over, and links to folders are not followed. */
export function findRecipes(folder: string): Found {
  const files: string[] = [];
  const unlisted: string[] = [];
  const walk = (at: string): void => {
    const entries = list(at);
    if (entries === undefined) {
      unlisted.push(at);
      return;
    }
    for (const entry of entries) {
      const path = join(at, entry.name);
      if (entry.isDirectory()) {
        if (!entry.name.startsWith('.') && entry.name !== 'node_modules') walk(path);
      } else if (isRecipeName(entry.name) && !entry.name.startsWith('.')) {
        if (entry.isFile() || !isFolder(path)) files.push(path);
      }
    }
  };
  walk(folder);
  return { files, unlisted };
}

function list(folder: string) {
  try {
    const entries = readdirSync(folder, { withFileTypes: true });
    return entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch {
    return undefined;
  }
}
