// Findings in every recipe of the open folders, for a client that asks for all of them. One file after the other, with room for other
// questions between them.

import {
  type CancellationToken,
  LSPErrorCodes,
  ResponseError,
  type WorkDoneProgressReporter,
  type WorkspaceDiagnosticParams,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { unattended } from '../guard.ts';
import { allRecipes, type Session } from '../session.ts';
import { reportOf } from './diagnostics.ts';

export function handleAllDiagnostics(session: Session): void {
  if (!session.can.pullDiagnostics) return;
  session.connection.languages.diagnostics.onWorkspace(async (params, token, progress) => {
    await session.indexed;
    return reportAll(session, params, token, progress);
  });
}

async function reportAll(
  session: Session,
  { previousResultIds }: WorkspaceDiagnosticParams,
  token: CancellationToken,
  progress: WorkDoneProgressReporter,
): Promise<WorkspaceDiagnosticReport | ResponseError<never>> {
  const previous = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
  const all = allRecipes(session);
  const items: WorkspaceDocumentDiagnosticReport[] = [];
  // A client asks again and again; it is told how far we are only where there is much to do.
  const isLong = all.some(uri => !previous.has(uri));
  if (isLong) progress.begin('Checking recipes', 0);
  for (const [done, uri] of all.entries()) {
    if (token.isCancellationRequested) break;
    await unattended(session, `findings of ${uri}`, async () => {
      const snapshot = session.workspace.snapshot(uri);
      if (snapshot === undefined) return;
      const version = session.open.get(uri)?.version ?? null;
      const report = reportOf(session, snapshot, previous.get(uri));
      items.push({ ...report, uri, version });
      if (report.kind === 'unchanged') return;
      if (isLong) progress.report(Math.round((100 * (done + 1)) / all.length));
      await new Promise<void>(resume => session.surroundings.later(resume));
    });
  }
  if (isLong) progress.done();
  if (token.isCancellationRequested) return new ResponseError<never>(LSPErrorCodes.RequestCancelled, 'cancelled');
  // What is gone has no findings any more.
  const gone = [...previous.keys()].filter(uri => !all.includes(uri));
  for (const uri of gone) items.push({ kind: 'full', uri, version: null, items: [] });
  return { items };
}
