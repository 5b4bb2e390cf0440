// Draws answers as a person would see them in an editor: the underlined line, hints in place, findings under their line, text
// after edits. Tests compare these drawings, never numbers of lines and columns.

import type { Edit } from '../schema/edit.ts';
import { type Document, openDocument, textOf } from '../server/syntax/document.ts';
import { textEdits, withChanges } from '../server/syntax/edit.ts';
import { positionAt } from '../server/syntax/position.ts';
import { isMark, type Mark } from './recipe.ts';

interface Range {
  readonly from: number;
  readonly to: number;
}

/** The line with the cursor, `▔▔↑▔` under the range that is explained, and then what is said. */
export function drawAtCursor(text: string, cursor: number, range: Range, says: string): string {
  const start = text.lastIndexOf('\n', cursor - 1) + 1;
  const feed = text.indexOf('\n', cursor);
  const line = text.slice(start, feed === -1 ? text.length : feed);
  const from = Math.max(range.from, start);
  const to = Math.min(range.to, start + line.length);
  let under = '';
  for (let at = start; at < Math.max(to, cursor + 1); at++) {
    under += at === cursor ? '↑' : from <= at && at < to ? '▔' : ' ';
  }
  return `${line}\n${under}\n${says}`;
}

/** Markdown as a reader sees it: marks of emphasis and of code are gone, a table keeps its bars. */
export function drawMarkdown(markdown: string): string {
  return markdown
    .split('\n')
    .filter(line => !/^\|[ :|-]+\|$/u.test(line))
    .map(line =>
      line
        .replace(/\*\*|`| +$/gu, '')
        .replace(/(?<!\w)\*(.+?)\*(?!\w)/gu, '$1')
        .replace(/^---$/u, '────'),
    )
    .join('\n')
    .replace(/\\([\\`*_{}[\]<>()#+!|~])/gu, '$1');
}

/** The text with `⟦…⟧` where hints stand. */
export function drawHints(text: string, hints: readonly { readonly offset: number; readonly text: string }[]): string {
  const behind = [...hints].sort((a, b) => b.offset - a.offset);
  return behind.reduce(
    (drawn, hint) => `${drawn.slice(0, hint.offset)}⟦${hint.text}⟧${drawn.slice(hint.offset)}`,
    text,
  );
}

/** The text with marks under the lines they are about, those that it had before taken out. */
export function drawMarks(text: string, marks: readonly Mark[]): string {
  return text
    .split(/\r?\n/u)
    .flatMap((line, number) => {
      if (isMark(line)) return [];
      const about = marks.filter(mark => mark.line === number).sort((a, b) => a.from - b.from || a.to - b.to);
      return [line, ...about.map(mark => drawMark(line, mark))];
    })
    .join('\n');
}

function drawMark(line: string, { from, to, code, says }: Mark): string {
  const words = says === '' ? code : `${code}: ${says}`;
  const width = Math.max(1, to - from);
  if (from === 0) return `#<${'-'.repeat(width - 1)} ${words}`;
  const indent = /^ */u.exec(line)?.[0].length ?? 0;
  const lead = indent < from ? indent : 0;
  return `${' '.repeat(lead)}#${' '.repeat(from - lead - 1)}${'^'.repeat(width)} ${words}`;
}

/** Where a range stands in a document as columns of its first line. */
export function columnsOf(document: Document, range: Range): Pick<Mark, 'line' | 'from' | 'to'> {
  const start = positionAt(document, range.from);
  const end = positionAt(document, range.to);
  const lineEnd = textOf(document).split('\n')[start.line]?.replace(/\r$/u, '').length ?? 0;
  return { line: start.line, from: start.character, to: end.line === start.line ? end.character : lineEnd };
}

/** The text after edits that are said in places. */
export function drawApplied(text: string, edits: readonly Edit[]): string {
  return withChanges(text, textEdits(openDocument(text), edits));
}

/** The text with `⟦…⟧` round ranges, a label behind the opening one where there is one; ranges may hold each other. */
export function drawRanges(
  text: string,
  ranges: readonly { readonly range: Range; readonly label?: string }[],
): string {
  const signs = ranges.flatMap(({ range, label }, rank) => [
    { at: range.from, order: rank, sign: `⟦${label === undefined ? '' : `${label}:`}` },
    { at: range.to, order: -1 - rank, sign: '⟧' },
  ]);
  return signs
    .sort((a, b) => b.at - a.at || b.order - a.order)
    .reduce((drawn, { at, sign }) => `${drawn.slice(0, at)}${sign}${drawn.slice(at)}`, text);
}
