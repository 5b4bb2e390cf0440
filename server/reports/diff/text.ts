// A review for a terminal: what changes, entry by entry, then why, then the findings that come and go.

import { type Paint, plainPaint } from '../print/paint.ts';
import { padded, printable, widthOf } from '../print/terminal.ts';
import { wrapped } from '../print/wrap.ts';
import { causeText } from './causes.ts';
import { cell, estimates, findingLine, headline, ofWhat, remarksOn, toldFiles } from './headline.ts';
import type { FileReview, Review, Row } from './review.ts';

export function reviewText(review: Review, paint: Paint = plainPaint): string {
  const told = toldFiles(review);
  const sides = `${printable(review.before)} -> ${printable(review.after)}`;
  const parts = [
    [paint.faint(sides), paint.strong(headline(review))],
    ...told.map(file => fileLines(file, paint)),
    ...(told.some(({ rows }) => rows.length > 0) ? [[paint.faint(estimates)]] : []),
  ];
  return `${parts.map(lines => lines.join('\n')).join('\n\n')}\n`;
}

function fileLines(file: FileReview, paint: Paint): readonly string[] {
  const { appear, change, disappear } = file.findings;
  const changed = change.flatMap(({ before, after }) => [
    `  ${paint.of(after.severity, '~')} ${printable(findingLine(after))}`,
    `    ${paint.faint(`before: ${printable(before.message)}`)}`,
  ]);
  return [
    paint.strong(printable(file.file)),
    ...remarksOn(file).map(remark => `  ${printable(remark)}`),
    ...rowBlocks(file.rows, paint),
    ...causeLines(file, paint),
    ...block(
      'Findings',
      [
        ...appear.map(one => `  ${paint.of(one.severity, '+')} ${printable(findingLine(one))}`),
        ...changed,
        ...disappear.map(one => `  ${paint.faint('-')} ${printable(findingLine(one))}`),
      ],
      paint,
    ),
    ...block(
      'Caution with acid and base',
      file.cautions.flatMap(says => wrapped(says, 76).map(line => `  ${line}`)),
      paint,
    ),
  ];
}

function rowBlocks(rows: readonly Row[], paint: Paint): readonly string[] {
  // What is longer than most stands out of its column and does not widen it.
  const width = (text: (row: Row) => string, most: number): number =>
    Math.max(0, ...rows.map(row => widthOf(printable(text(row)))).filter(one => one <= most));
  const whats = width(({ what }) => what, 40);
  const befores = width(({ before }) => cell(before), 24);
  const afters = width(({ after }) => cell(after), 24);
  const lines: string[] = [];
  let about = '';
  for (const row of rows) {
    if (ofWhat(row) !== about) lines.push('', `  ${paint.strong(printable(ofWhat(row)))}`);
    about = ofWhat(row);
    const marks = row.because.map(at => `[${at + 1}]`).join(' ');
    const texts = [
      padded(printable(row.what), whats),
      `${padded(printable(cell(row.before)), befores)} -> ${padded(printable(cell(row.after)), afters)}`,
      printable(row.change ?? ''),
    ];
    lines.push(`    ${texts.join('  ').trimEnd()}${marks === '' ? '' : `  ${paint.faint(marks)}`}`);
  }
  return lines;
}

function causeLines({ causes }: FileReview, paint: Paint): readonly string[] {
  const lines = causes.map((cause, at) => {
    const where = `(${printable(cause.file)}:${cause.line})`;
    return `  ${paint.faint(`[${at + 1}]`)} ${printable(causeText(cause))} ${paint.faint(where)}`;
  });
  return block('Because', lines, paint);
}

function block(heading: string, lines: readonly string[], paint: Paint): readonly string[] {
  return lines.length === 0 ? [] : ['', `  ${paint.strong(heading)}`, ...lines.map(line => `  ${line}`)];
}
