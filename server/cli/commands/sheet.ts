// `tidemark sheet`: the page to work from at the bench, for a batch or a day.

import { addDays, type Day, formatDate, parseDate } from '../../../schema/date.ts';
import { nearest } from '../../../schema/nearest.ts';
import { reportOf } from '../../reports/findings/reported.ts';
import { pagesHtml } from '../../reports/print/html.ts';
import { pagesMarkdown } from '../../reports/print/markdown.ts';
import type { Page } from '../../reports/print/page.ts';
import { pagesText } from '../../reports/print/text.ts';
import { dueBatch, type SheetAsked, sheet as sheetOf } from '../../reports/sheet.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Asked } from '../args.ts';
import { failing } from '../fail-on.ts';
import { openOne } from '../open-one.ts';
import { complain, type ExitCode, exit, type Io } from '../output.ts';

type SheetOptions = Extract<Asked, { command: 'sheet' }>;

export async function sheet(asked: SheetOptions, io: Io): Promise<ExitCode> {
  const day = readDay(asked.day, io.today());
  if (typeof day === 'string') return refuse(io, `--day: ${day}`);
  if (asked.batch !== undefined && day !== undefined)
    return refuse(io, 'a sheet is for a --batch or for a --day, not for both.');
  const opened = await openOne(asked, io);
  if (opened === undefined) return exit.trouble;
  const { snapshot, input } = opened;
  const wanted = wantedOf(snapshot, asked.batch, day, io);
  if (wanted === undefined) return refuse(io, `${input.name}: it has no batch to print a sheet for.`);
  const pages = sheetOf(snapshot, wanted);
  if (pages === undefined) {
    const near = nearest(asked.batch ?? '', snapshot.plan.batches.keys());
    const meant = near === undefined ? '' : ` Did you mean ${near}?`;
    return refuse(io, `${input.name}: there is no batch named ${asked.batch}.${meant}`);
  }
  io.out.write(printers[asked.format](pages));
  return failing([reportOf(snapshot, input.name)], asked.failOn) ? exit.findings : exit.clean;
}

const printers: Readonly<Record<SheetOptions['format'], (pages: readonly Page[]) => string>> = {
  text: pagesText,
  markdown: pagesMarkdown,
  html: pagesHtml,
};

/** What is asked for; without a word about it the batch to be mixed next, which is then said. */
function wantedOf(snapshot: Snapshot, batch: string | undefined, day: Day | undefined, io: Io): SheetAsked | undefined {
  if (day !== undefined) return { kind: 'day', date: day };
  if (batch !== undefined) return { kind: 'batch', name: batch };
  const due = dueBatch(snapshot, io.today());
  if (due === undefined) return undefined;
  const when = due.on === undefined ? '' : `, due on ${formatDate(due.on)}`;
  complain(io, `the sheet of ${due.name}${when}; --batch or --day asks for another.`);
  return { kind: 'batch', name: due.name };
}

/** The day that is written, or what is wrong with it. */
function readDay(written: string | undefined, today: Day): Day | string | undefined {
  if (written === undefined) return undefined;
  if (written === 'today') return today;
  if (written === 'tomorrow') return addDays(today, 1);
  const date = parseDate(written);
  if (date.kind === 'read') return date.value;
  return 'reason' in date.params ? String(date.params.reason) : 'a date is written as 2027-03-01.';
}

function refuse(io: Io, says: string): ExitCode {
  complain(io, says);
  return exit.trouble;
}
