// Wires a connection to the workspace and the answers: the table of contents of the protocol.

import { type Connection, DidChangeWatchedFilesNotification } from 'vscode-languageserver';
import { capabilitiesFor } from './capabilities.ts';
import { told, unattended } from './guard.ts';
import { handleAllDiagnostics } from './handlers/all-diagnostics.ts';
import { handleColours } from './handlers/colours.ts';
import { handleDiagnostics } from './handlers/diagnostics.ts';
import { handleEditing } from './handlers/editing.ts';
import { handleFormatting } from './handlers/formatting.ts';
import { handleLenses } from './handlers/lenses.ts';
import { handleNames } from './handlers/names.ts';
import { handleNavigation } from './handlers/navigation.ts';
import { handleRecording } from './handlers/recording.ts';
import { handleReview } from './handlers/review.ts';
import { handleSheet } from './handlers/sheet.ts';
import { handleText } from './handlers/text.ts';
import { handleViews } from './handlers/views.ts';
import { listAgain } from './listing.ts';
import { foldersChanged } from './reading.ts';
import { type Session, type Surroundings, startSession } from './session.ts';
import { handleSettings, settingsChanged, startSettings } from './settings.ts';

/** Serves one client until it says goodbye. */
export function serve(connection: Connection, surroundings: Surroundings, version: string): void {
  connection.onInitialize(params => {
    const session = startSession(connection, surroundings, params);
    handleText(session);
    handleDiagnostics(session);
    handleAllDiagnostics(session);
    handleViews(session);
    handleEditing(session);
    handleRecording(session);
    handleReview(session);
    handleSheet(session);
    handleNavigation(session);
    handleNames(session);
    handleFormatting(session);
    handleColours(session);
    handleLenses(session);
    handleSettings(session);
    connection.onInitialized(
      told(session, 'starting', () => {
        void unattended(session, 'starting', () => startUp(session));
      }),
    );
    return { capabilities: capabilitiesFor(session), serverInfo: { name: 'tidemark', version } };
  });
  connection.listen();
}

async function startUp(session: Session): Promise<void> {
  const { connection, can } = session;
  if (can.folderChanges) {
    connection.workspace.onDidChangeWorkspaceFolders(
      told(session, 'changed folders', ({ added, removed }) => {
        const gone = new Set(removed.map(folder => folder.uri));
        session.roots = [...session.roots.filter(root => !gone.has(root)), ...added.map(folder => folder.uri)];
        foldersChanged(session);
        listAgain(session);
        void unattended(session, 'settings of folders', () => settingsChanged(session));
      }),
    );
  }
  if (can.watchRegistration) {
    const watchers = [{ globPattern: '**/*.grow.{yaml,yml}' }];
    await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
  }
  // What answers about all recipes waits for is begun before anything else is asked for.
  listAgain(session);
  await startSettings(session);
}
