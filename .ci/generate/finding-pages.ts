// The pages of the findings: a list, and a page for each code with its marked example. They are made from the catalogue and from
// the very recipes by which the tests check it.

import { type FindingCode, findingRow, findings } from '../../schema/findings.ts';
import { sources } from '../../schema/sources.ts';
import { anchor, code, generatedNote, page, table } from './markdown.ts';

const codes = Object.keys(findings) as FindingCode[];

const foundBy = {
  syntax: 'the syntax of the file',
  reading: 'reading its values',
  use: 'following `use`',
  check: 'checking what its values mean',
} as const;

/** The text of schema/reference/findings/README.md. */
export function findingsIndex(): string {
  return page(
    '# Findings',
    generatedNote('schema/findings.ts'),
    `Tidemark knows ${codes.length} findings. An error stops a number or would hurt; a warning deserves a look; information and hints can wait.`,
    table(
      ['code', 'severity', 'what it says'],
      codes.map(name => [`[${code(name)}](${name}.md)`, findingRow(name).severity, findingRow(name).title]),
    ),
  );
}

/** The text of a finding's page; `example` is the marked recipe of its test, where there is one. */
export function findingPage(name: FindingCode, example: string | undefined): string {
  const row = findingRow(name);
  return page(
    `# ${row.title}`,
    generatedNote('schema/findings.ts and test/findings/'),
    `${code(name)}, ${article(row.severity)}. Found by ${foundBy[row.from]}.`,
    row.caution === undefined ? '' : `> **Caution.** ${row.caution}`,
    '## Why it matters',
    row.why,
    '## What to do',
    row.fix,
    ...exampleOf(example),
    '## Sources',
    row.sources.map(key => `* [${sources[key].title}](../sources.md#${anchor(key)})`).join('\n'),
  );
}

function article(severity: string): string {
  return severity === 'error' ? 'an error' : severity === 'information' ? 'information' : `a ${severity}`;
}

const fixedMark = /^# --- fixed *\n/m;

function exampleOf(example: string | undefined): readonly string[] {
  if (example === undefined) return [];
  const [marked = '', fixed] = example.split(fixedMark);
  const shown = ['## Example', 'The finding is marked below its line.', fenced(marked)];
  return fixed === undefined ? shown : [...shown, 'Put right:', fenced(fixed)];
}

function fenced(text: string): string {
  return `\`\`\`yaml\n${text.trim()}\n\`\`\``;
}
