// Readings and top-ups that an editor wants written down: what can be recorded, and the edit that does it.

import { record } from '../../answers/record/record.ts';
import { recordable } from '../../answers/record/recordable.ts';
import { asked } from '../guard.ts';
import {
  type Recordable,
  type RecordableParams,
  type RecordParams,
  type RecordResult,
  recordableRequest,
  recordRequest,
} from '../requests.ts';
import type { Session } from '../session.ts';
import { toTextEdit } from '../to-lsp.ts';

export function handleRecording(session: Session): void {
  const { connection, workspace, open } = session;
  connection.onRequest(
    recordableRequest,
    asked(
      session,
      'what can be recorded',
      () => null,
      ({ uri }: RecordableParams): Recordable | null => {
        const snapshot = workspace.snapshot(uri);
        return snapshot === undefined ? null : recordable(snapshot);
      },
    ),
  );
  connection.onRequest<RecordResult, never>(
    recordRequest,
    asked<RecordParams, RecordResult>(session, 'recording', notRecorded, ({ uri, recording }) => {
      const snapshot = workspace.snapshot(uri);
      if (snapshot === undefined) return notRecorded();
      const recorded = record(snapshot, recording);
      if (recorded.kind === 'refused') return recorded;
      const edit = toTextEdit(session, snapshot.document, recorded.change);
      return { kind: 'edit', version: open.get(uri)?.version ?? null, edit, findings: recorded.findings };
    }),
  );
}

function notRecorded(): RecordResult {
  return { kind: 'refused', complaints: [{ about: 'entry', says: 'the language server has no such recipe open.' }] };
}
