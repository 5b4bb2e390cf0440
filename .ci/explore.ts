// Prints each stage of the pipe for one file: entries, values, figures, findings. The fastest way to see what the house makes of
// a text; what is printed is for reading and promises no form.

import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { sayWhat } from '../schema/findings.ts';
import { type Figure, stepsOf } from '../server/plan/figure.ts';
import { textOf } from '../server/syntax/document.ts';
import { positionAt } from '../server/syntax/position.ts';
import type { Snapshot } from '../server/workspace/snapshot.ts';
import { Workspace } from '../server/workspace/workspace.ts';

/** A file and all that it uses, read from the disk. */
export function snapshotOf(file: string): Snapshot | undefined {
  const workspace = new Workspace();
  const uri = pathToFileURL(resolve(file)).href;
  workspace.open(uri, readFileSync(file, 'utf8'));
  for (let wanted = workspace.wanted(); wanted.length > 0; wanted = workspace.wanted()) {
    for (const other of wanted) {
      const path = fileURLToPath(other);
      const text = existsSync(path) ? readFileSync(path, 'utf8') : undefined;
      workspace.arrived(other, text === undefined ? { kind: 'none', why: 'absent' } : { kind: 'text', text });
    }
  }
  return workspace.snapshot(uri);
}

function explore(file: string): void {
  const snapshot = snapshotOf(file);
  if (snapshot === undefined) return;
  const { document, plan } = snapshot;
  title('entries');
  for (const entry of document.entries)
    line(`${entry.base.join('/') || '(whole)'}: ${entry.text.split('\n').length} lines`);
  title('values');
  line(JSON.stringify(snapshot.recipe, (_, value) => (value instanceof Map ? Object.fromEntries(value) : value), 2));
  title('figures');
  for (const [name, batch] of plan.batches) {
    show(`batches/${name}/volume`, batch.volume);
    show(`batches/${name}/loads`, batch.loads);
    for (const [feed, dose] of batch.doses) show(`batches/${name}/feed/${feed}`, dose.exact);
    for (const [element, figure] of batch.elements) show(`batches/${name}/elements/${element}`, figure);
  }
  for (const [name, { fill }] of plan.plantings) {
    show(`plantings/${name}/level`, fill.level);
    show(`plantings/${name}/volume`, fill.volume);
  }
  title('findings');
  for (const { finding, range } of snapshot.findings) {
    const { line: row, character } = positionAt(document, range.from, 'utf-16');
    line(`${row + 1}:${character + 1} ${finding.code}: ${sayWhat(finding, { amount: ({ value }) => String(value) })}`);
    line(`    ${textOf(document).slice(range.from, range.to).split('\n')[0]}`);
  }
}

/** A figure with its steps, the last one first. */
function show(name: string, figure: Figure): void {
  if (figure.kind === 'unknown') {
    line(`${name}: unknown, for want of ${figure.wants.map(want => want.says).join('; ')}`);
    return;
  }
  line(`${name}: ${Number(figure.quantity.value.toPrecision(6))} (${figure.quantity.dimension})`);
  for (const step of stepsOf(figure)) line(`    ${step.formula.id}: ${step.formula.statement}`);
}

function title(text: string): void {
  line(`\n== ${text}`);
}

function line(text: string): void {
  process.stdout.write(`${text}\n`);
}

const [file] = process.argv.slice(2);
if (process.argv[1] === import.meta.filename) {
  if (file === undefined) {
    process.stderr.write('usage: npm run explore FILE\n');
    process.exitCode = 2;
  } else {
    explore(file);
  }
}
