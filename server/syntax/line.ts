// What one line begins, judged without parsing: a key, a list item, nothing. Apart from the cut rule, because every
// question about YAML's look that is answered without the parser is answered here.

import {
  apostrophe,
  carriageReturn,
  colon,
  dash,
  hash,
  lineFeed,
  questionMark,
  quote,
  space,
  tab,
} from './code-units.ts';

export type LineKind =
  /** Blank or a comment, a merge-conflict marker included: belongs to whatever goes on around it. */
  | 'trivia'
  /** `---`, `...` or a directive. */
  | 'mark'
  /** Indented with a tab. */
  | 'tab'
  /** `- ` begins a list item. */
  | 'item'
  /** `}`, `]` or `: `: ends or goes on with what began above. */
  | 'closer'
  /** `key:` begins a pair. */
  | 'key'
  /** Plain text without a colon: a key being typed, or the middle of a text. */
  | 'text'
  /** A quote, brace, tag or the like that may run over many lines. */
  | 'opener';

export interface Line {
  readonly kind: LineKind;
  readonly indent: number;
  /** Of a key whose value is not on its line: what the key says. */
  readonly opens?: string;
}

const trivia: Line = { kind: 'trivia', indent: 0 };
const mark: Line = { kind: 'mark', indent: 0 };
const items: readonly Line[] = Array.from({ length: 16 }, (_, indent) => ({ kind: 'item', indent }));
const openers = new Set([...'{[|>!&*%@`,'].map(sign => sign.charCodeAt(0)));

/** Reads the line of `text` that begins at `from` and whose line feed (or the end of the text) is at `end`. */
export function readLine(text: string, from: number, end: number): Line {
  let at = from;
  while (at < end && text.charCodeAt(at) === space) at++;
  const indent = at - from;
  const first = at < end ? text.charCodeAt(at) : lineFeed;
  if (first === lineFeed || first === hash) return trivia;
  if (first === carriageReturn && at + 1 >= end) return trivia;
  if (first === tab) return afterTab(text, at, end, indent);
  if (indent === 0) {
    if (isMark(text, from, end)) return mark;
    if (isConflictMarker(text, from, end)) return trivia;
  }
  const lone = isBlank(text, at + 1, end);
  if (first === dash && lone) return items[indent] ?? { kind: 'item', indent };
  if (first === 125 || first === 93 || (first === colon && lone)) return { kind: 'closer', indent };
  if (first === questionMark && lone) return { kind: 'key', indent };
  const keyEnd = findKeyEnd(text, at, end, first);
  if (keyEnd === -1) {
    const many = first === quote || first === apostrophe || openers.has(first);
    return { kind: many ? 'opener' : 'text', indent };
  }
  if (!isBare(text, keyEnd + 1, end)) return { kind: 'key', indent };
  const opens = keyText(text.slice(at, keyEnd).trimEnd(), first);
  return opens === undefined ? { kind: 'key', indent } : { kind: 'key', indent, opens };
}

/** Whether a line is what a version control system writes between the sides of a merge conflict. */
export function isConflictMarker(text: string, from: number, end: number): boolean {
  const sign = text.charCodeAt(from);
  if (sign !== 60 && sign !== 61 && sign !== 62 && sign !== 124) return false;
  for (let at = from + 1; at < from + 7; at++) if (text.charCodeAt(at) !== sign) return false;
  return from + 7 <= end && isBlank(text, from + 7, end);
}

/** Where the line of an offset begins. (`lastIndexOf` takes -1 for 0, so the first unit needs its own answer.) */
export function lineStart(text: string, offset: number): number {
  return offset <= 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
}

function isMark(text: string, from: number, end: number): boolean {
  const first = text.charCodeAt(from);
  if (first === 37) return true;
  if (first !== dash && first !== 46) return false;
  return (
    text.charCodeAt(from + 1) === first &&
    text.charCodeAt(from + 2) === first &&
    from + 3 <= end &&
    isBlank(text, from + 3, end)
  );
}

function afterTab(text: string, from: number, end: number, indent: number): Line {
  let at = from;
  while (at < end && isBlank(text, at, end)) at++;
  return at >= end || text.charCodeAt(at) === hash ? trivia : { kind: 'tab', indent };
}

/** Whether the unit at an offset is white space or past the end of the line. */
function isBlank(text: string, at: number, end: number): boolean {
  if (at >= end) return true;
  const unit = text.charCodeAt(at);
  return unit === space || unit === tab || unit === carriageReturn || unit === lineFeed;
}

/** Where the colon that ends an implicit key stands, or -1. */
function findKeyEnd(text: string, from: number, end: number, first: number): number {
  if (first === quote || first === apostrophe) {
    let at = from + 1;
    for (; at < end; at++) {
      const unit = text.charCodeAt(at);
      if (unit === 92 && first === quote) at++;
      else if (unit === first) {
        if (first === quote || text.charCodeAt(at + 1) !== apostrophe) break;
        at++;
      }
    }
    at++;
    while (at < end && (text.charCodeAt(at) === space || text.charCodeAt(at) === tab)) at++;
    return at < end && text.charCodeAt(at) === colon && isBlank(text, at + 1, end) ? at : -1;
  }
  if (openers.has(first)) return -1;
  for (let at = from; at < end; at++) {
    const unit = text.charCodeAt(at);
    if (unit === colon && isBlank(text, at + 1, end)) return at;
    if (unit === hash && isBlank(text, at - 1, end)) return -1;
  }
  return -1;
}

/** Whether nothing but a comment follows. */
function isBare(text: string, from: number, end: number): boolean {
  let at = from;
  while (at < end && isBlank(text, at, end)) at++;
  return at >= end || (text.charCodeAt(at) === hash && at > from);
}

function keyText(source: string, first: number): string | undefined {
  if (first === apostrophe) return source.slice(1, -1).replaceAll("''", "'");
  if (first !== quote) return source;
  return source.includes('\\') ? undefined : source.slice(1, -1);
}
