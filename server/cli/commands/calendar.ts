// `tidemark calendar`: the tasks of a recipe as an iCalendar file.

import { basename, dirname, parse, relative, sep } from 'node:path';
import { repositoryAbove } from '../../host/disk.ts';
import { calendar as calendarOf } from '../../reports/calendar.ts';
import { reportOf } from '../../reports/findings/reported.ts';
import type { Asked } from '../args.ts';
import { failing } from '../fail-on.ts';
import { openOne } from '../open-one.ts';
import { type ExitCode, exit, type Io } from '../output.ts';

export async function calendar(asked: Extract<Asked, { command: 'calendar' }>, io: Io): Promise<ExitCode> {
  const opened = await openOne(asked, io);
  if (opened === undefined) return exit.trouble;
  const { snapshot, input } = opened;
  // The library that writes calendars is set up only when one is wanted.
  const { icalendarText } = await import('../../reports/print/icalendar.ts');
  io.out.write(icalendarText(calendarOf(snapshot, basename(input.path), homeOf(input.path)), io.today()));
  return failing([reportOf(snapshot, input.name)], asked.failOn) ? exit.findings : exit.clean;
}

/** The path from its repository on, so that clones agree; elsewhere the whole path, so that no two folders do. */
function homeOf(path: string): string {
  const repository = repositoryAbove(path);
  return relative(repository === undefined ? parse(path).root : dirname(repository), path)
    .split(sep)
    .join('/');
}
