// What each word is, as semantic tokens: all of a file, what has changed since, or a part.

import {
  type SemanticTokens,
  SemanticTokensBuilder,
  type SemanticTokensDelta,
  type SemanticTokensLegend,
} from 'vscode-languageserver';
import { type Token, type TokenKind, tokens } from '../../answers/navigate/tokens.ts';
import type { Document } from '../../syntax/document.ts';
import { offsetAt } from '../../syntax/position.ts';
import { asked } from '../guard.ts';
import type { Session } from '../session.ts';
import { toRange } from '../to-lsp.ts';

/** `unit` and `date` are types of our own, declared in the manifest; the rest are the protocol's. */
const types = {
  section: 'namespace',
  key: 'property',
  declaration: 'variable',
  reference: 'variable',
  number: 'number',
  unit: 'unit',
  date: 'date',
  word: 'enumMember',
  operator: 'operator',
} as const satisfies Readonly<Record<TokenKind, string>>;

const tokenTypes: readonly string[] = [...new Set(Object.values(types))];

export const legend: SemanticTokensLegend = { tokenTypes: [...tokenTypes], tokenModifiers: ['declaration'] };

export function handleColours(session: Session): void {
  const { connection, workspace, encoding } = session;
  const builders = new Map<string, SemanticTokensBuilder>();
  const nothing = (): SemanticTokens => ({ data: [] });
  const builderOf = (uri: string): SemanticTokensBuilder => {
    const builder = builders.get(uri) ?? new SemanticTokensBuilder();
    // Only what is open is asked about again.
    if (session.open.has(uri)) builders.set(uri, builder);
    for (const known of builders.keys()) if (!session.open.has(known)) builders.delete(known);
    return builder;
  };
  const { semanticTokens } = connection.languages;
  semanticTokens.on(
    asked(session, 'words', nothing, ({ textDocument: { uri } }): SemanticTokens => {
      const document = workspace.documentOf(uri);
      if (document === undefined) return nothing();
      const builder = builderOf(uri);
      // A builder begins anew with an id that it does not know.
      builder.previousResult('');
      push(session, document, builder, tokens(document));
      return builder.build();
    }),
  );
  semanticTokens.onDelta(
    asked(
      session,
      'changed words',
      nothing,
      ({ textDocument: { uri }, previousResultId }): SemanticTokens | SemanticTokensDelta => {
        const document = workspace.documentOf(uri);
        if (document === undefined) return nothing();
        const builder = builderOf(uri);
        builder.previousResult(previousResultId);
        push(session, document, builder, tokens(document));
        return builder.buildEdits();
      },
    ),
  );
  semanticTokens.onRange(
    asked(session, 'words in sight', nothing, ({ textDocument: { uri }, range }): SemanticTokens => {
      const document = workspace.documentOf(uri);
      if (document === undefined) return nothing();
      const within = { from: offsetAt(document, range.start, encoding), to: offsetAt(document, range.end, encoding) };
      const builder = new SemanticTokensBuilder();
      push(session, document, builder, tokens(document, within));
      return builder.build();
    }),
  );
}

function push(session: Session, document: Document, into: SemanticTokensBuilder, found: readonly Token[]): void {
  for (const { kind, range } of found) {
    const { start, end } = toRange(session, document, range);
    const modifiers = kind === 'declaration' ? 1 : 0;
    const length = end.character - start.character;
    into.push(start.line, start.character, length, tokenTypes.indexOf(types[kind]), modifiers);
  }
}
