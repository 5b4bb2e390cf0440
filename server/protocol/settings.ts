// The editor's settings, asked for again whenever they may have changed.

import { CodeLensRefreshRequest, DidChangeConfigurationNotification } from 'vscode-languageserver';
import { readSettings, type Settings } from '../../schema/settings.ts';
import { told, unattended } from './guard.ts';
import { allFindingsChanged } from './handlers/diagnostics.ts';
import { listAgain } from './listing.ts';
import type { Session } from './session.ts';

export function handleSettings(session: Session): void {
  const { connection, can } = session;
  connection.onDidChangeConfiguration(
    told(session, 'changed settings', ({ settings }: { settings?: { tidemark?: unknown } | null }) => {
      if (can.configuration) void unattended(session, 'settings', () => askForSettings(session));
      else take(session, settings?.tidemark);
      // Which files its user does not want to see may be another thing that has changed.
      listAgain(session);
    }),
  );
}

/** Asks for the settings anew, as when other folders are open. */
export async function settingsChanged(session: Session): Promise<void> {
  if (session.can.configuration) await askForSettings(session);
}

/** Registers for changes where the client wants that, and asks for the settings in force. */
export async function startSettings(session: Session): Promise<void> {
  const { connection, can } = session;
  if (can.configurationRegistration) {
    await connection.client.register(DidChangeConfigurationNotification.type, { section: 'tidemark' });
  }
  if (can.configuration) await askForSettings(session);
}

async function askForSettings(session: Session): Promise<void> {
  const { connection, roots } = session;
  const section = 'tidemark';
  const items = [{ section }, ...roots.map(scopeUri => ({ scopeUri, section }))];
  const [outside, ...inFolders] = await connection.workspace.getConfiguration(items);
  take(session, outside, new Map(roots.map((root, at) => [root, readSettings(inFolders[at])])));
}

function take(session: Session, sent: unknown, inFolders: ReadonlyMap<string, Settings> = new Map()): void {
  const said = () => JSON.stringify([session.settings, ...session.folderSettings]);
  const before = said();
  session.settings = readSettings(sent);
  session.folderSettings = inFolders;
  if (said() === before) return;
  allFindingsChanged(session);
  if (session.can.refreshLenses) session.connection.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined);
}
