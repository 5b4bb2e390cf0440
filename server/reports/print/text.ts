// Pages as plain text of eighty columns, to read in a terminal or to print as it is.

import type { Block, Cell, Field, Page, Table } from './page.ts';
import { padded, printable, widthOf } from './terminal.ts';
import { wrapped } from './wrap.ts';

export const pageWidth = 80;

export function pagesText(pages: readonly Page[]): string {
  // A form feed begins a new sheet of paper.
  return pages.map(pageText).join('\f');
}

function pageText({ title, about, sections, foot }: Page): string {
  const lines = [
    ...wrapped(printable(title), pageWidth),
    ...about.flatMap(line => wrapped(printable(line), pageWidth)),
    '='.repeat(pageWidth),
    ...sections.flatMap(({ heading, blocks }) => [printable(heading), ...blocks.flatMap(blockLines), '']),
    '-'.repeat(pageWidth),
    ...wrapped(printable(foot), pageWidth),
  ];
  return `${lines.map(line => line.trimEnd()).join('\n')}\n`;
}

export function blockLines(block: Block): readonly string[] {
  switch (block.kind) {
    case 'paragraph':
      return hanging('  ', '  ', block.text);
    case 'checklist':
      return block.items.flatMap(item => hanging('  [ ] ', '      ', item));
    case 'caution':
      return hanging('  ! ', '  ! ', [`${block.about}:`, ...block.sentences].join(' '));
    case 'write':
      return fieldLines(block.fields);
    case 'table':
      return tableLines(block);
  }
}

function hanging(first: string, next: string, text: string): readonly string[] {
  return wrapped(printable(text), pageWidth - first.length).map((line, index) => (index === 0 ? first : next) + line);
}

/** As many fields beside each other as fit a line. */
function fieldLines(fields: readonly Field[]): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const { label, hint } of fields) {
    const field = `  ${printable(label)} ${blank}${hint === undefined ? '' : `  (${printable(hint)})`}`;
    if (line !== '' && widthOf(line) + widthOf(field) > pageWidth) {
      lines.push(line);
      line = '';
    }
    line += field;
  }
  return line === '' ? lines : [...lines, line];
}

const blank = '________';
const gap = '  ';

function tableLines({ columns, rows }: Table): readonly string[] {
  const cells = rows.map(row => row.map(cellText));
  const natural = columns.map(({ name }, at) => Math.max(widthOf(name), ...cells.map(row => widthOf(row[at] ?? ''))));
  const widths = fitted(natural, pageWidth - gap.length * columns.length);
  const line = (texts: readonly string[]): readonly string[] => {
    const columnsOfLines = widths.map((width, at) => wrapped(texts[at] ?? '', width));
    const height = Math.max(...columnsOfLines.map(lines => lines.length));
    return Array.from({ length: height }, (_, row) =>
      columnsOfLines.map((lines, at) => gap + aligned(lines[row] ?? '', widths[at] ?? 0, columns[at]?.align)).join(''),
    );
  };
  return [
    ...line(columns.map(({ name }) => name)),
    widths.map(width => gap + '-'.repeat(width)).join(''),
    ...cells.flatMap(line),
  ];
}

function aligned(text: string, width: number, align: 'right' | undefined): string {
  return align === 'right' ? ' '.repeat(Math.max(0, width - widthOf(text))) + text : padded(text, width);
}

/** Widths that fit together: the widest columns give way, and none below eight columns. */
function fitted(natural: readonly number[], room: number): readonly number[] {
  const widths = [...natural];
  const sum = (): number => widths.reduce((total, width) => total + width, 0);
  while (sum() > room) {
    const widest = widths.indexOf(Math.max(...widths));
    const width = widths[widest] ?? 0;
    if (width <= 8) break;
    widths[widest] = width - 1;
  }
  return widths;
}

function cellText(cell: Cell): string {
  if (typeof cell === 'string') return printable(cell);
  return cell.kind === 'room' ? blank : Array.from({ length: cell.count }, () => '[ ]').join(' ');
}
