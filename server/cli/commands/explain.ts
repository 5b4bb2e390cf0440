// `tidemark explain`: what a finding means and how to mend it, or where one number of a recipe comes from.

import { isFindingCode } from '../../../schema/findings.ts';
import { nearest } from '../../../schema/nearest.ts';
import { explainText } from '../../reports/explain/text.ts';
import { explainCode, findingCodes, listCodes } from '../../reports/explain-code.ts';
import { explainJson, listNumbers, numberAt } from '../../reports/explain-number.ts';
import type { Asked } from '../args.ts';
import { openOne } from '../open-one.ts';
import { namer } from '../open-recipes.ts';
import { complain, type ExitCode, exit, type Io, paintFor } from '../output.ts';

type Explain = Extract<Asked, { command: 'explain' }>;

export async function explain(asked: Explain, io: Io): Promise<ExitCode> {
  const { about, path } = asked;
  if (about === undefined) {
    io.out.write(listCodes());
    return exit.clean;
  }
  if (path !== undefined || isRecipe(about)) return await explainRecipe(asked, about, path, io);
  if (isFindingCode(about)) {
    io.out.write(explainCode(about));
    return exit.clean;
  }
  const near = nearest(about, findingCodes);
  complain(
    io,
    `there is no finding ${about}.${near === undefined ? ' `tidemark explain` lists them all.' : ` Did you mean ${near}?`}`,
  );
  return exit.trouble;
}

/** No code of a finding has a dot or a slash. */
function isRecipe(about: string): boolean {
  return about === '-' || /[./\\]/u.test(about);
}

async function explainRecipe(asked: Explain, file: string, path: string | undefined, io: Io): Promise<ExitCode> {
  const opened = await openOne({ ...asked, file }, io);
  if (opened === undefined) return exit.trouble;
  const { snapshot, input } = opened;
  if (path === undefined) {
    const paths = listNumbers(snapshot);
    io.out.write(asked.format === 'json' ? jsonText(paths) : paths.map(one => `${one}\n`).join(''));
    return exit.clean;
  }
  const found = numberAt(snapshot, path);
  if (found.kind === 'none') {
    const near = found.near.map(one => `\n  ${one}`).join('');
    const hint = near === '' ? ` \`tidemark explain ${input.name}\` lists all numbers.` : ` Nearest are:${near}`;
    complain(io, `${input.name}: there is no number ${path}.${hint}`);
    return exit.trouble;
  }
  const answer = explainJson(snapshot, found.number, namer([input], io.cwd));
  io.out.write(asked.format === 'json' ? jsonText(answer) : explainText(answer, paintFor(io.out, io.env, asked.color)));
  return exit.clean;
}

function jsonText(answer: object): string {
  return `${JSON.stringify(answer, null, 2)}\n`;
}
