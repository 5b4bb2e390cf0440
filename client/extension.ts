// The extension's entry: wires the server, its status and its commands together. It stays thin because everything about
// recipes is answered by the server.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { benchSheets } from './commands/bench-sheet.ts';
import { compareWithCommit } from './commands/compare.ts';
import { type ReadingKnown, recordReading } from './commands/record-reading.ts';
import { recordTopUp, type TopUpKnown } from './commands/record-top-up.ts';
import { recipeFiles, serverClient } from './start.ts';
import { serverStatus } from './status.ts';

let client: BaseLanguageClient | undefined;

/** What other extensions, and tests, may ask of this one. */
export interface Exported {
  readonly shownSheets: () => readonly string[];
}

export async function activate(context: vscode.ExtensionContext): Promise<Exported> {
  const log = vscode.window.createOutputChannel('Tidemark', { log: true });
  const server = await serverClient(context, log);
  client = server;
  const showState = serverStatus(context);
  const sheets = benchSheets(server);
  context.subscriptions.push(
    log,
    server.onDidChangeState(event => showState(event.newState)),
    vscode.commands.registerCommand('tidemark.restartServer', () => restart(server)),
    vscode.commands.registerCommand('tidemark.renameAt', renameAt),
    vscode.commands.registerCommand('tidemark.showLog', () => log.show()),
    vscode.commands.registerCommand('tidemark.recordReading', (known?: ReadingKnown) => recordReading(server, known)),
    vscode.commands.registerCommand('tidemark.recordTopUp', (known?: TopUpKnown) => recordTopUp(server, known)),
    compareWithCommit(server),
    sheets,
    // Another extension may come or go, which changes what `tidemark.yamlIntegration: auto` means.
    vscode.extensions.onDidChange(() => askForSettingsAgain(server)),
    // What the editor hides is not listed; the server lists anew when it asks for settings.
    vscode.workspace.onDidChangeConfiguration(event => {
      if (event.affectsConfiguration('files.exclude')) void askForSettingsAgain(server);
    }),
  );
  await startAtFirstRecipe(context, server);
  return { shownSheets: sheets.shown };
}

export function deactivate(): Promise<void> | undefined {
  return client?.stop();
}

/** Any YAML file wakes the extension, since a recipe may be kept as YAML; the server runs only where a recipe is open. */
async function startAtFirstRecipe(context: vscode.ExtensionContext, server: BaseLanguageClient): Promise<void> {
  if (vscode.workspace.textDocuments.some(isRecipe)) return start(server);
  const waiting = vscode.workspace.onDidOpenTextDocument(document => {
    if (!isRecipe(document)) return;
    waiting.dispose();
    void start(server);
  });
  context.subscriptions.push(waiting);
}

function isRecipe(document: vscode.TextDocument): boolean {
  return vscode.languages.match([...recipeFiles], document) > 0;
}

/** A server that does not start is told by the client in a message; the status item then offers to try again. */
async function start(server: BaseLanguageClient): Promise<void> {
  try {
    await server.start();
  } catch (cause) {
    server.outputChannel.error(cause instanceof Error ? cause : String(cause));
  }
}

/** Opens the editor's box for a new name at a place, in the editor's own count: from 1. */
async function renameAt(uri: string, { line, character }: vscode.Position): Promise<void> {
  const at = { lineNumber: line + 1, column: character + 1 };
  await vscode.commands.executeCommand('editor.action.rename', [vscode.Uri.parse(uri), at]);
}

async function restart(server: BaseLanguageClient): Promise<void> {
  // A server that is still starting can be stopped only when it has started.
  if (server.needsStop()) await start(server);
  if (server.isRunning()) await server.stop();
  await start(server);
}

async function askForSettingsAgain(server: BaseLanguageClient): Promise<void> {
  if (server.isRunning()) await server.sendNotification('workspace/didChangeConfiguration', { settings: null });
}
