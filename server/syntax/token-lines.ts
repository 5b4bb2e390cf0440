// Tokens as lines, each with where it stands and where it belongs: two spaces deeper than what it is part of. Apart from the edits of
// spaces, which only put it there.

import type { Token, TokenKind } from './tokens.ts';

/** A line that begins with something; a text over several lines is part of the one it begins on. */
export interface TokenLine {
  /** The numbers of its first and last token that is no space, among all such. */
  readonly first: number;
  readonly last: number;
  /** How many spaces it begins with, and with how many it should. */
  readonly old: number;
  readonly indent: number;
  /** By how much lines inside its texts move, and the fewest spaces they may begin with. */
  readonly shift: number;
  readonly least: number;
  /** It begins a pair of the top level whose value stands on the lines below. */
  readonly isSection: boolean;
  /** It is a pair of the top level. */
  readonly isTop: boolean;
}

/** Lines of the tokens that are no spaces; `starts` says of each whether it begins a line, and after how many spaces. */
export function linesOf(tokens: readonly Token[], starts: readonly (number | undefined)[]): readonly TokenLine[] {
  const spans = spansOf(tokens, starts);
  // Keys and values with signs of their own may stand in places that no level tells.
  const canMove = !tokens.some(({ kind }, at) => kind === 'question' || (kind === 'colon' && starts[at] !== undefined));
  const levels: Level[] = [];
  const lines: TokenLine[] = [];
  let waiting: Span[] = [];
  let depth = 0;
  let shift = 0;
  let least = 0;
  for (const [number, span] of spans.entries()) {
    const first = tokens[span.first]?.kind;
    const inFlow = depth > 0;
    for (let at = span.first; at <= span.last; at++) depth += depths[tokens[at]?.kind ?? 'space'] ?? 0;
    if (!canMove) lines.push(still(span));
    else if (inFlow) lines.push({ ...still(span), indent: Math.max(least, span.old + shift), shift, least });
    else if (first === 'comment') waiting.push(span);
    else if (first === 'mark') {
      settleComments(span.old, 0);
      levels.length = 0;
      lines.push(still(span));
    } else {
      const before = [...levels];
      const placed = place(span);
      settleComments(span.old, placed.indent, before);
      shift = placed.shift;
      least = placed.least;
      const isTop = levels[0]?.kind === 'map' && levels.length === 1 && placed.isKey;
      lines.push({ ...still(span), ...placed, isTop, isSection: isTop && opensLines(span, spans[number + 1]) });
    }
  }
  settleComments(-1, 0);
  return lines.sort((a, b) => a.first - b.first);

  /** Comments stand as what follows them, as a level above them, or where they stood under the line before. */
  function settleComments(nextOld: number, nextIndent: number, among: readonly Level[] = levels): void {
    for (const span of waiting) {
      const level = among.findLast(({ old }) => old === span.old);
      const indent = span.old === nextOld ? nextIndent : (level?.indent ?? Math.max(0, span.old + shift));
      lines.push({ ...still(span), indent });
    }
    waiting = [];
  }

  function place(span: Span): Pick<TokenLine, 'indent' | 'shift' | 'least'> & { readonly isKey: boolean } {
    let at = span.first;
    let column = span.old;
    let indent: number | undefined;
    while (tokens[at]?.kind === 'dash') {
      const level = levelAt(levels, 'list', column);
      indent ??= level.indent;
      const next = tokens[at + 1];
      if (at + 1 > span.last || next === undefined) break;
      column += next.from - (tokens[at]?.from ?? 0);
      at++;
    }
    const isKey = isKeyLine(tokens, at, span.last);
    if (isKey) indent ??= levelAt(levels, 'map', column).indent;
    if (isKey && indent !== undefined && at > span.first) levelAt(levels, 'map', column);
    if (indent === undefined) {
      while ((levels.at(-1)?.old ?? -1) >= column) levels.pop();
      const above = levels.at(-1);
      indent = above === undefined ? 0 : above.indent + step;
      return { indent, shift: indent - column, least: above === undefined ? 0 : above.indent + 1, isKey };
    }
    const inner = levels.at(-1);
    return { indent, shift: (inner?.indent ?? 0) - (inner?.old ?? 0), least: (inner?.indent ?? -1) + 1, isKey };
  }

  function opensLines(span: Span, next: Span | undefined): boolean {
    const last = tokens[span.last]?.kind === 'comment' ? span.last - 1 : span.last;
    if (tokens[last]?.kind !== 'colon') return false;
    const following = next === undefined ? undefined : nextContent(next);
    return following !== undefined && (following.old > span.old || tokens[following.first]?.kind === 'dash');
  }

  function nextContent(from: Span): Span | undefined {
    return spans.slice(spans.indexOf(from)).find(span => tokens[span.first]?.kind !== 'comment');
  }
}

const step = 2;
const depths: Readonly<Partial<Record<TokenKind, number>>> = {
  'open-map': 1,
  'open-list': 1,
  'close-map': -1,
  'close-list': -1,
};

interface Level {
  readonly kind: 'map' | 'list';
  readonly old: number;
  readonly indent: number;
}

interface Span {
  readonly first: number;
  readonly last: number;
  readonly old: number;
}

/** The level of a map or list whose lines stand at a column; what is deeper has ended. */
function levelAt(levels: Level[], kind: Level['kind'], old: number): Level {
  for (let top = levels.at(-1); top !== undefined; top = levels.at(-1)) {
    if (top.old < old) break;
    if (top.old === old && top.kind === kind) return top;
    // A list may stand straight under the key that it belongs to.
    if (top.old === old && top.kind === 'map' && kind === 'list') break;
    levels.pop();
  }
  const above = levels.at(-1);
  const level: Level = { kind, old, indent: above === undefined ? 0 : above.indent + step };
  levels.push(level);
  return level;
}

function spansOf(tokens: readonly Token[], starts: readonly (number | undefined)[]): readonly Span[] {
  const spans: Span[] = [];
  let first = 0;
  tokens.forEach((_, at) => {
    if (starts[at + 1] === undefined && at + 1 < tokens.length) return;
    spans.push({ first, last: at, old: starts[first] ?? 0 });
    first = at + 1;
  });
  return spans;
}

function isKeyLine(tokens: readonly Token[], from: number, to: number): boolean {
  let depth = 0;
  for (let at = from; at <= to; at++) {
    const kind = tokens[at]?.kind ?? 'space';
    if (kind === 'colon' && depth === 0) return true;
    depth += depths[kind] ?? 0;
  }
  return false;
}

function still({ first, last, old }: Span): TokenLine {
  return { first, last, old, indent: old, shift: 0, least: 0, isSection: false, isTop: false };
}
