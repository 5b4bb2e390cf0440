// Ways through one text: definition, marked places, links, folds, growing selections, and the entries of all recipes.

import {
  type DefinitionLink,
  type DocumentHighlight,
  DocumentHighlightKind,
  type DocumentLink,
  type FoldingRange,
  FoldingRangeKind,
  type Location,
  type SelectionRange,
  SymbolKind,
  type WorkspaceSymbol,
} from 'vscode-languageserver';
import { definition } from '../../answers/navigate/definition.ts';
import { folding } from '../../answers/navigate/folding.ts';
import { highlights } from '../../answers/navigate/highlight.ts';
import { links } from '../../answers/navigate/links.ts';
import { selection } from '../../answers/navigate/selection.ts';
import { workspaceSymbols } from '../../answers/navigate/workspace-symbols.ts';
import { nameOfFile } from '../../recipe/use.ts';
import { offsetAt } from '../../syntax/position.ts';
import { asked, askedAfter } from '../guard.ts';
import { allRecipes, type Session } from '../session.ts';
import { toRange } from '../to-lsp.ts';

export function handleNavigation(session: Session): void {
  const { connection, workspace, encoding } = session;
  connection.onDefinition(
    asked(
      session,
      'definition',
      () => null,
      ({ textDocument, position }): Location | DefinitionLink[] | null => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const found = definition(snapshot, offsetAt(snapshot.document, position, encoding));
        if (found === undefined) return null;
        const { uri, target, origin } = found;
        const document = workspace.documentOf(uri);
        const isPlace = target !== undefined && document !== undefined;
        const targetSelectionRange = isPlace ? toRange(session, document, target.nameRange) : top;
        if (!session.can.definitionLinks) return { uri, range: targetSelectionRange };
        const targetRange = isPlace ? toRange(session, document, target.range) : top;
        const originSelectionRange = toRange(session, snapshot.document, origin);
        return [{ originSelectionRange, targetUri: uri, targetRange, targetSelectionRange }];
      },
    ),
  );
  connection.onDocumentHighlight(
    asked(
      session,
      'marked places',
      () => null,
      ({ textDocument, position }): DocumentHighlight[] | null => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const found = highlights(snapshot, offsetAt(snapshot.document, position, encoding));
        // Nothing of ours: the editor may mark equal words.
        if (found.length === 0) return null;
        return found.map(({ range, role }) => ({
          range: toRange(session, snapshot.document, range),
          kind: role === 'declaration' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
        }));
      },
    ),
  );
  connection.onDocumentLinks(
    asked(
      session,
      'links',
      () => [],
      ({ textDocument }): DocumentLink[] => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return [];
        return links(snapshot).map(({ range, target }) => ({
          range: toRange(session, snapshot.document, range),
          target,
        }));
      },
    ),
  );
  connection.onFoldingRanges(
    asked(
      session,
      'folds',
      () => [],
      ({ textDocument }): FoldingRange[] => {
        const document = workspace.documentOf(textDocument.uri);
        if (document === undefined) return [];
        return folding(document).map(({ kind, range }) => {
          const { start, end } = toRange(session, document, range);
          const fold = { startLine: start.line, endLine: end.line };
          return kind === 'comment' ? { ...fold, kind: FoldingRangeKind.Comment } : fold;
        });
      },
    ),
  );
  connection.onSelectionRanges(
    asked(
      session,
      'selections',
      () => null,
      ({ textDocument, positions }): SelectionRange[] | null => {
        const document = workspace.documentOf(textDocument.uri);
        if (document === undefined) return null;
        return positions.map(position => {
          const found = selection(document, offsetAt(document, position, encoding));
          const nested = found.reduceRight<SelectionRange | undefined>((parent, range) => {
            const own = { range: toRange(session, document, range) };
            return parent === undefined ? own : { ...own, parent };
          }, undefined);
          return nested ?? { range: { start: position, end: position } };
        });
      },
    ),
  );
  connection.onWorkspaceSymbol(
    askedAfter(
      session,
      'entries of all recipes',
      () => session.indexed,
      () => [],
      ({ query }): WorkspaceSymbol[] => {
        const snapshots = allRecipes(session).flatMap(uri => workspace.snapshot(uri) ?? []);
        return workspaceSymbols(snapshots, query).flatMap(({ name, section, uri, nameRange }) => {
          const document = workspace.documentOf(uri);
          if (document === undefined) return [];
          const location = { uri, range: toRange(session, document, nameRange) };
          return [{ name, kind: SymbolKind.Object, containerName: `${section} · ${nameOfFile(uri)}`, location }];
        });
      },
    ),
  );
}

const top = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
