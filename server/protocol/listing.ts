// The recipes of the open folders, read so that answers about all of them know those that nobody has opened. Apart from the text of
// open files, because it only ever adds what the disk says.

import type { FileText } from '../workspace/files.ts';
import { unattended } from './guard.ts';
import { findingsChanged } from './handlers/diagnostics.ts';
import { arrived, fetchWanted } from './reading.ts';
import { type ListFilesParams, type ListFilesResult, listFilesRequest } from './requests.ts';
import { isBelow, type Session } from './session.ts';

/** Lists the open folders anew and reads what is new in them; many reasons at once are one listing after the one under way. */
export function listAgain(session: Session): void {
  const { surroundings, can } = session;
  if (surroundings.list === undefined && !can.listsFiles) return;
  const before = session.indexed;
  const next: Promise<void> = before.then(() => (session.indexed === next ? listNow(session) : undefined));
  session.indexed = next;
}

function listNow(session: Session): Promise<void> {
  return unattended(session, 'listing recipes', async () => {
    const { roots, workspace, surroundings } = session;
    const found = new Set<string>();
    for (const root of roots) for (const uri of await list(session, root)) found.add(uri);
    const before = session.listed;
    session.listed = found;
    for (const uri of before) {
      // What lies in no open folder any more is forgotten, unless an open recipe uses it.
      const isGone = !roots.some(root => isBelow(root, uri)) && !workspace.isOpen(uri);
      if (isGone) arrived(session, uri, { kind: 'none', why: 'outside' });
      else if (!found.has(uri)) findingsChanged(session, [uri]);
    }
    for (const uri of found) {
      if (workspace.has(uri)) {
        // Read already because somebody uses it, and told only from now on.
        if (!before.has(uri)) findingsChanged(session, [uri]);
        continue;
      }
      const file: FileText = await surroundings.read(uri, { folders: roots, users: [] });
      if (!workspace.has(uri)) arrived(session, uri, file);
    }
    fetchWanted(session);
  });
}

async function list({ connection, surroundings, can }: Session, folder: string): Promise<readonly string[]> {
  if (!can.listsFiles) return (await surroundings.list?.(folder)) ?? [];
  const { uris } = await connection.sendRequest<ListFilesResult>(listFilesRequest, {
    folder,
  } satisfies ListFilesParams);
  return uris;
}
