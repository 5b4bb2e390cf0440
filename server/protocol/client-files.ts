// Files that only the client can read: those of virtual file systems, and all of them where the server runs in a worker.

import type { Connection } from 'vscode-languageserver';
import type { FileText } from '../workspace/files.ts';
import { type ReadFileParams, type ReadFileResult, readFileRequest } from './requests.ts';
import type { Within } from './session.ts';

/**
 * Asks the client for the text of a file below one of the open folders; where none is open, beside a recipe that uses it. A client
 * that does not know the question cannot read the file.
 */
export async function readByClient(connection: Connection, uri: string, { folders, users }: Within): Promise<FileText> {
  const roots = folders.length > 0 ? folders : users.map(user => new URL('.', user).href);
  if (!roots.some(root => isBelow(root, uri))) return { kind: 'none', why: 'outside' };
  try {
    return await connection.sendRequest<ReadFileResult>(readFileRequest, { uri } satisfies ReadFileParams);
  } catch {
    return { kind: 'none', why: 'unreadable' };
  }
}

function isBelow(root: string, uri: string): boolean {
  return spelt(uri).startsWith(spelt(root).replace(/\/*$/, '/'));
}

/** Editors and we encode different letters of the same address. */
function spelt(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}
