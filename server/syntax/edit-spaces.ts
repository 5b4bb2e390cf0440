// Spaces, indentation and blank lines put in order: the changes stand only between tokens, or before the lines inside a text. Words,
// quotes, numbers, comments and line breaks stay as they are.

import type { TextChange } from './document.ts';
import { linesOf, type TokenLine } from './token-lines.ts';
import { type Token, type TokenKind, tokensOf } from './tokens.ts';

export interface SpaceOptions {
  /** Whether lines may be moved, or only spaces within them. */
  readonly indent: boolean;
}

/** The changes for a text without errors; none where it is in order. */
export function spaceChanges(text: string, { indent }: SpaceOptions): readonly TextChange[] {
  const all = tokensOf(text);
  const tokens = all.filter(({ kind }) => kind !== 'space' && kind !== 'break');
  const gaps = gapsOf(all, text);
  const starts = tokens.map((token, at) => startOf(token, tokens[at - 1], gaps[at] ?? noGap));
  const lines = linesOf(tokens, starts);
  const lineOf = new Map(lines.map(line => [line.first, line]));
  const changes: TextChange[] = [];
  const put = (from: number, to: number, wanted: string): void => {
    if (text.slice(from, to) !== wanted) changes.push({ from, to, text: wanted });
  };
  const parted = partedLines(lines, tokens);
  const lineBreak = breakOf(all);
  let within: TokenLine | undefined;
  tokens.forEach((token, at) => {
    const before = tokens[at - 1];
    const gap = gaps[at] ?? noGap;
    const line = lineOf.get(at);
    within = line ?? within;
    const kept = isKept(tokens, at);
    if (starts[at] === undefined)
      put(gap.from, gap.to, token.kind === 'block-text' ? gap.breaks.join('') : inline(before, token, gap.text));
    else {
      const spaces = ' '.repeat((indent ? line?.indent : line?.old) ?? 0);
      put(gap.from, gap.to, lineGap(gap, before, { kept, parted: parted.has(at), lineBreak }) + spaces);
    }
    if (indent && within !== undefined) changes.push(...moved(token, within));
  });
  const last = tokens.at(-1);
  const end = gaps[tokens.length] ?? noGap;
  if (last !== undefined && last.kind !== 'block-text') put(end.from, end.to, end.breaks[0] ?? lineBreak);
  else if (last === undefined || !isKept(tokens, tokens.length)) put(end.from, end.to, '');
  return changes;
}

/** What stands between two tokens: spaces, and the line breaks among them. */
interface Gap {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly breaks: readonly string[];
  /** How many spaces follow the last line break, or the start of the file. */
  readonly column: number;
}

const noGap: Gap = { from: 0, to: 0, text: '', breaks: [], column: 0 };

/** A gap before each token that is no space, and one behind the last. */
function gapsOf(all: readonly Token[], text: string): readonly Gap[] {
  const gaps: Gap[] = [];
  let from = 0;
  let breaks: string[] = [];
  let lineFrom = 0;
  const close = (to: number): void => {
    gaps.push({ from, to, text: text.slice(from, to), breaks, column: to - lineFrom });
    breaks = [];
  };
  for (const token of all) {
    const end = token.from + token.text.length;
    if (token.kind === 'space') continue;
    if (token.kind === 'break') {
      breaks.push(token.text);
      lineFrom = end;
      continue;
    }
    close(token.from);
    from = end;
    lineFrom = end;
  }
  close(text.length);
  return gaps;
}

/** After how many spaces a token begins its line; undefined where it stands behind another. */
function startOf(token: Token, before: Token | undefined, gap: Gap): number | undefined {
  if (token.kind === 'block-text') return undefined;
  const begins =
    before === undefined || before.text === '\uFEFF' || before.kind === 'block-text' || gap.breaks.length > 0;
  return begins ? gap.column : undefined;
}

/** The line breaks before a line: one blank line at most, or one where parts of the file are told apart by it. */
function lineGap(
  { breaks }: Gap,
  before: Token | undefined,
  { kept, parted, lineBreak }: { readonly kept: boolean; readonly parted: boolean; readonly lineBreak: string },
): string {
  if (before === undefined || before.text === '\uFEFF') return '';
  if (kept) return breaks.join('');
  // A text of lines ends with its own line break.
  const own = before.kind === 'block-text' ? 0 : 1;
  const blanks = breaks.length - own;
  const first = breaks[0] ?? lineBreak;
  const wanted = blanks > 0 || parted ? 1 : 0;
  return [...breaks, ...Array.from({ length: 2 }, () => first)].slice(0, own + wanted).join('');
}

/** The numbers of the tokens before whose lines a blank line stands: sections, what follows them, and the comments above these. */
function partedLines(lines: readonly TokenLine[], tokens: readonly Token[]): ReadonlySet<number> {
  const parted = new Set<number>();
  let wasSection = false;
  lines.forEach((line, at) => {
    if (!line.isTop) return;
    if (line.isSection || wasSection) {
      let first = at;
      while (isCommentAbove(lines[first - 1])) first--;
      const top = lines[first];
      if (top !== undefined) parted.add(top.first);
    }
    wasSection = line.isSection;
  });
  return parted;

  function isCommentAbove(line: TokenLine | undefined): boolean {
    return line !== undefined && line.indent === 0 && tokens[line.first]?.kind === 'comment';
  }
}

/** Whether the blank lines before a token belong to the text of lines above them. */
function isKept(tokens: readonly Token[], at: number): boolean {
  if (tokens[at - 1]?.kind !== 'block-text') return false;
  const head = tokens[at - 2]?.kind === 'comment' ? tokens[at - 3] : tokens[at - 2];
  return head?.text.includes('+') === true;
}

/** The spaces between two tokens of a line. */
function inline(before: Token | undefined, token: Token, written: string): string {
  const a: TokenKind = before?.kind ?? 'mark';
  const b = token.kind;
  const loose = written === '' ? '' : ' ';
  // More spaces before a comment put it in line with others.
  if (b === 'comment') return /^ +$/.test(written) ? written : ' ';
  if (a === 'colon') return b === 'comma' || b === 'close-list' || b === 'close-map' ? loose : ' ';
  if (a === 'open-map' && b === 'close-map') return '';
  if (a === 'open-map' || b === 'close-map') return ' ';
  if (a === 'open-list' || b === 'close-list' || b === 'comma') return '';
  if (a === 'comma' || a === 'dash' || a === 'question' || a === 'property') return ' ';
  // A colon right behind an alias or a tag would be part of it.
  if (b === 'colon' && a === 'text') return '';
  return loose;
}

/** The lines inside a text, moved with the line that it begins on. */
function moved({ kind, text, from }: Token, { shift, least }: TokenLine): readonly TextChange[] {
  if (shift === 0 || (kind !== 'text' && kind !== 'block-text')) return [];
  const changes: TextChange[] = [];
  const lines = kind === 'block-text' ? /^( *)(?=[^ \r\n])/gm : /(?<=\n)([ \t]*)(?=[^\s])/g;
  for (const found of text.matchAll(lines)) {
    const spaces = found[1] ?? '';
    const wanted = ' '.repeat(Math.max(least, spaces.length + shift));
    const at = from + found.index;
    if (spaces !== wanted) changes.push({ from: at, to: at + spaces.length, text: wanted });
  }
  return changes;
}

function breakOf(all: readonly Token[]): string {
  return all.find(({ kind }) => kind === 'break')?.text ?? '\n';
}
