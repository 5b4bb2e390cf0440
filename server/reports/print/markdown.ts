// Pages as Markdown with tables and task lists, to keep beside the recipe or to read on a forge.

import type { Block, Cell, Field, Page, Table } from './page.ts';
import { printable } from './terminal.ts';

export function pagesMarkdown(pages: readonly Page[]): string {
  return pages.map(pageMarkdown).join('\n---\n\n');
}

function pageMarkdown({ title, about, sections, foot }: Page): string {
  const parts = [
    `# ${markdownLine(title)}`,
    about.map(markdownLine).join('  \n'),
    ...sections.flatMap(({ heading, blocks }) => [`## ${markdownLine(heading)}`, ...blocks.map(blockMarkdown)]),
    `*${markdownLine(foot)}*`,
  ];
  return `${parts.filter(part => part !== '').join('\n\n')}\n`;
}

function blockMarkdown(block: Block): string {
  switch (block.kind) {
    case 'paragraph':
      return markdownLine(block.text);
    case 'checklist':
      return block.items.map(item => `- [ ] ${markdownLine(item)}`).join('\n');
    case 'caution':
      return `> **${markdownLine(block.about)}:** ${markdownLine(block.sentences.join(' '))}`;
    case 'write':
      return block.fields.map(fieldMarkdown).join('  \n');
    case 'table':
      return tableMarkdown(block);
  }
}

function fieldMarkdown({ label, hint }: Field): string {
  return `${markdownLine(label)} ${blank}${hint === undefined ? '' : ` (${markdownLine(hint)})`}`;
}

function tableMarkdown({ columns, rows }: Table): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(columns.map(({ name }) => markdownLine(name))),
    line(columns.map(({ align }) => (align === 'right' ? '---:' : '---'))),
    ...rows.map(row => line(row.map(cellMarkdown))),
  ].join('\n');
}

function cellMarkdown(cell: Cell): string {
  if (typeof cell === 'string') return markdownLine(cell);
  return cell.kind === 'room' ? blank : Array.from({ length: cell.count }, () => '☐').join(' ');
}

const blank = '\\_\\_\\_\\_\\_\\_\\_\\_';

/** A text on one line, in which no sign means anything to Markdown or HTML. */
export function markdownLine(text: string): string {
  return printable(text.replaceAll(/\s+/gu, ' '))
    .replaceAll(/[\\`*_[\]<>|~&]/gu, sign => (sign === '<' ? '&lt;' : sign === '&' ? '&amp;' : `\\${sign}`))
    .replace(/^(?<mark>[#+-]|\d+[.)])(?=\s|$)/u, mark => `${mark.slice(0, -1)}\\${mark.slice(-1)}`);
}
