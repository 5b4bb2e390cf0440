// Text as the client changes it, and files as the disk does.

import { type DidChangeTextDocumentParams, FileChangeType } from 'vscode-languageserver';
import { applyChange, type Document, type TextChange } from '../../syntax/document.ts';
import { offsetAt } from '../../syntax/position.ts';
import { told } from '../guard.ts';
import { listAgain } from '../listing.ts';
import { arrived, changed, fetchFile } from '../reading.ts';
import type { Session } from '../session.ts';
import { forgetFindings } from './diagnostics.ts';

export function handleText(session: Session): void {
  const { connection, workspace, open } = session;
  connection.onDidOpenTextDocument(
    told(session, 'opening a file', ({ textDocument: { uri, languageId, version, text } }) => {
      open.set(uri, { languageId, version });
      workspace.open(uri, text);
      changed(session, uri);
    }),
  );
  connection.onDidChangeTextDocument(told(session, 'changing a file', params => edit(session, params)));
  connection.onDidCloseTextDocument(
    told(session, 'closing a file', ({ textDocument: { uri } }) => {
      open.delete(uri);
      const users = workspace.usersOf(uri);
      workspace.close(uri);
      forgetFindings(session, uri);
      for (const user of users) changed(session, user);
      // What the disk holds counts again.
      if (users.length === 0 && session.listed.has(uri)) void fetchFile(session, uri);
    }),
  );
  connection.onDidChangeWatchedFiles(
    told(session, 'files on disk', ({ changes }) => {
      for (const { uri, type } of changes) {
        if (workspace.isOpen(uri)) continue;
        if (workspace.usersOf(uri).length === 0 && !workspace.has(uri)) {
          // Only a listing tells whether a new file is one that its user wants to see.
          if (type === FileChangeType.Created) listAgain(session);
          continue;
        }
        if (type === FileChangeType.Deleted) arrived(session, uri, { kind: 'none', why: 'absent' });
        else void fetchFile(session, uri);
      }
    }),
  );
}

function edit(session: Session, { textDocument, contentChanges }: DidChangeTextDocumentParams): void {
  const { workspace, open, encoding } = session;
  const { uri, version } = textDocument;
  const file = open.get(uri);
  let document: Document | undefined = workspace.documentOf(uri);
  if (file === undefined || document === undefined) return;
  file.version = version;
  const changes: TextChange[] = [];
  for (const change of contentChanges) {
    const at: TextChange =
      'range' in change
        ? {
            from: offsetAt(document, change.range.start, encoding),
            to: offsetAt(document, change.range.end, encoding),
            text: change.text,
          }
        : { from: 0, to: document.length, text: change.text };
    changes.push(at);
    // Each range counts in the text that the changes before it left.
    if (changes.length < contentChanges.length) document = applyChange(document, at);
  }
  workspace.change(uri, changes);
  changed(session, uri);
}
