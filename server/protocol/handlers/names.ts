// Names over all files: where one is written, another name for it, and other names for the files themselves.

import {
  ErrorCodes,
  type Location,
  type PrepareRenameResult,
  ResponseError,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { editsForMoves } from '../../answers/navigate/moved-files.ts';
import { type Readers, references } from '../../answers/navigate/references.ts';
import { rename, renameable } from '../../answers/navigate/rename.ts';
import { offsetAt } from '../../syntax/position.ts';
import { askedAfter } from '../guard.ts';
import type { Session } from '../session.ts';
import { toRange, toWorkspaceEdit } from '../to-lsp.ts';

export function handleNames(session: Session): void {
  const { connection, workspace, encoding } = session;
  const indexed = (): Promise<void> => session.indexed;
  const readers: Readers = uri => [uri, ...workspace.usersOf(uri)].flatMap(one => workspace.snapshot(one) ?? []);
  connection.onReferences(
    askedAfter(
      session,
      'references',
      indexed,
      () => null,
      ({ textDocument, position, context }): Location[] | null => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const found = references(snapshot, offsetAt(snapshot.document, position, encoding), readers);
        return found.flatMap(({ uri, range, role }) => {
          const document = workspace.documentOf(uri);
          const isWanted = context.includeDeclaration || role === 'reference';
          return document === undefined || !isWanted ? [] : [{ uri, range: toRange(session, document, range) }];
        });
      },
    ),
  );
  connection.onPrepareRename(
    askedAfter(
      session,
      'whether a name can be changed',
      indexed,
      () => null,
      ({ textDocument, position }): PrepareRenameResult | null | ResponseError<never> => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const found = renameable(snapshot, offsetAt(snapshot.document, position, encoding));
        if (found.kind === 'refused') return refusal(found.why);
        return { range: toRange(session, snapshot.document, found.range), placeholder: found.name };
      },
    ),
  );
  connection.onRenameRequest(
    askedAfter(
      session,
      'another name',
      indexed,
      () => null,
      ({ textDocument, position, newName }): WorkspaceEdit | null | ResponseError<never> => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const renamed = rename(snapshot, offsetAt(snapshot.document, position, encoding), newName.trim(), readers);
        return renamed.kind === 'refused' ? refusal(renamed.why) : toWorkspaceEdit(session, renamed.files);
      },
    ),
  );
  connection.workspace.onWillRenameFiles(
    askedAfter(
      session,
      'other names for files',
      indexed,
      () => null,
      ({ files }): WorkspaceEdit | null => {
        const moves = files.map(({ oldUri, newUri }) => ({ from: oldUri, to: newUri }));
        const held = workspace.uris.flatMap(uri => workspace.snapshot(uri) ?? []);
        const edits = editsForMoves(held, moves);
        return edits.length === 0 ? null : toWorkspaceEdit(session, edits);
      },
    ),
  );
}

/** The editor shows the reason to whoever asked. */
function refusal(why: string): ResponseError<never> {
  return new ResponseError<never>(ErrorCodes.InvalidRequest, why);
}
