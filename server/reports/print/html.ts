// Pages as one HTML file that needs nothing else: styles within, no script, boxes that can be ticked and lines that can be written
// on, on paper or on a screen.

import type { Block, Cell, Field, Page, Table } from './page.ts';
import { printable } from './terminal.ts';

export function pagesHtml(pages: readonly Page[]): string {
  const [first] = pages;
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${escaped(first?.title ?? '')}</title>`,
    `<style>\n${styles}</style>`,
    '</head>',
    '<body>',
    ...pages.flatMap(pageHtml),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function pageHtml({ title, about, sections, foot }: Page): readonly string[] {
  return [
    '<main>',
    `<h1>${escaped(title)}</h1>`,
    ...about.map(line => `<p class="about">${escaped(line)}</p>`),
    ...sections.flatMap(({ heading, blocks }) => [
      '<section>',
      `<h2>${escaped(heading)}</h2>`,
      ...blocks.map(blockHtml),
      '</section>',
    ]),
    `<footer>${escaped(foot)}</footer>`,
    '</main>',
  ];
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'paragraph':
      return `<p>${escaped(block.text)}</p>`;
    case 'checklist':
      return `<ul class="checks">\n${block.items.map(checkHtml).join('\n')}\n</ul>`;
    case 'caution':
      return `<p class="caution" role="note"><strong>${escaped(block.about)}:</strong> ${escaped(block.sentences.join(' '))}</p>`;
    case 'write':
      return `<p class="fields">${block.fields.map(fieldHtml).join('\n')}</p>`;
    case 'table':
      return tableHtml(block);
  }
}

function checkHtml(item: string): string {
  return `<li><label><input type="checkbox"> <span>${escaped(item)}</span></label></li>`;
}

function fieldHtml({ label, hint }: Field): string {
  const expected = hint === undefined ? '' : ` <small>${escaped(hint)}</small>`;
  return `<label>${escaped(label)} <input type="text" autocomplete="off">${expected}</label>`;
}

function tableHtml({ caption, columns, rows }: Table): string {
  const align = (at: number): string => (columns[at]?.align === 'right' ? ' class="number"' : '');
  const head = columns.map(({ name }, at) => `<th scope="col"${align(at)}>${escaped(name)}</th>`).join('');
  const body = rows.map(row => {
    const [first = '', ...others] = row;
    const cells = others.map((cell, at) => `<td${align(at + 1)}>${cellHtml(cell)}</td>`).join('');
    return `<tr><th scope="row"${align(0)}>${cellHtml(first)}</th>${cells}</tr>`;
  });
  return [
    '<table>',
    `<caption>${escaped(caption)}</caption>`,
    `<thead><tr>${head}</tr></thead>`,
    `<tbody>\n${body.join('\n')}\n</tbody>`,
    '</table>',
  ].join('\n');
}

function cellHtml(cell: Cell): string {
  if (typeof cell === 'string') return escaped(cell);
  const label = escaped(cell.for);
  if (cell.kind === 'room') return `<input type="text" autocomplete="off" aria-label="${label}">`;
  return Array.from({ length: cell.count }, (_, at) => {
    const which = cell.count === 1 ? label : `${label}, ${at + 1} of ${cell.count}`;
    return `<input type="checkbox" aria-label="${which}">`;
  }).join(' ');
}

/** A text in which no sign means anything to HTML, inside elements and quoted attributes. */
function escaped(text: string): string {
  return printable(text).replaceAll(/[&<>"']/gu, sign => `&#${sign.charCodeAt(0)};`);
}

// Black on white, for printers and for eyes that want contrast; a page each, on A4 or letter. Captions are for those who do not see
// the headings above them.
const styles = `@page { margin: 12mm; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; font: 10pt/1.25 system-ui, sans-serif; }
body { margin: 0; }
main { max-width: 186mm; margin: 0 auto; padding: 4mm; }
main + main { border-top: 2px solid #000; }
h1 { font-size: 14pt; margin: 0; }
h2 { font-size: 10.5pt; margin: 2.5mm 0 1mm; border-bottom: 1px solid #000; }
p { margin: 0.8mm 0; }
.about { margin: 0; }
table { width: 100%; border-collapse: collapse; margin: 0.8mm 0; }
caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
th, td { border: 1px solid #555; padding: 0.3mm 1.5mm; text-align: left; vertical-align: middle; }
th { font-weight: 600; }
thead th { background: #eee; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
.checks { list-style: none; margin: 0.8mm 0; padding: 0; }
.checks label { display: flex; gap: 2mm; }
.fields { display: flex; flex-wrap: wrap; gap: 1mm 6mm; }
input[type="checkbox"] { width: 3.6mm; height: 3.6mm; margin: 0; flex: none; vertical-align: middle; }
input[type="text"] { width: 22mm; height: 5mm; padding: 0; border: 0; border-bottom: 1px solid #000; background: #fff; color: #000; font: inherit; }
input:focus-visible { outline: 2px solid #000; outline-offset: 1px; }
.caution { border: 2px solid #000; padding: 1mm 2mm; font-size: 9pt; }
footer { margin-top: 2mm; font-size: 8.5pt; }
@media print {
  html { font-size: 9.5pt; }
  main { max-width: none; padding: 0; }
  main + main { border: 0; break-before: page; }
  section, table, .caution { break-inside: avoid; }
  thead th { background: #fff; }
}
`;
