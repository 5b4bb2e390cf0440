// A calendar as an iCalendar file (RFC 5545). Apart from what stands in it, so that the library that writes the format is loaded
// only when a calendar is printed.

import ical, { ICalEventTransparency } from 'ical-generator';
import type { Day } from '../../../schema/date.ts';
import type { Calendar } from '../calendar.ts';
import { printable } from './terminal.ts';

/** `stamp` is the day on which the calendar is written. */
export function icalendarText({ name, events }: Calendar, stamp: Day): string {
  const calendar = ical({
    name: escapedName(name),
    prodId: { company: 'Tidemark', product: 'Tidemark', language: 'EN' },
  });
  for (const { uid, date, summary, description, category } of events) {
    calendar.createEvent({
      id: uid,
      start: dateOf(date),
      stamp: dateOf(stamp),
      allDay: true,
      timezone: null,
      summary: oneLine(summary),
      ...(description.length === 0 ? {} : { description: description.map(oneLine).join('\n') }),
      categories: [{ name: category }],
      // A day's work with plants leaves the day free for other appointments.
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  // Every line of the format ends with a line break, the last one too.
  return `${calendar.toString().trimEnd()}\r\n`;
}

/** Midnight in universal time, from which the library takes the day whatever zone the machine is in. */
function dateOf(day: Day): Date {
  return new Date(day * 86_400_000);
}

/** The library writes names as they are: the signs that mean something in the format are marked here. */
function escapedName(text: string): string {
  return oneLine(text).replaceAll(/[\\;,]/gu, sign => `\\${sign}`);
}

function oneLine(text: string): string {
  return printable(text.replaceAll(/\s+/gu, ' '));
}
