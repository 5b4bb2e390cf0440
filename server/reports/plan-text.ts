// The whole plan as text: what a grower wants at the bench, in the order of the recipe, a fact on a line.

import type { ContainerPlan } from '../plan/container.ts';
import { seasonOf } from '../plan/season.ts';
import type { Reader } from '../words/amount.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { type Reported, reportOf } from './findings/reported.ts';
import { batchText } from './plan-text/batch.ts';
import { plantingText } from './plan-text/planting.ts';
import { figureText, type Lines, row } from './plan-text/rows.ts';
import { suppliesText, tasksText } from './plan-text/season.ts';
import type { Paint } from './print/paint.ts';
import { printable } from './print/terminal.ts';

export function planText(snapshot: Snapshot, file: string, paint: Paint): string {
  const { plan, recipe } = snapshot;
  const { show } = recipe;
  const season = seasonOf(plan);
  const parts: readonly Lines[] = [
    [recipe.title ?? file],
    ...[...plan.batches].map(([name, batch]) => batchText(name, batch, show)),
    ...[...season.plantings].map(([name, planting]) => plantingText(name, planting, show)),
    ...[...plan.containers].map(([name, container]) => containerText(name, container, show)),
    tasksText(season, show),
    suppliesText(season, show),
    findingsText(reportOf(snapshot, file).findings),
  ];
  return parts
    .filter(lines => lines.length > 0)
    .map(([heading = '', ...lines]) => [paint.strong(printable(heading)), ...lines, ''].join('\n'))
    .join('\n');
}

function containerText(name: string, container: ContainerPlan, reader: Reader): Lines {
  const hasCup = container.container.value['net-cup'] !== undefined;
  return [
    `Container ${name}`,
    row('brimful', figureText(container.brimful, reader)),
    ...(hasCup
      ? [
          row(
            'net-cup line',
            `${figureText(container.netCupLine, reader)}, ${figureText(container.netCupVolume, reader)} up to it`,
          ),
        ]
      : []),
  ];
}

/** What was found, by its place in the recipe: lines move, places stay. Hints are for the editor. */
function findingsText(findings: readonly Reported[]): Lines {
  const said = findings.filter(({ severity }) => severity !== 'hint');
  if (said.length === 0) return [];
  return [
    'Findings',
    ...said.map(({ code, severity, message, path }) =>
      printable(`  ${severity} ${code} at ${path === '' ? 'the top' : path}: ${message}`),
    ),
  ];
}
