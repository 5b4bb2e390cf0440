// `tidemark check`: finds what is wrong in files, folders or standard input, one recipe after another.

import { relative } from 'node:path';
import { version } from '../../../package.json';
import type { FindingsFormat } from '../../reports/findings/printer.ts';
import { type FileReport, reportOf } from '../../reports/findings/reported.ts';
import type { Asked } from '../args.ts';
import { type EachOptions, eachRecipe } from '../each-recipe.ts';
import { failing } from '../fail-on.ts';
import { inputsOf } from '../inputs.ts';
import { type Input, slashed } from '../open-recipes.ts';
import { complain, type ExitCode, exit, type Io, paintFor } from '../output.ts';
import { touchedSince } from '../since.ts';

type CheckAsked = Extract<Asked, { command: 'check' }>;

export async function check(asked: CheckAsked, format: FindingsFormat, io: Io): Promise<ExitCode> {
  const { inputs, troubles } = inputsOf(asked.paths.length === 0 ? ['.'] : asked.paths, asked.stdinFilename, io.cwd);
  const options = optionsFor(asked, inputs, io);
  if (typeof options === 'string') {
    complain(io, `--changed-since: ${options}`);
    return exit.trouble;
  }
  const printer = format({ paint: paintFor(io.out, io.env, asked.color), version, failOn: asked.failOn });
  let left = asked.max ?? Number.POSITIVE_INFINITY;
  let unshown = 0;
  let isFailing = false;
  let isAnyRead = false;
  for await (const one of eachRecipe(inputs, io, options)) {
    if (one.kind === 'unread') {
      troubles.push(`${one.input.name}: ${one.says}`);
      continue;
    }
    isAnyRead = true;
    const report = reportOf(one.snapshot, one.input.name, fromRoot(one.input, one.root));
    isFailing ||= failing([report], asked.failOn);
    const shown = cut(report, left);
    left -= shown.findings.length;
    unshown += report.findings.length - shown.findings.length;
    write(io, printer.file(shown));
  }
  // Where nothing could be read there is no answer; where no recipe has changed there is.
  if (isAnyRead || troubles.length === 0) write(io, printer.end());
  if (unshown > 0)
    complain(io, `${unshown} more ${unshown === 1 ? 'finding is' : 'findings are'} not shown (--max ${asked.max}).`);
  for (const trouble of troubles) complain(io, trouble);
  if (troubles.length > 0) return exit.trouble;
  return isFailing ? exit.findings : exit.clean;
}

/** What is wanted of the inputs, or why that cannot be told. */
function optionsFor({ changedSince }: CheckAsked, inputs: readonly Input[], io: Io): EachOptions | string {
  if (changedSince === undefined) return {};
  const since = touchedSince(changedSince, inputs, io.cwd);
  return typeof since === 'string' ? since : { isWanted: since.isTouched };
}

/** The path from the root; of what lies outside it, the whole path. Standard input without a name has only that. */
function fromRoot({ path, name, fromStdin }: Input, root: string): string {
  if (fromStdin && name === '-') return name;
  const way = slashed(relative(root, path));
  return way.startsWith('../') ? slashed(path) : way;
}

function cut(report: FileReport, most: number): FileReport {
  const { findings } = report;
  return findings.length <= most
    ? report
    : { ...report, findings: findings.slice(0, most), unshown: findings.slice(most) };
}

function write(io: Io, text: string): void {
  if (text !== '') io.out.write(text);
}
