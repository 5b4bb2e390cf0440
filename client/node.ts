// The language server in Node: a process that talks over a pipe of its own, run by the editor's Node from one bundled file.
import type * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  LanguageClient,
  type LanguageClientOptions,
  TransportKind,
} from 'vscode-languageclient/node';

export function nodeClient(context: vscode.ExtensionContext, options: LanguageClientOptions): BaseLanguageClient {
  const module = context.asAbsolutePath('dist/server.cjs');
  const run = { module, transport: TransportKind.ipc } as const;
  const debug = { ...run, options: { execArgv: ['--nolazy', '--inspect=6024'] } };
  return new LanguageClient('tidemark', 'Tidemark', { run, debug }, options);
}
