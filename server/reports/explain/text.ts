// The tree of a number as text: the statement of each step, below it what went in, and at its end where each number is written.

import type { ExplainJson, ExplainNode } from '../../../schema/explain-json.ts';
import { pathText } from '../../words/figure.ts';
import type { PlaceJson } from '../plan-json/gaps.ts';
import type { Paint } from '../print/paint.ts';
import { printable } from '../print/terminal.ts';

export function explainText({ path, number, sources, cautions }: ExplainJson, paint: Paint): string {
  const amount = number.kind === 'unknown' ? 'not known' : number.amount;
  const lines = [
    ...(number.kind === 'computed' ? [`  ${number.says}`] : []),
    ...ownLines(number, '  '),
    ...listed('Sources', sources),
    ...listed('Caution', cautions),
  ];
  return `${[paint.strong(printable(`${path}: ${amount}`)), ...lines.map(printable)].join('\n')}\n`;
}

/** What stands below a number's own line. */
function ownLines(node: ExplainNode, indent: string): readonly string[] {
  switch (node.kind) {
    case 'written':
      return indent === '  ' ? [`${indent}written at ${whereText(node.at)}`] : [];
    case 'assumed':
      return indent === '  ' ? [`${indent}assumed: ${node.says}`] : [];
    case 'unknown':
      return node.wants.map(({ says, at }) => `${indent}missing: ${says} (${whereText(at)})`);
    case 'computed':
      if (node.again) return [];
      return [
        `${indent}${node.statement}`,
        ...node.inputs.flatMap(input => inputLines(input, `${indent}  `)),
        ...node.account.map(({ what, amount }) => `${indent}  · ${what}: ${amount}`),
      ];
  }
}

function inputLines(node: ExplainNode, indent: string): readonly string[] {
  if (node.kind === 'unknown') return ownLines(node, indent);
  return [`${indent}${node.name} ${node.amount}: ${originText(node)}`, ...ownLines(node, `${indent}  `)];
}

function originText(node: Exclude<ExplainNode, { kind: 'unknown' }>): string {
  switch (node.kind) {
    case 'written':
      return whereText(node.at);
    case 'assumed':
      return `assumed: ${node.says}`;
    case 'computed':
      return node.again ? `${node.says}, as above` : node.says;
  }
}

/** `batches › opening › volume, bench.grow.yaml:12`; lines count from 1 for people. */
function whereText({ file, path, line }: PlaceJson): string {
  const written = line === null ? file : `${file}:${line + 1}`;
  return path.length === 0 ? written : `${pathText(path)}, ${written}`;
}

function listed(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', heading, ...lines.map(line => `  ${line}`)];
}
