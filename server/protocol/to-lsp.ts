// From our offsets and plain results to the protocol's shapes.

import {
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type Range as LspRange,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { findings, type Severity } from '../../schema/findings.ts';
import { memo } from '../plan/memo.ts';
import type { Document, TextChange } from '../syntax/document.ts';
import { nearestRange } from '../syntax/place.ts';
import { positionAt } from '../syntax/position.ts';
import type { Range } from '../syntax/tree.ts';
import { findingMessage } from '../words/finding.ts';
import type { Located } from '../workspace/located.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Session } from './session.ts';

export function toRange(session: Session, document: Document, range: Range): LspRange {
  const { encoding } = session;
  return { start: positionAt(document, range.from, encoding), end: positionAt(document, range.to, encoding) };
}

export function toTextEdit(session: Session, document: Document, edit: TextChange): TextEdit {
  return { range: toRange(session, document, edit), newText: edit.text };
}

/** Changes of several files; files that are open are changed as the client has them now. */
export function toWorkspaceEdit(
  session: Session,
  files: readonly { readonly uri: string; readonly edits: readonly TextChange[] }[],
): WorkspaceEdit {
  const all = files.flatMap(({ uri, edits }) => {
    const document = session.workspace.documentOf(uri);
    return document === undefined ? [] : [{ uri, edits: edits.map(edit => toTextEdit(session, document, edit)) }];
  });
  if (!session.can.versionedEdits) return { changes: Object.fromEntries(all.map(({ uri, edits }) => [uri, edits])) };
  const documentChanges = all.map(({ uri, edits }) => {
    const version = session.open.get(uri)?.version ?? null;
    return { textDocument: { uri, version }, edits };
  });
  return { documentChanges };
}

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** Most findings are those of the keystroke before. */
const messageOf = memo(findingMessage);

export function toDiagnostic(session: Session, snapshot: Snapshot, { finding, range }: Located): Diagnostic {
  const { severity } = findings[finding.code];
  const diagnostic: Diagnostic = {
    range: toRange(session, snapshot.document, range),
    severity: severities[severity],
    code: finding.code,
    source: 'tidemark',
    message: messageOf(finding, snapshot.recipe.show),
  };
  if (finding.code === 'name-unused') diagnostic.tags = [DiagnosticTag.Unnecessary];
  const related = (finding.related ?? []).flatMap(({ at, says }) => {
    const uri = at.file ?? snapshot.uri;
    const document = snapshot.documentOf(uri);
    if (document === undefined) return [];
    return [{ location: { uri, range: toRange(session, document, nearestRange(document, at)) }, message: says }];
  });
  if (related.length > 0) diagnostic.relatedInformation = related;
  return diagnostic;
}
