// What a finding means, from its row of the catalogue; and the list of all of them.

import { type FindingCode, findingRow, findings } from '../../schema/findings.ts';
import written from '../../schema/reference/finding-examples.json' with { type: 'json' };
import { titleOf } from '../words/finding.ts';
import { padded, printable } from './print/terminal.ts';

export const findingCodes = Object.keys(findings) as readonly FindingCode[];

interface Example {
  /** With the finding marked below its line. */
  readonly marked: string;
  readonly fixed?: string;
}

const examples: Readonly<Record<string, Example>> = written;

export function explainCode(code: FindingCode): string {
  const { severity, title, why, fix, caution, sources } = findingRow(code);
  const published = sources.flatMap(titleOf);
  const parts = [
    `${code} (${severity})\n${title}.`,
    why,
    `To fix: ${fix}`,
    ...(caution === undefined ? [] : [`Caution: ${caution}`]),
    ...(published.length === 0 ? [] : [`Source: ${published.join('; ')}`]),
  ];
  return `${[...parts, ...exampleOf(code)].join('\n\n')}\n`;
}

function exampleOf(code: FindingCode): readonly string[] {
  const example = examples[code];
  if (example === undefined) return [];
  const shown = [`Example:\n\n${indented(example.marked)}`];
  return example.fixed === undefined ? shown : [...shown, `Put right:\n\n${indented(example.fixed)}`];
}

function indented(text: string): string {
  return printableLines(text)
    .map(line => `  ${line}`.trimEnd())
    .join('\n');
}

/** The lines of an example; what a terminal cannot show is shown as a mark, as in the examples about such signs. */
function printableLines(text: string): readonly string[] {
  return text.split('\n').map(printable);
}

/** Every code with its title, a line each. */
export function listCodes(): string {
  const width = Math.max(...findingCodes.map(code => code.length));
  return findingCodes
    .map(code => `${padded(code, width)}  ${padded(findingRow(code).severity, 11)}  ${findingRow(code).title}\n`)
    .join('');
}
