// Files that nobody has open, read from where they are, and who has to know when one says something new.

import type { FileText } from '../workspace/files.ts';
import { unattended } from './guard.ts';
import { findingsChanged } from './handlers/diagnostics.ts';
import type { Session } from './session.ts';

/** A file says something new: its findings and those of its users may differ, and it may use files not read yet. */
export function changed(session: Session, uri: string): void {
  fetchWanted(session);
  findingsChanged(session, [uri, ...session.workspace.usersOf(uri)]);
}

/** A file has been read, or is gone. */
export function arrived(session: Session, uri: string, file: FileText): void {
  const users = session.workspace.usersOf(uri);
  session.workspace.arrived(uri, file);
  fetchWanted(session);
  findingsChanged(session, [uri, ...users]);
}

function isUnderWay(session: Session, uri: string): boolean {
  return underWay.get(session)?.has(uri) === true;
}

/** The files that are being read; those that changed meanwhile are read again. */
const underWay = new WeakMap<Session, Map<string, 'reading' | 'again'>>();

export function fetchFile(session: Session, uri: string): Promise<void> {
  const fetching = underWay.get(session) ?? new Map<string, 'reading' | 'again'>();
  underWay.set(session, fetching);
  if (fetching.has(uri)) {
    fetching.set(uri, 'again');
    return Promise.resolve();
  }
  return unattended(session, `reading ${uri}`, async () => {
    const { surroundings, roots, workspace } = session;
    const within = { folders: roots, users: workspace.usersOf(uri) };
    try {
      let file: FileText;
      do {
        fetching.set(uri, 'reading');
        file = await surroundings.read(uri, within);
      } while (fetching.get(uri) === 'again');
      fetching.delete(uri);
      arrived(session, uri, file);
    } finally {
      fetching.delete(uri);
    }
  });
}

/** Reads the files that are used and have not been read. */
export function fetchWanted(session: Session): void {
  for (const wanted of session.workspace.wanted()) if (!isUnderWay(session, wanted)) void fetchFile(session, wanted);
}

/** Reads anew what lay outside the folders that were open, and may lie inside them now. */
export function foldersChanged(session: Session): void {
  for (const uri of session.workspace.missing('outside')) void fetchFile(session, uri);
}
