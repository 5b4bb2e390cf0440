// `tidemark supplies`: what the plan uses of everything, how many packages that is, and what it costs.

import { reportOf } from '../../reports/findings/reported.ts';
import { suppliesJson } from '../../reports/supplies-json.ts';
import { suppliesText } from '../../reports/supplies-text.ts';
import type { Asked } from '../args.ts';
import { failing } from '../fail-on.ts';
import { openOne } from '../open-one.ts';
import { namer } from '../open-recipes.ts';
import { type ExitCode, exit, type Io, paintFor } from '../output.ts';

export async function supplies(asked: Extract<Asked, { command: 'supplies' }>, io: Io): Promise<ExitCode> {
  const opened = await openOne(asked, io);
  if (opened === undefined) return exit.trouble;
  const { snapshot, input } = opened;
  if (asked.format === 'json') {
    io.out.write(`${JSON.stringify(suppliesJson(snapshot, namer([input], io.cwd)), null, 2)}\n`);
  } else {
    io.out.write(suppliesText(snapshot, input.name, paintFor(io.out, io.env, asked.color)));
  }
  return failing([reportOf(snapshot, input.name)], asked.failOn) ? exit.findings : exit.clean;
}
