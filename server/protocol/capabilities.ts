// What the server says it can do.

import { CodeActionKind, type ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import { legend } from './handlers/colours.ts';
import type { Session } from './session.ts';

/** The kind under which every sure fix of a file is offered at once. */
export const fixAllKind = `${CodeActionKind.SourceFixAll}.tidemark`;

export function capabilitiesFor(session: Session): ServerCapabilities {
  return {
    positionEncoding: session.encoding,
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    ...(session.can.pullDiagnostics
      ? {
          diagnosticProvider: {
            identifier: 'tidemark',
            interFileDependencies: true,
            workspaceDiagnostics: session.can.listsFiles || session.surroundings.list !== undefined,
          },
        }
      : {}),
    hoverProvider: true,
    inlayHintProvider: { resolveProvider: session.can.lateTooltips },
    documentSymbolProvider: { label: 'Tidemark' },
    completionProvider: { triggerCharacters: [' ', ':', '[', '{', ',', '-'], resolveProvider: true },
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, fixAllKind] },
    definitionProvider: true,
    referencesProvider: true,
    renameProvider: session.can.prepareRename ? { prepareProvider: true } : true,
    documentHighlightProvider: true,
    documentLinkProvider: { resolveProvider: false },
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    workspaceSymbolProvider: true,
    semanticTokensProvider: { legend, full: { delta: true }, range: true },
    codeLensProvider: { resolveProvider: false },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: true },
      fileOperations: {
        willRename: {
          filters: [
            { pattern: { glob: '**/*.grow.{yaml,yml}', matches: 'file' } },
            { pattern: { glob: '**/*', matches: 'folder' } },
          ],
        },
      },
    },
  };
}
