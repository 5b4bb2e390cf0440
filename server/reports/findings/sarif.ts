// Findings in the Static Analysis Results Interchange Format (SARIF 2.1.0, OASIS 2020), as code scanning services take them.

import { type FindingCode, findingRow, type Severity } from '../../../schema/findings.ts';
import { titleOf } from '../../words/finding.ts';
import { fingerprints } from './fingerprint.ts';
import { gathered } from './printer.ts';
import type { FileReport, Reported } from './reported.ts';

export const findingsSarif = gathered(
  (reports, { version }) => `${JSON.stringify(sarifLog(reports, version), null, 2)}\n`,
);

/** The log as an object: one run, with the rules that it found broken. */
export function sarifLog(reports: readonly FileReport[], version: string) {
  const codes = [...new Set(reports.flatMap(report => report.findings.map(finding => finding.code)))].sort();
  return {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0' as const,
    runs: [
      {
        tool: { driver: { name: 'tidemark', semanticVersion: version, rules: codes.map(rule) } },
        columnKind: 'utf16CodeUnits' as const,
        originalUriBaseIds: { '%SRCROOT%': { description: { text: 'The root of the repository.' } } },
        results: reports.flatMap(report => {
          const names = fingerprints(report);
          return report.findings.map((finding, at) => result(report, finding, names[at] ?? '', codes));
        }),
      },
    ],
  };
}

function rule(code: FindingCode) {
  const { severity, title, why, fix, caution, sources } = findingRow(code);
  const published = sources.flatMap(titleOf);
  const parts = [
    `${why}`,
    `To fix: ${fix}`,
    ...(caution === undefined ? [] : [`Caution: ${caution}`]),
    ...(published.length === 0 ? [] : [`Source: ${published.join('; ')}`]),
  ];
  return {
    id: code,
    shortDescription: { text: `${title}.` },
    fullDescription: { text: why },
    help: { text: parts.join('\n'), markdown: parts.join('\n\n') },
    defaultConfiguration: { level: levels[severity] },
  };
}

function result({ fromRoot }: FileReport, finding: Reported, name: string, codes: readonly FindingCode[]) {
  const { code, severity, message, range, path, excerpt, caution } = finding;
  return {
    ruleId: code,
    ruleIndex: codes.indexOf(code),
    level: levels[severity],
    message: { text: caution === undefined ? message : `${message} Caution: ${caution}` },
    locations: [
      {
        physicalLocation: {
          artifactLocation: artifact(fromRoot),
          region: {
            startLine: range.start.line + 1,
            startColumn: range.start.character + 1,
            endLine: range.end.line + 1,
            // A column past the last unit; a range of nothing is shown as the sign it stands before.
            endColumn: range.end.character + (isEmpty(range) ? 2 : 1),
            ...(range.start.line === range.end.line ? { snippet: { text: excerpt.line } } : {}),
          },
        },
        ...(path === '' ? {} : { logicalLocations: [{ fullyQualifiedName: path }] }),
      },
    ],
    // Under the second name GitHub looks for what tells findings apart.
    partialFingerprints: { 'tidemarkPlace/v1': name, primaryLocationLineHash: `${name}:1` },
  };
}

/** What lies outside the repository has no place in it, and keeps its own path. */
function artifact(path: string) {
  const uri = path.split('/').map(encodeURIComponent).join('/');
  return path.startsWith('/') ? { uri: `file://${uri}` } : { uri, uriBaseId: '%SRCROOT%' };
}

function isEmpty({ start, end }: Reported['range']): boolean {
  return start.line === end.line && start.character === end.character;
}

const levels: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = {
  error: 'error',
  warning: 'warning',
  information: 'note',
  hint: 'note',
};
