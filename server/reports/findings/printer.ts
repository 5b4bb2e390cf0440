// What a format of findings is: it is given the files one by one, as they are checked, so that what was printed can be let go.

import type { Severity } from '../../../schema/findings.ts';
import type { Paint } from '../print/paint.ts';
import type { FileReport } from './reported.ts';

export interface FindingsPrinter {
  /** What is printed when a file has been checked. */
  file(report: FileReport): string;
  /** What is printed when all have been. */
  end(): string;
}

export interface Printing {
  readonly paint: Paint;
  /** Of Tidemark. */
  readonly version: string;
  /** The least severity that makes the command fail. */
  readonly failOn: Severity | 'never';
}

export type FindingsFormat = (printing: Printing) => FindingsPrinter;

/** For formats that are one whole: they hold the findings of all files until the end, but none of their texts. */
export function gathered(print: (reports: readonly FileReport[], printing: Printing) => string): FindingsFormat {
  return printing => {
    const reports: FileReport[] = [];
    return {
      file(report) {
        reports.push(report);
        return '';
      },
      end: () => print(reports, printing),
    };
  };
}
