// When findings make a command end with 1: where one is at least as grave as `--fail-on` says.

import { type FileReport, isAtLeast } from '../reports/findings/reported.ts';
import type { FailOn } from './options.ts';

export function failing(reports: readonly FileReport[], failOn: FailOn): boolean {
  if (failOn === 'never') return false;
  return reports.some(report => report.findings.some(({ severity }) => isAtLeast(severity, failOn)));
}
