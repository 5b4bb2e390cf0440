// `tidemark water`: what the source waters of a recipe hold.

import { nearest } from '../../../schema/nearest.ts';
import { namesIn } from '../../recipe/use.ts';
import { reportOf } from '../../reports/findings/reported.ts';
import { waterJson } from '../../reports/water-json.ts';
import { waterText } from '../../reports/water-text.ts';
import type { Asked } from '../args.ts';
import { failing } from '../fail-on.ts';
import { openOne } from '../open-one.ts';
import { namer } from '../open-recipes.ts';
import { complain, type ExitCode, exit, type Io, paintFor } from '../output.ts';

export async function water(asked: Extract<Asked, { command: 'water' }>, io: Io): Promise<ExitCode> {
  const opened = await openOne(asked, io);
  if (opened === undefined) return exit.trouble;
  const { snapshot, input } = opened;
  const { name } = asked;
  const answer =
    asked.format === 'json'
      ? jsonText(waterJson(snapshot, namer([input], io.cwd), name))
      : waterText(snapshot, paintFor(io.out, io.env, asked.color), name);
  if (answer === undefined) {
    const near = nearest(name ?? '', namesIn(snapshot.scope, ['waters']));
    complain(
      io,
      `${input.name}: there is no water named ${name}.${near === undefined ? '' : ` Did you mean ${near}?`}`,
    );
    return exit.trouble;
  }
  io.out.write(answer);
  return failing([reportOf(snapshot, input.name)], asked.failOn) ? exit.findings : exit.clean;
}

function jsonText(json: object | undefined): string | undefined {
  return json === undefined ? undefined : `${JSON.stringify(json, null, 2)}\n`;
}
