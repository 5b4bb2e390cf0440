// Formatting, whole and in part, only when it is asked for.

import type { TextEdit } from 'vscode-languageserver';
import { type Formatted, format, formatRange } from '../../answers/format.ts';
import { offsetAt } from '../../syntax/position.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { asked } from '../guard.ts';
import type { Session } from '../session.ts';
import { toTextEdit } from '../to-lsp.ts';

export function handleFormatting(session: Session): void {
  const { connection, workspace, encoding } = session;
  connection.onDocumentFormatting(
    asked(
      session,
      'formatting',
      () => null,
      ({ textDocument }): TextEdit[] | null => {
        const snapshot = workspace.snapshot(textDocument.uri);
        return snapshot === undefined ? null : toEdits(session, snapshot, format(snapshot.document));
      },
    ),
  );
  connection.onDocumentRangeFormatting(
    asked(
      session,
      'formatting lines',
      () => null,
      ({ textDocument, range }): TextEdit[] | null => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const { document } = snapshot;
        const lines = { from: offsetAt(document, range.start, encoding), to: offsetAt(document, range.end, encoding) };
        return toEdits(session, snapshot, formatRange(document, lines));
      },
    ),
  );
}

function toEdits(session: Session, { document }: Snapshot, formatted: Formatted): TextEdit[] | null {
  return formatted.kind === 'broken' ? null : formatted.changes.map(change => toTextEdit(session, document, change));
}
