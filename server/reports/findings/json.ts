// Findings for programs: one object with every finding of every file, in the order of the files and of their text.

import type { CheckJson, FindingJson } from '../../../schema/finding-json.ts';
import { gathered } from './printer.ts';
import type { Reported } from './reported.ts';

export const findingsJson = gathered(reports => {
  const json: CheckJson = {
    formatVersion: 1,
    files: reports.map(report => report.file),
    findings: reports.flatMap(report => report.findings.map(findingJson)),
  };
  return `${JSON.stringify(json, null, 2)}\n`;
});

/** One finding with the keys that `plan --format json` gives it too. */
export function findingJson({ code, severity, message, file, range, help }: Reported): FindingJson {
  return { code, severity, message, file, range, help };
}
