// Starts the language server, in Node or in a browser. Which of the two is asked once, here, and only that one is loaded: one
// bundle serves both places, since what they share is nearly all of it.
import type * as vscode from 'vscode';
import { type BaseLanguageClient, type LanguageClientOptions, RevealOutputChannelOn } from 'vscode-languageclient';
import type { InitialOptions } from '../schema/settings.ts';
import { answerFiles } from './files.ts';
import { answerSettings, currentSettings } from './settings.ts';

/** The language of a recipe, as the manifest contributes it. */
export const languageId = 'grow-recipe';

/** Which files are recipes: those of our language, and those that somebody keeps as plain YAML. */
export const recipeFiles = [
  { language: languageId },
  { language: 'yaml', pattern: '**/*.grow.{yaml,yml}' },
] as const satisfies vscode.DocumentSelector;

/** The commands that the server may offer as code lenses or after an action. */
const commands = [
  'tidemark.showBenchSheet',
  'tidemark.recordReading',
  'tidemark.compareWithCommit',
  'tidemark.renameAt',
];

/** A client whose server is not running yet; `start()` runs it, `restart()` runs a new one. */
export async function serverClient(
  context: vscode.ExtensionContext,
  log: vscode.LogOutputChannel,
): Promise<BaseLanguageClient> {
  const options: LanguageClientOptions = {
    documentSelector: [...recipeFiles],
    outputChannel: log,
    traceOutputChannel: log,
    // A notification is for what the reader must act on; all else can be read in the log when wanted.
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    initializationOptions: (): InitialOptions => ({
      settings: currentSettings(),
      commands,
      listsFiles: true,
    }),
    middleware: { workspace: { configuration: answerSettings } },
  };
  const client = await clientHere(context, options);
  answerFiles(client);
  return client;
}

async function clientHere(
  context: vscode.ExtensionContext,
  options: LanguageClientOptions,
): Promise<BaseLanguageClient> {
  // Only workers have it, and a host of extensions in a browser is one.
  if ('importScripts' in globalThis) return (await import('./browser.ts')).browserClient(context, options);
  return (await import('./node.ts')).nodeClient(context, options);
}
