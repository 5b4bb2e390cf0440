// Findings as test results in the XML that build servers took over from JUnit. A recipe is a suite: each finding that makes the check
// fail is a failed test, the others are its output, and a recipe with none that fails has one test that passes.

import { conciseLine } from './concise.ts';
import { countOf } from './count.ts';
import { gathered, type Printing } from './printer.ts';
import { type FileReport, isAtLeast, type Reported } from './reported.ts';

export const findingsJunit = gathered((reports, { failOn }) => {
  const suites = reports.map(report => suiteOf(report, failOn));
  const failures = suites.reduce((sum, suite) => sum + suite.failures, 0);
  const tests = suites.reduce((sum, suite) => sum + suite.tests, 0);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="tidemark check" tests="${tests}" failures="${failures}" errors="0" time="0">`,
    ...suites.flatMap(suite => suite.lines),
    '</testsuites>',
    '',
  ].join('\n');
});

interface Suite {
  readonly tests: number;
  readonly failures: number;
  readonly lines: readonly string[];
}

function suiteOf(report: FileReport, failOn: Printing['failOn']): Suite {
  const fails = ({ severity }: Reported): boolean => failOn !== 'never' && isAtLeast(severity, failOn);
  const failed = report.findings.filter(fails);
  const others = report.findings.filter(finding => !fails(finding));
  const tests = Math.max(1, failed.length);
  const file = text(report.fromRoot);
  const cases =
    failed.length === 0
      ? [`    <testcase classname="${file}" name="${count(others)}" time="0"/>`]
      : failed.flatMap(finding => failure(finding, file));
  const output = others.map(finding => text(conciseLine(finding))).join('\n');
  return {
    tests,
    failures: failed.length,
    lines: [
      `  <testsuite name="${file}" tests="${tests}" failures="${failed.length}" errors="0" skipped="0" time="0">`,
      ...cases,
      ...(output === '' ? [] : [`    <system-out>${output}</system-out>`]),
      '  </testsuite>',
    ],
  };
}

function failure({ code, path, message, help, caution, severity, file, range }: Reported, suite: string): string[] {
  const place = `${file}:${range.start.line + 1}:${range.start.character + 1}`;
  const says = [place, `To fix: ${help}`, ...(caution === undefined ? [] : [`Caution: ${caution}`])].join('\n');
  return [
    `    <testcase classname="${suite}" name="${text(path === '' ? code : `${code} at ${path}`)}" time="0">`,
    `      <failure type="${severity}" message="${text(message)}">${text(says)}</failure>`,
    '    </testcase>',
  ];
}

function count(findings: readonly Reported[]): string {
  const { error, warning, information, hint } = countOf([{ file: '', fromRoot: '', findings }]).of;
  return error + warning + information + hint === 0 ? 'nothing found' : 'nothing found that fails';
}

const signs: Readonly<Record<string, string>> = {
  '<': '&lt;',
  '>': '&gt;',
  '&': '&amp;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Text as XML 1.0 takes it; what it has no sign for becomes the mark for such. */
function text(written: string): string {
  return written.replaceAll(/[<>&"']/gu, sign => signs[sign] ?? sign).replaceAll(notXml, '\uFFFD');
}

// Everything outside the production Char of XML 1.0 (fifth edition, 2.2).
const notXml = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;
