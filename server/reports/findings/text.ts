// Findings for a person at a terminal: where, how grave, what, the line with the place marked, and how to put it right.

import type { Severity } from '../../../schema/findings.ts';
import type { Paint } from '../print/paint.ts';
import { printable, widthOf } from '../print/terminal.ts';
import { countWith, noCount, summary } from './count.ts';
import type { FindingsFormat } from './printer.ts';
import type { Excerpt, Reported } from './reported.ts';

export const findingsText: FindingsFormat = ({ paint }) => {
  let count = noCount;
  return {
    file(report) {
      count = countWith(count, report);
      return report.findings.map(finding => `${block(finding, paint)}\n\n`).join('');
    },
    end: () => `${summary(count)}\n`,
  };
};

function block(finding: Reported, paint: Paint): string {
  const { start } = finding.range;
  const place = `${printable(finding.file)}:${start.line + 1}:${start.character + 1}`;
  return [
    `${paint.strong(place)} ${paint.of(finding.severity, finding.severity)} ${finding.code}`,
    `  ${printable(finding.message)}`,
    ...excerptLines(finding.excerpt, start.line + 1, finding.severity, paint),
    `  ${paint.faint('To fix:')} ${printable(finding.fix === undefined ? finding.help : `${finding.fix}. ${finding.help}`)}`,
    ...(finding.caution === undefined ? [] : [`  ${paint.strong('Caution:')} ${finding.caution}`]),
  ].join('\n');
}

/** The line and a mark below the part that is meant; nothing where the line is empty. */
function excerptLines(excerpt: Excerpt, number: number, severity: Severity, paint: Paint): readonly string[] {
  const { before, meant, after } = windowOn(excerpt);
  if (before + meant + after === '') return [];
  const gutter = String(number).padStart(5);
  const mark = ' '.repeat(widthOf(before)) + '~'.repeat(Math.max(1, widthOf(meant)));
  return [
    `${paint.faint(`${gutter} |`)} ${before}${meant}${after}`,
    `${paint.faint(`${' '.repeat(gutter.length)} |`)} ${paint.of(severity, mark)}`,
  ];
}

/** Of a long line, what stands round the part that is meant. */
function windowOn({ line, from, to }: Excerpt): { before: string; meant: string; after: string } {
  const left = Math.max(0, from - mostBefore);
  const right = Math.min(line.length, Math.max(to, from + 1), from + mostMeant);
  const end = Math.min(line.length, right + mostAfter);
  return {
    before: (left > 0 ? '…' : '') + printable(line.slice(left, from)),
    meant: printable(line.slice(from, right)),
    after: printable(line.slice(right, end)).trimEnd() + (end < line.length ? '…' : ''),
  };
}

const mostBefore = 60;
const mostMeant = 80;
const mostAfter = 40;
