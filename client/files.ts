// Reads files for the server where only the editor can: in virtual file systems, and everywhere while the server runs in a
// browser. It stands apart because it is the one place where the client touches files.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type ListFilesParams,
  type ListFilesResult,
  listFilesRequest,
  type ReadFileParams,
  type ReadFileResult,
  readFileRequest,
} from '../server/protocol/requests.ts';

export function answerFiles(client: BaseLanguageClient): void {
  client.onRequest<ReadFileResult, void>(readFileRequest, ({ uri }: ReadFileParams) =>
    readFile(client.protocol2CodeConverter.asUri(uri)),
  );
  client.onRequest<ListFilesResult, void>(listFilesRequest, async ({ folder }: ListFilesParams) => {
    const within = new vscode.RelativePattern(client.protocol2CodeConverter.asUri(folder), '**/*.grow.{yaml,yml}');
    // The editor leaves out what `files.exclude` names; what packages bring along is not the user's own.
    const found = await vscode.workspace.findFiles(within, undefined);
    const own = found.filter(({ path }) => !path.includes('/node_modules/'));
    return { uris: own.map(uri => client.code2ProtocolConverter.asUri(uri)).sort() };
  });
}

/** What is not UTF-8 counts as unreadable; a byte order mark is kept, as the server counts positions with it. */
async function readFile(uri: vscode.Uri): Promise<ReadFileResult> {
  try {
    const bytes = await vscode.workspace.fs.readFile(uri);
    return { kind: 'text', text: new TextDecoder('utf-8', { ignoreBOM: true, fatal: true }).decode(bytes) };
  } catch (cause) {
    const absent = cause instanceof vscode.FileSystemError && cause.code === 'FileNotFound';
    return { kind: 'none', why: absent ? 'absent' : 'unreadable' };
  }
}
