// The bench sheet of a batch or a day, as a page to show beside the recipe and to print.

import { parseDate } from '../../../schema/date.ts';
import { nearest } from '../../../schema/nearest.ts';
import { pagesHtml } from '../../reports/print/html.ts';
import { type SheetAsked, sheet } from '../../reports/sheet.ts';
import { asked } from '../guard.ts';
import { type SheetAbout, type SheetParams, type SheetResult, sheetRequest } from '../requests.ts';
import type { Session } from '../session.ts';

export function handleSheet(session: Session): void {
  session.connection.onRequest<SheetResult, never>(
    sheetRequest,
    asked<SheetParams, SheetResult>(
      session,
      'bench sheet',
      () => refused('The sheet could not be made; the log says why.'),
      params => answer(session, params),
    ),
  );
}

function answer({ workspace }: Session, { uri, about }: SheetParams): SheetResult {
  const snapshot = workspace.snapshot(uri);
  if (snapshot === undefined) return refused('This recipe is not open any more, so there is no sheet of it.');
  const wanted = wantedOf(about);
  if (typeof wanted === 'string') return refused(wanted);
  const pages = sheet(snapshot, wanted);
  if (pages !== undefined) return { kind: 'sheet', html: pagesHtml(pages) };
  const name = 'batch' in about ? about.batch : '';
  const near = nearest(name, snapshot.plan.batches.keys());
  return refused(`The recipe has no batch named ${name}.${near === undefined ? '' : ` Did you mean ${near}?`}`);
}

/** What is asked for, or why it cannot be. */
function wantedOf(about: SheetAbout): SheetAsked | string {
  if ('batch' in about) return { kind: 'batch', name: about.batch };
  const date = parseDate(about.day);
  if (date.kind === 'read') return { kind: 'day', date: date.value };
  return 'reason' in date.params ? String(date.params.reason) : 'A day is written as 2027-03-01.';
}

function refused(says: string): SheetResult {
  return { kind: 'refused', says };
}
