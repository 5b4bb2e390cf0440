// What both recording commands do with the server: ask what can be recorded, ask whether a value will do, and put the entry into
// the file by an edit that can be undone.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type Recordable,
  type RecordableParams,
  type RecordParams,
  type RecordResult,
  recordableRequest,
  recordRequest,
} from '../../server/protocol/requests.ts';
import { recipeFiles } from '../start.ts';

type Recording = RecordParams['recording'];

/** A recipe in the active editor, with what can be recorded in it. */
export interface Desk {
  readonly server: BaseLanguageClient;
  readonly document: vscode.TextDocument;
  readonly choices: Recordable;
}

/** Undefined where no recipe is in the active editor or nothing answers; then the reader has been told. */
export async function openDesk(server: BaseLanguageClient): Promise<Desk | undefined> {
  const document = vscode.window.activeTextEditor?.document;
  if (document === undefined || vscode.languages.match([...recipeFiles], document) === 0) {
    void vscode.window.showInformationMessage('Open the recipe in which to record.');
    return undefined;
  }
  if (!server.isRunning()) {
    void vscode.window.showErrorMessage('Tidemark’s language server is not running, so nothing can be recorded.');
    return undefined;
  }
  const params: RecordableParams = { uri: uriOf(server, document) };
  const choices = await server.sendRequest<Recordable | null>(recordableRequest, params);
  return choices === null ? undefined : { server, document, choices };
}

export async function ask(desk: Desk, recording: Recording): Promise<RecordResult> {
  const params: RecordParams = { uri: uriOf(desk.server, desk.document), recording };
  return desk.server.sendRequest<RecordResult>(recordRequest, params);
}

type Refused = Extract<RecordResult, { kind: 'refused' }>;
type Part = Refused['complaints'][number]['about'];

/** An input box whose text is checked by the server as part of a recording. Empty is taken as nothing; undefined as giving up. */
export async function askFor(
  desk: Desk,
  part: Part,
  box: { readonly title: string; readonly prompt: string; readonly value?: string; readonly needed?: string },
  recordingWith: (text: string) => Recording,
): Promise<string | undefined> {
  const { needed, ...shown } = box;
  const text = await vscode.window.showInputBox({
    ...shown,
    ignoreFocusOut: true,
    validateInput: async typed => {
      if (typed.trim() === '') return needed;
      const result = await ask(desk, recordingWith(typed.trim()));
      return result.kind === 'refused' ? result.complaints.find(({ about }) => about === part)?.says : undefined;
    },
  });
  return text?.trim();
}

/** Writes the entry, shows it, and says what the findings say of it. Answers whether it was written. */
export async function writeDown(desk: Desk, recording: Recording): Promise<boolean> {
  const { server, document } = desk;
  const result = await ask(desk, recording);
  if (result.kind === 'refused') {
    void vscode.window.showErrorMessage(`Not recorded: ${result.complaints.map(({ says }) => says).join(' ')}`);
    return false;
  }
  const [edit] = await server.protocol2CodeConverter.asTextEdits([
    {
      range: { start: { ...result.edit.range.start }, end: { ...result.edit.range.end } },
      newText: result.edit.newText,
    },
  ]);
  if (edit === undefined || (result.version !== null && result.version !== document.version)) {
    void vscode.window.showErrorMessage('Not recorded: the recipe changed in the meantime. Please try again.');
    return false;
  }
  const change = new vscode.WorkspaceEdit();
  change.set(document.uri, [edit]);
  if (!(await vscode.workspace.applyEdit(change))) return false;
  show(document, edit);
  if (result.findings.length > 0) void vscode.window.showWarningMessage(result.findings.join(' '));
  return true;
}

function show(document: vscode.TextDocument, { range, newText }: vscode.TextEdit): void {
  const editor = vscode.window.visibleTextEditors.find(one => one.document === document);
  const end = document.positionAt(document.offsetAt(range.start) + newText.trimEnd().length);
  editor?.revealRange(new vscode.Range(range.start, end), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** The day in the reader's own zone, or one some days ahead, as recipes write it. */
export function today(ahead = 0): string {
  const now = new Date();
  now.setDate(now.getDate() + ahead);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function uriOf(server: BaseLanguageClient, document: vscode.TextDocument): string {
  return server.code2ProtocolConverter.asUri(document.uri);
}
