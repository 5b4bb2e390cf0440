// Reports of findings made from recipes, as check makes them, for the tests of the formats.

import type { FindingsFormat } from '../../server/reports/findings/printer.ts';
import { type FileReport, reportOf } from '../../server/reports/findings/reported.ts';
import { plainPaint } from '../../server/reports/print/paint.ts';
import { Workspace } from '../../server/workspace/workspace.ts';

export function report(file: string, text: string): FileReport {
  const workspace = new Workspace();
  const uri = `file:///${encodeURIComponent(file)}`;
  workspace.open(uri, text);
  const snapshot = workspace.snapshot(uri);
  if (snapshot === undefined) throw new Error('no snapshot');
  return reportOf(snapshot, file);
}

export function printed(
  format: FindingsFormat,
  reports: readonly FileReport[],
  failOn: 'error' | 'hint' | 'never' = 'error',
): string {
  const printer = format({ paint: plainPaint, version: '1.2.3', failOn });
  return reports.map(one => printer.file(one)).join('') + printer.end();
}

/** One error and one warning, with signs in them that formats have to escape. */
export const odd = report(
  'rows/50 % <a>&é, b.grow.yaml',
  `recipe: 1
waters:
  brook: { pH: 7.1, alkalinity: 1 meq/L }
batches:
  cress: { water: 'br"<o>k & co', volume: 4 L }
  dill: { water: brook, volume: 4 cm }
`,
);

export const clean = report('clean.grow.yaml', 'recipe: 1\n');

/** So many errors and so many hints. */
export function many(errors: number, hints: number): FileReport {
  const lines = (count: number, line: (at: number) => string) =>
    Array.from({ length: count }, (_, at) => line(at)).join('');
  return report(
    'many.grow.yaml',
    `recipe: 1
waters:
  brook: { pH: 7.1, alkalinity: 1 meq/L }
batches:
  cress: { water: brook, volume: 4 L }
${lines(errors, at => `  b${at}: { water: brok${at}, volume: 4 L }\n`)}stages:
  leaf: { lasts: 9 d, batch: cress }
plantings:
  p: { container: jug, fill: 9 cm, stages: [leaf] }
containers:
  jug: { opaque: true, inside: { cylinder: { diameter: 9 cm, height: 20 cm } } }
feeds:
${lines(hints, at => `  f${at}: { analysis: { N: 1 % } }\n`)}`,
  );
}
