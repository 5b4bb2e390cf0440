// A text as its tokens, spaces and line breaks included: joined they are the text. What only moves spaces needs no tree, but must know
// exactly where words, quotes and comments begin and end.

import { Lexer } from 'yaml';

export type TokenKind =
  | 'space'
  | 'break'
  | 'comment'
  /** A plain or quoted text; it may run over several lines. */
  | 'text'
  /** `|` or `>` with its signs, and the lines that belong to it. */
  | 'block-head'
  | 'block-text'
  | 'colon'
  | 'comma'
  | 'dash'
  | 'question'
  | 'open-map'
  | 'close-map'
  | 'open-list'
  | 'close-list'
  /** An anchor or a tag. */
  | 'property'
  | 'alias'
  /** `---`, `...`, a directive or a byte order mark. */
  | 'mark';

export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly from: number;
}

export function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let from = 0;
  let isText = false;
  let isBlock = false;
  let keeps = false;
  for (const source of new Lexer().lex(text)) {
    if (source === textFollows) isText = true;
    else if (source !== documentFollows && source !== flowIsBroken) {
      const kind = isText ? (isBlock ? 'block-text' : 'text') : kindOf(source);
      // Blank lines are no text of lines, unless its sign keeps them: they stand behind one without lines.
      const isBlank = kind === 'block-text' && !keeps && /^[\r\n]+$/.test(source);
      if (isBlank) tokens.push({ kind, text: '', from });
      for (const part of isBlank ? (source.match(/\r?\n|\r/g) ?? []) : [source]) {
        tokens.push({ kind: isBlank ? 'break' : kind, text: part, from });
        from += part.length;
      }
      if (isText) isBlock = false;
      if (kind === 'block-head') {
        isBlock = true;
        keeps = source.includes('+');
      }
      isText = false;
    }
  }
  return tokens;
}

/** Where the first quote stands that is never closed; undefined where each is. */
export function openQuoteAt(text: string): number | undefined {
  if (!/["']/.test(text)) return undefined;
  return tokensOf(text).find(({ kind, text }) => kind === 'text' && isOpenQuote(text))?.from;
}

/** Whether a text in quotes, or a part of one, lacks the quote that ends it. */
export function isOpenQuote(text: string): boolean {
  if (text.startsWith('"')) return !/^"[^"\\]*(?:\\[\s\S][^"\\]*)*"$/.test(text);
  return text.startsWith("'") && !/^'[^']*(?:''[^']*)*'$/.test(text);
}

// Signs by which the lexer of the `yaml` package says what comes; they are not of the text.
const documentFollows = '\u0002';
const flowIsBroken = '\u0018';
const textFollows = '\u001F';

const signs: Readonly<Record<string, TokenKind>> = {
  ':': 'colon',
  ',': 'comma',
  '-': 'dash',
  '?': 'question',
  '{': 'open-map',
  '}': 'close-map',
  '[': 'open-list',
  ']': 'close-list',
  '\n': 'break',
  '\r\n': 'break',
  '---': 'mark',
  '...': 'mark',
  '\uFEFF': 'mark',
};

const firsts: Readonly<Record<string, TokenKind>> = {
  ' ': 'space',
  '\t': 'space',
  '#': 'comment',
  '%': 'mark',
  '*': 'alias',
  '&': 'property',
  '!': 'property',
  "'": 'text',
  '"': 'text',
  '|': 'block-head',
  '>': 'block-head',
};

function kindOf(source: string): TokenKind {
  return signs[source] ?? firsts[source.charAt(0)] ?? 'text';
}
