// Where each unit of what a scalar says stands in how it is written: quotes, escapes and folded lines in between. Apart
// from places, because it is the one piece of YAML's presentation that is undone by hand, and checked when it is.

import type { Range, ScalarTree } from './tree.ts';

/**
 * The offset in `text` (an entry's text) of each unit a scalar says, and last that of its end. Undefined where what was
 * undone is not what the scalar says, as in folded block texts.
 */
export function unitOffsets(text: string, scalar: ScalarTree): readonly number[] | undefined {
  const { from, to } = scalar.range;
  const source = text.slice(from, to);
  const known = scalar.style === 'plain' && source === scalar.text;
  if (known) return Array.from({ length: source.length + 1 }, (_, at) => from + at);
  const written = scalar.style === 'block' ? blockUnits(source) : inlineUnits(source, scalar.style);
  if (written === undefined || written.said !== scalar.text) return undefined;
  return written.offsets.map(offset => from + offset);
}

/** The range in `text` of a slice of what a scalar says; the whole scalar where the slice cannot be told. */
export function sliceRange(text: string, scalar: ScalarTree, from: number, to: number): Range {
  const plain = scalar.style === 'plain' && scalar.range.to - scalar.range.from === scalar.text.length;
  const last = scalar.text.length;
  const first = Math.max(0, Math.min(from, last));
  const end = Math.max(first, Math.min(to, last));
  if (plain) return { from: scalar.range.from + first, to: scalar.range.from + end };
  const offsets = unitOffsets(text, scalar);
  const start = offsets?.[first];
  const stop = end === first ? start : offsets?.[end - 1];
  if (offsets === undefined || start === undefined || stop === undefined) return scalar.range;
  const behind = end === first ? start : Math.max(stop + 1, offsets[end] ?? stop + 1);
  // The line feed a block text ends with may stand behind its range, or nowhere.
  return { from: Math.min(start, scalar.range.to), to: Math.min(behind, scalar.range.to) };
}

/** How many units of what a scalar says stand before an offset of `text`. */
export function unitAt(text: string, scalar: ScalarTree, offset: number): number {
  const offsets = unitOffsets(text, scalar);
  if (offsets === undefined) return Math.max(0, Math.min(offset - scalar.range.from, scalar.text.length));
  const at = offsets.findIndex(one => one >= offset);
  return at === -1 ? scalar.text.length : at;
}

interface Written {
  readonly said: string;
  readonly offsets: readonly number[];
}

function inlineUnits(source: string, style: 'plain' | 'single' | 'double'): Written {
  const quoted = style !== 'plain';
  const closed = quoted && source.length > 1 && source.endsWith(source[0] ?? '');
  const end = closed ? source.length - 1 : source.length;
  let said = '';
  const offsets: number[] = [];
  const put = (units: string, at: number) => {
    for (let unit = 0; unit < units.length; unit++) offsets.push(at);
    said += units;
  };
  for (let at = quoted ? 1 : 0; at < end; ) {
    const fold = foldAt(source, at, end);
    if (fold !== undefined) {
      put(fold.units, at);
      at = fold.end;
    } else if (style === 'single' && source[at] === "'") {
      put("'", at);
      at += 2;
    } else if (style === 'double' && source[at] === '\\') {
      const escaped = escapeAt(source, at);
      put(escaped.units, at);
      at = escaped.end;
    } else {
      put(source[at] ?? '', at);
      at++;
    }
  }
  offsets.push(end);
  return { said, offsets };
}

/** A line break inside a flow scalar: one is a space, each further one a line feed. */
function foldAt(
  source: string,
  from: number,
  end: number,
): { readonly units: string; readonly end: number } | undefined {
  const first = source[from];
  if (first !== ' ' && first !== '\t' && first !== '\r' && first !== '\n') return undefined;
  const found = /[ \t]*\r?\n[ \t\r\n]*/y;
  found.lastIndex = from;
  const match = found.exec(source);
  if (match === null) return undefined;
  const feeds = match[0].split('\n').length - 1;
  return { units: feeds === 1 ? ' ' : '\n'.repeat(feeds - 1), end: Math.min(end, from + match[0].length) };
}

const escapes = new Map(
  Object.entries({
    '0': '\0',
    a: '\x07',
    b: '\b',
    e: '\x1b',
    f: '\f',
    n: '\n',
    r: '\r',
    t: '\t',
    v: '\v',
    N: '\u0085',
    _: '\u00a0',
    L: '\u2028',
    P: '\u2029',
  }),
);
const digits = new Map([
  ['x', 2],
  ['u', 4],
  ['U', 8],
]);

function escapeAt(source: string, at: number): { readonly units: string; readonly end: number } {
  const name = source[at + 1] ?? '';
  const broken = /\\\r?\n[ \t]*/y;
  broken.lastIndex = at;
  const match = broken.exec(source);
  if (match !== null) return { units: '', end: at + match[0].length };
  const count = digits.get(name);
  if (count === undefined) return { units: escapes.get(name) ?? name, end: at + 2 };
  const code = Number.parseInt(source.slice(at + 2, at + 2 + count), 16);
  const units = Number.isInteger(code) && code <= 0x10ffff ? String.fromCodePoint(code) : '';
  return { units, end: at + 2 + count };
}

/** A literal block text: its lines without their indentation. */
function blockUnits(source: string): Written | undefined {
  if (!source.startsWith('|')) return undefined;
  const header = source.indexOf('\n') + 1;
  if (header === 0) return undefined;
  const indent = /^(?: *\r?\n)*( *)/.exec(source.slice(header))?.[1]?.length ?? 0;
  const keeps = !/^\|[^\n]*-/.test(source);
  let said = '';
  const offsets: number[] = [];
  for (let at = header; at < source.length; ) {
    const feed = source.indexOf('\n', at);
    const end = feed === -1 ? source.length : feed;
    const stop = source[end - 1] === '\r' ? end - 1 : end;
    for (let unit = Math.min(at + indent, stop); unit < stop; unit++) {
      said += source[unit];
      offsets.push(unit);
    }
    if (feed !== -1 || keeps) {
      said += '\n';
      offsets.push(stop);
    }
    at = end + 1;
  }
  offsets.push(source.length);
  return { said, offsets };
}
