// What changes a text when its writer wants it to: completion and code actions.

import {
  type CodeAction,
  CodeActionKind,
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  InsertTextFormat,
  InsertTextMode,
  MarkupKind,
} from 'vscode-languageserver';
import { type Action, actions } from '../../answers/actions/actions.ts';
import { describe } from '../../answers/completion/about.ts';
import { type Completion, completion } from '../../answers/completion/completion.ts';
import { entryAt, openDocument, type TextChange, textOf } from '../../syntax/document.ts';
import { withChanges } from '../../syntax/edit.ts';
import { offsetAt, positionAt } from '../../syntax/position.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { fixAllKind } from '../capabilities.ts';
import { asked } from '../guard.ts';
import { leftToOthers, type Session } from '../session.ts';
import { toDiagnostic, toRange, toWorkspaceEdit } from '../to-lsp.ts';

export function handleEditing(session: Session): void {
  const { connection, workspace, encoding } = session;
  connection.onCompletion(
    asked(
      session,
      'completion',
      () => null,
      ({ textDocument, position }): CompletionList | null => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const all = completion(snapshot, offsetAt(snapshot.document, position, encoding));
        const offered = leftToOthers(session, snapshot.uri) ? all.filter(({ kind }) => kind !== 'key') : all;
        const items = offered.map((item, rank) => toCompletionItem(session, snapshot, item, rank));
        return { isIncomplete: false, items };
      },
    ),
  );
  // Documentation is written only for the item that is looked at.
  connection.onCompletionResolve(
    asked(
      session,
      'completion details',
      (item: CompletionItem) => item,
      (item: CompletionItem): CompletionItem => {
        const data: { uri?: unknown; about?: unknown } | undefined = item.data;
        const snapshot = typeof data?.uri === 'string' ? workspace.snapshot(data.uri) : undefined;
        const value = snapshot && typeof data?.about === 'string' ? describe(snapshot, data.about) : undefined;
        return value === undefined ? item : { ...item, documentation: { kind: MarkupKind.Markdown, value } };
      },
    ),
  );
  connection.onCodeAction(
    asked(
      session,
      'code actions',
      () => [],
      ({ textDocument, range, context }): CodeAction[] => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return [];
        const from = offsetAt(snapshot.document, range.start, encoding);
        const to = offsetAt(snapshot.document, range.end, encoding);
        return actions(snapshot, { from, to })
          .map(action => toCodeAction(session, snapshot, action))
          .filter(({ kind }) => context.only === undefined || context.only.some(only => isOfKind(kind, only)));
      },
    ),
  );
}

function toCompletionItem(session: Session, snapshot: Snapshot, item: Completion, rank: number): CompletionItem {
  const { can } = session;
  const snippet = can.snippets && item.snippet !== undefined;
  const text = snippet ? (item.snippet ?? item.text) : item.text;
  const range = toRange(session, snapshot.document, item.replaces);
  return {
    label: item.label,
    kind: completionKinds[item.kind],
    ...(item.detail === undefined || item.detail === '' ? {} : { detail: item.detail }),
    sortText: String(rank).padStart(4, '0'),
    filterText: item.filter ?? item.label,
    insertTextFormat: snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    ...(can.adjustsIndentation ? { insertTextMode: InsertTextMode.adjustIndentation } : {}),
    textEdit: { range, newText: can.adjustsIndentation ? text : indented(snapshot, item.replaces.from, text) },
    data: { uri: snapshot.uri, about: item.about },
  };
}

/** For editors that insert further lines as they come. */
function indented({ document }: Snapshot, offset: number, text: string): string {
  if (!text.includes('\n')) return text;
  const { entry, start } = entryAt(document, offset);
  const line = entry.text.slice(entry.text.lastIndexOf('\n', offset - start - 1) + 1, offset - start);
  return text.replaceAll('\n', `\n${' '.repeat(line.length - line.trimStart().length)}`);
}

const completionKinds: Readonly<Record<Completion['kind'], CompletionItemKind>> = {
  key: CompletionItemKind.Property,
  name: CompletionItemKind.Reference,
  unit: CompletionItemKind.Unit,
  value: CompletionItemKind.Value,
};

function toCodeAction(session: Session, snapshot: Snapshot, action: Action): CodeAction {
  const made: CodeAction = {
    title: action.title,
    kind: actionKinds[action.kind],
    edit: toWorkspaceEdit(session, [{ uri: snapshot.uri, edits: action.edits }, ...(action.elsewhere ?? [])]),
  };
  if (action.preferred) made.isPreferred = true;
  const naming = action.names === undefined ? undefined : namingAfter(session, snapshot, action.edits, action.names);
  if (naming !== undefined) made.command = naming;
  if (action.mends !== undefined) made.diagnostics = [toDiagnostic(session, snapshot, action.mends)];
  return made;
}

/** Asks for a better name when the edits are made, where the client has a command for that. */
function namingAfter(session: Session, { document, uri }: Snapshot, edits: readonly TextChange[], name: string) {
  const command = 'tidemark.renameAt';
  const at = edits.findIndex(edit => edit.text.trim() === name);
  const edit = edits[at];
  if (edit === undefined || !session.commands.has(command)) return undefined;
  const before = edits.slice(0, at).reduce((sum, { from, to, text }) => sum + text.length - (to - from), 0);
  const offset = edit.from + before + edit.text.indexOf(name);
  const after = openDocument(withChanges(textOf(document), edits));
  return { title: 'Rename', command, arguments: [uri, positionAt(after, offset, 'utf-16')] };
}

const actionKinds: Readonly<Record<Action['kind'], string>> = {
  fix: CodeActionKind.QuickFix,
  rewrite: CodeActionKind.RefactorRewrite,
  'fix-all': fixAllKind,
};

/** Kinds are dotted paths: `source.fixAll` asks for `source.fixAll.tidemark` too. */
function isOfKind(kind: string | undefined, only: string): boolean {
  return kind !== undefined && (kind === only || kind.startsWith(`${only}.`) || only === '');
}
