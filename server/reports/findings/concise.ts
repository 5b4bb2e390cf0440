// Findings a line each, as editors and problem matchers read them: `file:line:column: severity code: message`.

import { printable } from '../print/terminal.ts';
import { countWith, noCount, summary } from './count.ts';
import type { FindingsFormat } from './printer.ts';
import type { Reported } from './reported.ts';

export const findingsConcise: FindingsFormat = ({ paint }) => {
  let count = noCount;
  return {
    file(report) {
      count = countWith(count, report);
      return report.findings.map(finding => `${conciseLine(finding, paint.of)}\n`).join('');
    },
    end: () => `${summary(count)}\n`,
  };
};

/** Lines and columns count from 1; columns are UTF-16 units. */
export function conciseLine(
  { file, range, severity, code, message }: Reported,
  inked: (severity: Reported['severity'], text: string) => string = (_, text) => text,
): string {
  const place = `${printable(file)}:${range.start.line + 1}:${range.start.character + 1}`;
  return `${place}: ${inked(severity, severity)} ${code}: ${oneLine(message)}`;
}

export function oneLine(text: string): string {
  return printable(text.replaceAll(/\s+/gu, ' '));
}
