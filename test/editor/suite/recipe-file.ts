// Opens a recipe in the editor and asks it questions by the text at a place instead of by numbers. It stands apart
// because every test in the editor asks in this way.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';

/** Opens a recipe of the workspace, as saved on disk. */
export async function openRecipe(name: string): Promise<vscode.TextDocument> {
  const folder = vscode.workspace.workspaceFolders?.[0];
  assert.ok(folder, 'a folder is open');
  const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder.uri, name));
  await vscode.window.showTextDocument(document);
  if (document.isDirty) await vscode.commands.executeCommand('workbench.action.files.revert');
  return document;
}

/** The place where `text` begins; it must stand in the recipe exactly once. */
export function placeOf(document: vscode.TextDocument, text: string): vscode.Position {
  const whole = document.getText();
  const offset = whole.indexOf(text);
  assert.ok(offset >= 0, `“${text}” stands in the recipe`);
  assert.equal(whole.indexOf(text, offset + 1), -1, `“${text}” stands in the recipe once`);
  return document.positionAt(offset);
}

/** Replaces the one place where `from` stands, as typing would. */
export async function replaceOnce(document: vscode.TextDocument, from: string, to: string): Promise<void> {
  const start = placeOf(document, from);
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, new vscode.Range(start, document.positionAt(document.offsetAt(start) + from.length)), to);
  assert.ok(await vscode.workspace.applyEdit(edit), 'the edit applies');
}

/** Asks until the answer is accepted, since the server answers when it can. The last answer is told where it never is. */
export async function eventually<T>(ask: () => T | PromiseLike<T>, accepts: (answer: T) => boolean): Promise<T> {
  const until = Date.now() + 8_000;
  for (;;) {
    const answer = await ask();
    if (accepts(answer)) return answer;
    if (Date.now() > until) throw new Error(`after 8 s the answer is still ${JSON.stringify(answer)}`);
    await new Promise(resolve => setTimeout(resolve, 100));
  }
}

/** The findings of a recipe as `code: the text they stand under`. */
export function findingsIn(document: vscode.TextDocument): readonly string[] {
  return vscode.languages
    .getDiagnostics(document.uri)
    .map(finding => `${codeOf(finding)}: ${document.getText(finding.range)}`);
}

export function codeOf(finding: vscode.Diagnostic): string {
  return String(typeof finding.code === 'object' ? finding.code.value : finding.code);
}
