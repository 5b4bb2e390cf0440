// `tidemark calendar`: the tasks of a recipe as an iCalendar file.

import { basename } from 'node:path';
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
  io.out.write(icalendarText(calendarOf(snapshot, basename(input.path)), io.today()));
  return failing([reportOf(snapshot, input.name)], asked.failOn) ? exit.findings : exit.clean;
}
