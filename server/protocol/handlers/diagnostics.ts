// Findings as diagnostics: pulled where the client pulls, pushed where it does not.

import {
  type Diagnostic,
  type DocumentDiagnosticReport,
  DocumentDiagnosticReportKind,
  type FullDocumentDiagnosticReport,
  type UnchangedDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { type FindingCode, findings } from '../../../schema/findings.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { asked, told } from '../guard.ts';
import { leftToOthers, type Session } from '../session.ts';
import { toDiagnostic } from '../to-lsp.ts';

/** The files whose findings wait to be pushed. */
interface Pending {
  readonly uris: Set<string>;
  scheduled: boolean;
  /** Something has changed since we last looked. */
  fresh: boolean;
  refreshing: boolean;
  /** What a client was told about each state of a file; other settings make all of it old. */
  told: WeakMap<Snapshot, string>;
  results: number;
}

const pending = new WeakMap<Session, Pending>();

export function handleDiagnostics(session: Session): void {
  pending.set(session, {
    uris: new Set(),
    scheduled: false,
    fresh: false,
    refreshing: false,
    told: new WeakMap(),
    results: 0,
  });
  if (!session.can.pullDiagnostics) return;
  const { connection, workspace } = session;
  const nothing: DocumentDiagnosticReport = { kind: DocumentDiagnosticReportKind.Full, items: [] };
  connection.languages.diagnostics.on(
    asked(
      session,
      'findings',
      () => nothing,
      ({ textDocument, previousResultId }): DocumentDiagnosticReport => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return nothing;
        return reportOf(session, snapshot, previousResultId);
      },
    ),
  );
}

/** The findings of a file, or that they are what the client was told already. */
export function reportOf(
  session: Session,
  snapshot: Snapshot,
  previous: string | undefined,
): FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport {
  const state = pending.get(session);
  const known = state?.told.get(snapshot);
  if (known !== undefined && known === previous) {
    return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: known };
  }
  const items = diagnosticsOf(session, snapshot);
  if (state === undefined) return { kind: DocumentDiagnosticReportKind.Full, items };
  state.results += 1;
  const resultId = known ?? String(state.results);
  state.told.set(snapshot, resultId);
  return { kind: DocumentDiagnosticReportKind.Full, resultId, items };
}

/** Says that the findings of files may have changed. Pushes them after what has already arrived, so that stale work is dropped. */
export function findingsChanged(session: Session, uris: readonly string[]): void {
  const { open } = session;
  const waiting = pending.get(session);
  if (waiting === undefined) return;
  if (session.can.pullDiagnostics) {
    // The client asks again by itself for the file that is typed in, not for those that use it.
    if (uris.slice(1).some(uri => open.has(uri))) refresh(session, waiting);
    return;
  }
  for (const uri of uris) if (open.has(uri)) waiting.uris.add(uri);
  waiting.fresh = true;
  if (waiting.scheduled) return;
  waiting.scheduled = true;
  pushWhenQuiet(session, waiting, mostRounds);
}

/** The changes of a burst arrive one a round: what an earlier one leads to is never worked out. */
function pushWhenQuiet(session: Session, waiting: Pending, rounds: number): void {
  session.surroundings.later(() => {
    if (waiting.fresh && rounds > 0) {
      waiting.fresh = false;
      pushWhenQuiet(session, waiting, rounds - 1);
      return;
    }
    waiting.scheduled = false;
    const now = [...waiting.uris];
    waiting.uris.clear();
    for (const uri of now) push(session, uri);
  });
}

/** However long changes keep arriving, findings come after this many. */
const mostRounds = 100;

/** Asks a pulling client to pull again; many reasons at once are one question. */
function refresh(session: Session, waiting: Pending): void {
  if (!session.can.refreshDiagnostics || waiting.refreshing) return;
  waiting.refreshing = true;
  session.surroundings.later(() => {
    waiting.refreshing = false;
    session.connection.languages.diagnostics.refresh();
    if (session.can.refreshHints) session.connection.languages.inlayHint.refresh().catch(() => undefined);
  });
}

/** Asks for everything anew, as after a change of settings. */
export function allFindingsChanged(session: Session): void {
  const waiting = pending.get(session);
  if (waiting === undefined) return;
  waiting.told = new WeakMap();
  if (session.can.pullDiagnostics) refresh(session, waiting);
  else findingsChanged(session, [...session.open.keys()]);
}

export function forgetFindings(session: Session, uri: string): void {
  pending.get(session)?.uris.delete(uri);
  if (!session.can.pullDiagnostics) void session.connection.sendDiagnostics({ uri, diagnostics: [] });
}

function push(session: Session, uri: string): void {
  const file = session.open.get(uri);
  if (file === undefined) return;
  told(session, 'findings', () => {
    const snapshot = session.workspace.snapshot(uri);
    if (snapshot === undefined) return;
    const diagnostics = diagnosticsOf(session, snapshot);
    void session.connection.sendDiagnostics({ uri, version: file.version, diagnostics });
  })(undefined);
}

function diagnosticsOf(session: Session, snapshot: Snapshot): Diagnostic[] {
  const others = leftToOthers(session, snapshot.uri);
  return snapshot.findings
    .filter(({ finding }) => !(others && isStructural(finding.code)))
    .map(located => toDiagnostic(session, snapshot, located));
}

function isStructural(code: FindingCode): boolean {
  return findings[code].from === 'syntax' || code === 'key-unknown' || code === 'value-missing';
}
