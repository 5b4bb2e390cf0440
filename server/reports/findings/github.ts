// Findings as commands to the runner of GitHub Actions, which shows them beside the changed lines.

import type { Severity } from '../../../schema/findings.ts';
import { conciseLine, oneLine } from './concise.ts';
import { counted, countOf, severities, summary } from './count.ts';
import { gathered } from './printer.ts';
import type { FileReport, Reported } from './reported.ts';

/** GitHub shows so many of each kind for a step and drops the rest without a word. */
const mostShown = 10;

/** The gravest become annotations; all that would be dropped follow as lines of the log. */
export const findingsGithub = gathered(reports => {
  const all = severities.flatMap(severity =>
    reports.flatMap(report =>
      report.findings.filter(finding => finding.severity === severity).map(finding => ({ report, finding })),
    ),
  );
  const left = { error: mostShown, warning: mostShown, notice: mostShown };
  const shown = new Set(all.filter(({ finding }) => left[kinds[finding.severity]]-- > 0));
  const rest = all.filter(one => !shown.has(one));
  return [
    ...[...shown].map(({ report, finding }) => command(report, finding)),
    ...(rest.length === 0 ? [] : [`${counted(rest.length, 'more finding')}, which GitHub would not show:`]),
    ...rest.map(({ finding }) => asText(`- ${conciseLine(finding)}`)),
    summary(countOf(reports)),
  ]
    .map(line => `${line}\n`)
    .join('');
});

function command({ fromRoot }: FileReport, { severity, range, code, message, help, caution }: Reported): string {
  const { start, end } = range;
  // Columns belong to one line only; over several they would be taken for those of the first.
  const columns =
    start.line === end.line
      ? [`col=${start.character + 1}`, `endColumn=${Math.max(start.character, end.character) + 1}`]
      : [];
  const properties = [
    `file=${property(fromRoot)}`,
    `line=${start.line + 1}`,
    `endLine=${end.line + 1}`,
    ...columns,
    `title=${property(code)}`,
  ];
  const says = [message, `To fix: ${help}`, ...(caution === undefined ? [] : [`Caution: ${caution}`])];
  return `::${kinds[severity]} ${properties.join(',')}::${data(says.map(oneLine).join('\n'))}`;
}

const kinds: Readonly<Record<Severity, 'error' | 'warning' | 'notice'>> = {
  error: 'error',
  warning: 'warning',
  information: 'notice',
  hint: 'notice',
};

// The escapes of the runner's commands (GitHub Docs, Workflow commands for GitHub Actions).
function data(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function property(text: string): string {
  return data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}

/** A line of the log that the runner takes for no command: an older form of them may stand anywhere in a line. */
function asText(line: string): string {
  return line.replaceAll('##[', '## [');
}
