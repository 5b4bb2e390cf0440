// How new text is written so that it looks like the file it comes into: line breaks, indentation, keys. Apart from the
// edits, which decide where it goes.

import { type Document, entryIndexAt } from './document.ts';
import { lineStart } from './line.ts';
import type { ScalarTree, Tree } from './tree.ts';

/** The line break of a file: that of its first line. */
export function lineBreakOf(document: Document): '\n' | '\r\n' {
  for (const { text } of document.entries) {
    const feed = text.indexOf('\n');
    if (feed !== -1) return text[feed - 1] === '\r' ? '\r\n' : '\n';
  }
  return '\n';
}

/** How much deeper children stand than their key: as the first child that is indented, or two spaces. */
export function indentStep(document: Document): string {
  for (const { cut, text } of document.entries) {
    if (cut.role === 'child' && cut.indent > 0) return ' '.repeat(Math.min(cut.indent, 8));
    const nested = /\n?[^\s#-][^\n]*:[ \t]*\r?\n( +)[^\s#]/.exec(text);
    if (nested?.[1] !== undefined && cut.role !== 'child') return nested[1].slice(0, 8);
  }
  return '  ';
}

/** The spaces with which a line begins whose first key or dash is that at an offset of an entry's text. */
export function indentAt(text: string, offset: number): string {
  const line = text.slice(lineStart(text, offset), offset).replace(/^\uFEFF/, '');
  return ' '.repeat(/^ *(?:- +)*/.exec(line)?.[0].length ?? 0);
}

/** Text of several lines as it is written under an indentation and with the file's line breaks. */
export function indented(text: string, indent: string, lineBreak: string): string {
  return text
    .split(/\r?\n/)
    .map((line, at) => (at === 0 || line === '' ? line : indent + line))
    .join(lineBreak);
}

/** `key: text`, the text on lines of its own where it begins with a line break. */
export function pairText(key: string, text: string): string {
  if (text === '') return `${writtenKey(key)}:`;
  return /^\r?\n/.test(text) ? `${writtenKey(key)}:${text}` : `${writtenKey(key)}: ${text}`;
}

/** A key as YAML, in quotes where it must be, or in those that another key had. */
export function writtenKey(key: string, like?: ScalarTree): string {
  const printable = !/[^\x20-\x7e\u00a0-\ud7ff\ue000-\ufefe\uff00-\ufffd]/.test(
    key.replaceAll(/[\ud800-\udbff][\udc00-\udfff]/g, ''),
  );
  if (like?.style === 'single' && printable) return `'${key.replaceAll("'", "''")}'`;
  if (like?.style === 'double') return JSON.stringify(key);
  const safe = /^[\p{L}\p{N}_$./()<+][^:#,[\]{}"'\n\r\t]*$/u.test(key) && !/^\s|\s$|^\.\.\.|^<<</.test(key);
  return safe && printable ? key : JSON.stringify(key);
}

/** A place for whole lines behind the line on which an offset of the file stands. */
export interface LineSlot {
  readonly at: number;
  /** What to put before and after the new lines, so that they are lines. */
  readonly before: string;
  readonly after: string;
}

/** Behind the line of an offset; behind blank lines too where they belong to the text that ends there. */
export function slotBehind(document: Document, offset: number, last?: Tree): LineSlot {
  const lineBreak = lineBreakOf(document);
  const index = entryIndexAt(document, offset);
  const text = document.entries[index]?.text ?? '';
  const start = document.starts[index] ?? 0;
  let feed = text.indexOf('\n', offset - start);
  if (feed === -1) return { at: document.length, before: lineBreak, after: '' };
  if (last !== undefined && keepsBlanks(text, last)) {
    for (
      let next = text.indexOf('\n', feed + 1);
      next !== -1 && text.slice(feed + 1, next).trim() === '';
      next = text.indexOf('\n', feed + 1)
    ) {
      feed = next;
    }
  }
  return { at: start + feed + 1, before: '', after: lineBreak };
}

/** The end of the file. */
export function slotAtEnd(document: Document): LineSlot {
  const lineBreak = lineBreakOf(document);
  const last = document.entries.at(-1)?.text ?? '';
  if (last === '' || last === '\uFEFF' || last.endsWith('\n'))
    return { at: document.length, before: '', after: lineBreak };
  return { at: document.length, before: lineBreak, after: '' };
}

/** Whether a tree ends with a block text that keeps the blank lines behind it. */
function keepsBlanks(text: string, tree: Tree): boolean {
  if (tree.kind === 'map') return keepsBlanks(text, tree.pairs.at(-1)?.value ?? { kind: 'empty', range: tree.range });
  if (tree.kind === 'list') return keepsBlanks(text, tree.items.at(-1) ?? { kind: 'empty', range: tree.range });
  return (
    tree.kind === 'scalar' && tree.style === 'block' && /^[|>]\d?\+/.test(text.slice(tree.range.from, tree.range.to))
  );
}
