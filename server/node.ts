// The language server in Node, over standard streams or the editor's own pipe.

import { fileURLToPath } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import packageJson from '../package.json' with { type: 'json' };
import { diskFiles, rootOf, uriOf } from './host/disk.ts';
import { findRecipes } from './host/find-recipes.ts';
import { keepHeapSmall } from './host/small-heap.ts';
import { readByClient } from './protocol/client-files.ts';
import { dropCancelled } from './protocol/guard.ts';
import { serve } from './protocol/serve.ts';
import type { Within } from './protocol/session.ts';
import type { FileText } from './workspace/files.ts';

keepHeapSmall();
const connection = createConnection(ProposedFeatures.all, { connectionStrategy: dropCancelled });
serve(connection, { read, list, later: run => setImmediate(run) }, packageJson.version);

/** Reads a file below one of the open folders; where none is open, below the root of a recipe that uses it. */
async function read(uri: string, within: Within): Promise<FileText> {
  // What is not on a disk, the editor may be able to read.
  if (!uri.startsWith('file:')) return readByClient(connection, uri, within);
  const { folders, users } = within;
  const roots = folders.length > 0 ? pathsOf(folders) : pathsOf(users).map(user => rootOf(user, user));
  let found: FileText = { kind: 'none', why: 'outside' };
  for (const root of roots) {
    found = await diskFiles(root).read(uri);
    if (found.kind === 'text' || found.why !== 'outside') return found;
  }
  return found;
}

/** The recipes below a folder of the disk, as the command line finds them. */
function list(root: string): Promise<readonly string[]> {
  const [path] = pathsOf([root]);
  return Promise.resolve(path === undefined ? [] : findRecipes(path).files.map(uriOf));
}

/** The paths of those URIs that name files on a disk. */
function pathsOf(uris: readonly string[]): readonly string[] {
  return uris.filter(uri => uri.startsWith('file:')).map(uri => fileURLToPath(uri));
}
