// Findings as diagnostics: pulled where the client pulls, pushed where it does not.

import {
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentDiagnosticReport,
  DocumentDiagnosticReportKind,
  type FullDocumentDiagnosticReport,
  type UnchangedDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { isStructural } from '../../answers/structural.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { asked, guarded, told } from '../guard.ts';
import { allRecipes, isTold, leftToOthers, type Session } from '../session.ts';
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
  /** The files for which findings were pushed last, so that they can be taken back. */
  readonly withFindings: Set<string>;
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
    withFindings: new Set(),
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
  for (const uri of uris) if (isTold(session, uri) || waiting.withFindings.has(uri)) waiting.uris.add(uri);
  waiting.fresh = true;
  if (waiting.scheduled) return;
  waiting.scheduled = true;
  pushWhenQuiet(session, waiting, mostRounds);
}

/**
 * The changes of a burst arrive one a round: what an earlier one leads to is never worked out. Of the files that nobody has open one
 * is pushed a round, so that what is typed meanwhile comes first.
 */
function pushWhenQuiet(session: Session, waiting: Pending, rounds: number): void {
  session.surroundings.later(() => {
    if (waiting.fresh && rounds > 0) {
      waiting.fresh = false;
      pushWhenQuiet(session, waiting, rounds - 1);
      return;
    }
    const open = [...session.open.keys()].filter(uri => waiting.uris.has(uri));
    const now = open.length > 0 ? open : [...waiting.uris].slice(0, 1);
    for (const uri of now) {
      waiting.uris.delete(uri);
      push(session, waiting, uri);
    }
    waiting.scheduled = waiting.uris.size > 0;
    if (waiting.scheduled) pushWhenQuiet(session, waiting, mostRounds);
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
  else findingsChanged(session, allRecipes(session));
}

export function forgetFindings(session: Session, uri: string): void {
  const waiting = pending.get(session);
  waiting?.uris.delete(uri);
  waiting?.withFindings.delete(uri);
  if (!session.can.pullDiagnostics) void session.connection.sendDiagnostics({ uri, diagnostics: [] });
}

/** A file that nobody has open is not spoken of where there is nothing to say, nor to take back. */
function push(session: Session, { withFindings }: Pending, uri: string): void {
  told(session, 'findings', () => {
    const snapshot = isTold(session, uri) ? session.workspace.snapshot(uri) : undefined;
    const diagnostics = snapshot === undefined ? [] : diagnosticsOf(session, snapshot);
    const file = session.open.get(uri);
    if (file === undefined && diagnostics.length === 0 && !withFindings.has(uri)) return;
    if (diagnostics.length > 0) withFindings.add(uri);
    else withFindings.delete(uri);
    void session.connection.sendDiagnostics({ uri, ...(file && { version: file.version }), diagnostics });
  })(undefined);
}

function diagnosticsOf(session: Session, snapshot: Snapshot): Diagnostic[] {
  const others = leftToOthers(session, snapshot.uri);
  return guarded(
    session,
    `findings of ${snapshot.uri}`,
    () => [ownFault],
    () =>
      snapshot.findings
        .filter(({ finding }) => !(others && isStructural(finding.code)))
        .map(located => toDiagnostic(session, snapshot, located)),
  );
}

/** Stands in place of findings that could not be worked out: what was said before may not hold any more, and silence would be praise. */
const ownFault: Diagnostic = {
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
  severity: DiagnosticSeverity.Error,
  source: 'tidemark',
  message:
    'This recipe could not be checked: a fault in Tidemark, not in the recipe. What was found before is taken back; the log of the server says more.',
};
