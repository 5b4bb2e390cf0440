// What is shown about a text: hovers, inlay hints, the outline.

import {
  type DocumentSymbol,
  type Hover,
  type InlayHint,
  MarkupKind,
  type SymbolInformation,
  SymbolKind,
} from 'vscode-languageserver';
import { type HintKind, hints } from '../../answers/hints.ts';
import { hover } from '../../answers/hover/hover.ts';
import { type RecipeSymbol, symbols } from '../../answers/symbols.ts';
import { offsetAt, positionAt } from '../../syntax/position.ts';
import { asked } from '../guard.ts';
import { leftToOthers, type Session, settingsFor } from '../session.ts';
import { toRange } from '../to-lsp.ts';

export function handleViews(session: Session): void {
  const { connection, workspace, encoding, can } = session;
  connection.onHover(
    asked(
      session,
      'hover',
      () => null,
      ({ textDocument, position }): Hover | null => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return null;
        const at = offsetAt(snapshot.document, position, encoding);
        const found = hover(snapshot, at, leftToOthers(session, snapshot.uri));
        if (found === undefined) return null;
        const contents = { kind: MarkupKind.Markdown, value: found.markdown };
        return { contents, range: toRange(session, snapshot.document, found.range) };
      },
    ),
  );
  connection.languages.inlayHint.on(
    asked(
      session,
      'hints',
      () => [],
      ({ textDocument, range }): InlayHint[] => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return [];
        const { document, uri } = snapshot;
        const from = offsetAt(document, range.start, encoding);
        const to = offsetAt(document, range.end, encoding);
        return hints(snapshot, { from, to }, kind => isWanted(session, uri, kind)).map(({ offset, text, tooltip }) => ({
          position: positionAt(document, offset, encoding),
          label: text,
          paddingLeft: true,
          ...(can.lateTooltips
            ? { data: { uri: snapshot.uri } }
            : { tooltip: { kind: MarkupKind.Markdown, value: tooltip() } }),
        }));
      },
    ),
  );
  connection.languages.inlayHint.resolve(
    asked(
      session,
      'a hint',
      (hint: InlayHint) => hint,
      (hint: InlayHint): InlayHint => {
        const data: { uri?: unknown } | undefined = hint.data;
        const snapshot = typeof data?.uri === 'string' ? workspace.snapshot(data.uri) : undefined;
        if (snapshot === undefined) return hint;
        const at = offsetAt(snapshot.document, hint.position, encoding);
        const same = hints(snapshot, { from: at, to: at }).find(({ text }) => text === hint.label);
        if (same === undefined) return hint;
        return { ...hint, tooltip: { kind: MarkupKind.Markdown, value: same.tooltip() } };
      },
    ),
  );
  connection.onDocumentSymbol(
    asked(
      session,
      'outline',
      () => [],
      ({ textDocument }): DocumentSymbol[] | SymbolInformation[] => {
        const snapshot = workspace.snapshot(textDocument.uri);
        if (snapshot === undefined) return [];
        const found = symbols(snapshot);
        const nested = (symbol: RecipeSymbol): DocumentSymbol => ({
          name: symbol.name,
          detail: symbol.detail,
          kind: symbolKinds[symbol.kind],
          range: toRange(session, snapshot.document, symbol.range),
          selectionRange: toRange(session, snapshot.document, symbol.nameRange),
          children: symbol.children.map(nested),
        });
        if (session.can.nestedSymbols) return found.map(nested);
        const flat = (symbol: RecipeSymbol, containerName?: string): SymbolInformation[] => {
          const location = { uri: snapshot.uri, range: toRange(session, snapshot.document, symbol.range) };
          const own = { name: symbol.name, kind: symbolKinds[symbol.kind], location };
          return [
            containerName === undefined ? own : { ...own, containerName },
            ...symbol.children.flatMap(child => flat(child, symbol.name)),
          ];
        };
        return found.flatMap(symbol => flat(symbol));
      },
    ),
  );
}

const symbolKinds: Readonly<Record<RecipeSymbol['kind'], SymbolKind>> = {
  section: SymbolKind.Namespace,
  entry: SymbolKind.Object,
  'log-entry': SymbolKind.Event,
};

function isWanted(session: Session, uri: string, kind: HintKind): boolean {
  const settings = settingsFor(session, uri);
  switch (kind) {
    case 'dose':
      return settings['hints.doses'];
    case 'fill':
    case 'volume':
      return settings['hints.fills'];
    case 'adjustment':
      return settings['hints.adjustments'];
  }
}
