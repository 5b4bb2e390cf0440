// `tidemark plan`: everything that one recipe comes to.

import { reportOf } from '../../reports/findings/reported.ts';
import { planJson } from '../../reports/plan-json.ts';
import { planText } from '../../reports/plan-text.ts';
import type { Asked } from '../args.ts';
import { failing } from '../fail-on.ts';
import { openOne } from '../open-one.ts';
import { namer } from '../open-recipes.ts';
import { type ExitCode, exit, type Io, paintFor } from '../output.ts';

export async function plan(asked: Extract<Asked, { command: 'plan' }>, io: Io): Promise<ExitCode> {
  const opened = await openOne(asked, io);
  if (opened === undefined) return exit.trouble;
  const { snapshot, input } = opened;
  if (asked.format === 'json') io.out.write(`${JSON.stringify(planJson(snapshot, namer([input], io.cwd)), null, 2)}\n`);
  else io.out.write(planText(snapshot, input.name, paintFor(io.out, io.env, asked.color)));
  return failing([reportOf(snapshot, input.name)], asked.failOn) ? exit.findings : exit.clean;
}
