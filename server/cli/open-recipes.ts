// Opens the recipes that a command was given, with all files they use, and takes a snapshot of each.

import { relative, resolve, sep } from 'node:path';
import { diskFiles, pathOf, readDisk, rootOf, textOfBytes, uriOf } from '../host/disk.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { Workspace } from '../workspace/workspace.ts';
import type { Io } from './output.ts';

/** A recipe as it was named: a path, or `-` for standard input. */
export interface Input {
  readonly path: string;
  /** How reports call it, with forward slashes. */
  readonly name: string;
  readonly fromStdin: boolean;
  /** Where its text lies, if that is another place, as where git compares copies. */
  readonly copy?: string;
}

export type Opened =
  | { readonly kind: 'opened'; readonly input: Input; readonly snapshot: Snapshot }
  | { readonly kind: 'unread'; readonly input: Input; readonly says: string };

export function inputOf(named: string, cwd: string, stdinFilename?: string): Input {
  const fromStdin = named === '-';
  const path = resolve(cwd, fromStdin ? (stdinFilename ?? 'stdin.grow.yaml') : named);
  return { path, name: slashed(fromStdin ? (stdinFilename ?? '-') : named), fromStdin };
}

/** Opens all inputs, in their order. Those below one root share a workspace, so that what they use is read once. */
export async function openRecipes(inputs: readonly Input[], io: Io): Promise<readonly Opened[]> {
  const workspaces = new Map<string, Workspace>();
  const opened: Opened[] = [];
  const taken: (() => Opened)[] = [];
  for (const input of inputs) {
    const read = input.fromStdin
      ? ({ kind: 'text', text: textOfBytes(io.readInput()) } as const)
      : readDisk(input.copy ?? input.path);
    if (read.kind === 'none') {
      taken.push(() => ({ kind: 'unread', input, says: read.says }));
      continue;
    }
    const root = rootOf(input.path, io.cwd);
    const workspace = workspaces.get(root) ?? new Workspace();
    workspaces.set(root, workspace);
    const uri = uriOf(input.path);
    workspace.open(uri, read.text);
    taken.push(() => {
      const snapshot = workspace.snapshot(uri);
      if (snapshot === undefined) throw new Error('a recipe that was opened is not there');
      return { kind: 'opened', input, snapshot };
    });
  }
  for (const [root, workspace] of workspaces) await readWanted(workspace, root);
  for (const take of taken) opened.push(take());
  return opened;
}

/** Reads what is used, and what that uses, until nothing more is wanted. */
async function readWanted(workspace: Workspace, root: string): Promise<void> {
  const files = diskFiles(root);
  for (let wanted = workspace.wanted(); wanted.length > 0; wanted = workspace.wanted()) {
    for (const uri of wanted) workspace.arrived(uri, await files.read(uri));
  }
}

/** How reports call the file of a URI: as it was named, or by its path from the current folder. */
export function namer(inputs: readonly Input[], cwd: string): (uri: string) => string {
  const named = new Map(inputs.map(input => [uriOf(input.path), input.name]));
  return uri => {
    const path = pathOf(uri);
    return named.get(uri) ?? (path === undefined ? uri : slashed(relative(cwd, path)));
  };
}

export function slashed(path: string): string {
  const parts = sep === '/' ? path : path.split(sep).join('/');
  return parts.replace(/^(?:\.\/)+(?=.)/u, '');
}
