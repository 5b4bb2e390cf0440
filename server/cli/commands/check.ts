// `tidemark check`: finds what is wrong in files, folders or standard input, one recipe after another.

import { version } from '../../../package.json';
import type { FindingsFormat } from '../../reports/findings/printer.ts';
import type { FileReport } from '../../reports/findings/reported.ts';
import type { Asked } from '../args.ts';
import { eachReport } from '../each-report.ts';
import { failing } from '../fail-on.ts';
import { inputsOf } from '../inputs.ts';
import { complain, type ExitCode, exit, type Io, paintFor } from '../output.ts';
import { changedFiles } from '../since.ts';

type CheckAsked = Extract<Asked, { command: 'check' }>;

export async function check(asked: CheckAsked, format: FindingsFormat, io: Io): Promise<ExitCode> {
  const { inputs, troubles } = inputsOf(asked.paths.length === 0 ? ['.'] : asked.paths, asked.stdinFilename, io.cwd);
  const changed = asked.changedSince === undefined ? undefined : changedFiles(asked.changedSince, inputs, io.cwd);
  if (typeof changed === 'string') {
    complain(io, `--changed-since: ${changed}`);
    return exit.trouble;
  }
  const printer = format({ paint: paintFor(io.out, io.env, asked.color), version, failOn: asked.failOn });
  let left = asked.max ?? Number.POSITIVE_INFINITY;
  let unshown = 0;
  let isFailing = false;
  let isAnyRead = false;
  for await (const one of eachReport(inputs, { cwd: io.cwd, ...(changed && { changed }) }, io)) {
    if (one.kind === 'unread') {
      troubles.push(one.says);
      continue;
    }
    isAnyRead = true;
    const { report } = one;
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

function cut(report: FileReport, most: number): FileReport {
  const { findings } = report;
  return findings.length <= most
    ? report
    : { ...report, findings: findings.slice(0, most), unshown: findings.slice(most) };
}

function write(io: Io, text: string): void {
  if (text !== '') io.out.write(text);
}
