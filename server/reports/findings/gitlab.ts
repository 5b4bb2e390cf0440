// Findings as a report of GitLab's Code Quality: what it reads of the issues of the Code Climate specification, and no more but what
// that specification wants of every issue.

import type { Severity } from '../../../schema/findings.ts';
import { oneLine } from './concise.ts';
import { fingerprints } from './fingerprint.ts';
import { gathered } from './printer.ts';
import type { FileReport } from './reported.ts';

export const findingsGitlab = gathered(reports => `${JSON.stringify(gitlabIssues(reports), null, 2)}\n`);

export function gitlabIssues(reports: readonly FileReport[]) {
  return reports.flatMap(report => {
    const names = fingerprints(report);
    return report.findings.map(({ code, message, severity, range }, at) => ({
      type: 'issue' as const,
      check_name: code,
      description: oneLine(message),
      categories: ['Bug Risk' as const],
      severity: severities[severity],
      fingerprint: names[at] ?? '',
      location: { path: report.fromRoot, lines: { begin: range.start.line + 1, end: range.end.line + 1 } },
    }));
  });
}

const severities: Readonly<Record<Severity, 'critical' | 'major' | 'minor' | 'info'>> = {
  error: 'critical',
  warning: 'major',
  information: 'minor',
  hint: 'info',
};
