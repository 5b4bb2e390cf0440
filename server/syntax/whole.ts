// What forbids cutting a file at all. Each sign is looked for in one piece of text, so that after an edit only the
// touched entries are searched again.

import { lineStart, readLine } from './line.ts';

export const sign = { anchor: 1, alias: 2, mark: 4, junk: 8, explicitKey: 16 } as const;

/** The signs in a text that begins at a line's start, as a sum. */
export function signsOf(text: string): number {
  let signs = 0;
  if (text.includes('&') && hasToken(text, '&')) signs |= sign.anchor;
  if (text.includes('*') && hasToken(text, '*')) signs |= sign.alias;
  if (markOf.test(text)) signs |= sign.mark;
  if (junkAt(text) !== undefined) signs |= sign.junk;
  if (explicitKeyOf.test(text)) signs |= sign.explicitKey;
  return signs;
}

const explicitKeyOf = /(?:^\uFEFF?|\n) *(?:- +)*[?:](?:\s|$)/;
const markOf = /(?:^\uFEFF?|\n)(?:(?:---|\.\.\.)(?:\s|$)|%)/;

/**
 * Whether a file with these signs is one entry. An anchor forbids the cut only where something repeats it; document
 * marks and directives rule whole files, and a line that begins with `? ` or `: ` leans on others.
 */
export function forbidsCut(signs: number): boolean {
  const repeats = sign.anchor | sign.alias;
  return (signs & repeats) === repeats || (signs & (sign.mark | sign.junk | sign.explicitKey)) !== 0;
}

/** Whether a file begins with what may run over all its lines: a brace, a quote, a tag, a block text. */
export function beginsOpen(text: string): boolean {
  for (let at = text.charCodeAt(0) === 0xfeff ? 1 : 0; at < text.length; ) {
    const feed = text.indexOf('\n', at);
    const end = feed === -1 ? text.length : feed;
    const { kind } = readLine(text, at, end);
    if (kind !== 'trivia') return kind === 'opener';
    at = end + 1;
  }
  return false;
}

/** Where a text stops being text: a zero, or bytes that were no UTF-8; undefined for text. */
export function junkAt(text: string): number | undefined {
  const at = text.search(/\0|\uFFFD\uFFFD/);
  return at === -1 ? undefined : at;
}

/** Whether an anchor or alias may begin with `first`; comments without quotes before them are passed over. */
function hasToken(text: string, first: '&' | '*'): boolean {
  for (let at = text.indexOf(first); at !== -1; at = text.indexOf(first, at + 1)) {
    const before = text[at - 1] ?? '\n';
    const after = text[at + 1] ?? '\n';
    if (!/[\s[{,:\uFEFF]/.test(before) || /[\s,[\]{}]/.test(after)) continue;
    const line = text.slice(lineStart(text, at), at);
    if (!/^[^"']*?(?:^|\s)#/.test(line)) return true;
  }
  return false;
}
