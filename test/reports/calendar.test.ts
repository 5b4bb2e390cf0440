// The calendar is read back by a parser of its own: ical.js (RFC 5545).
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { dayOf } from '../../schema/date.ts';
import { seasonOf } from '../../server/plan/season.ts';
import { calendar } from '../../server/reports/calendar.ts';
import { icalendarText } from '../../server/reports/print/icalendar.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { type MarkedRecipe, recipe } from '../recipe.ts';

const stamp = dayOf(2027, 1, 5);

function calendarText(snapshot: Snapshot, home: string): string {
  return icalendarText(calendar(snapshot, 'greens.grow.yaml', home), stamp);
}

const season = (title = 'Stairwell greens', transplant = '2027-03-20', harvest = '35 d') => recipe`
  recipe: 1
  title: ${JSON.stringify(title)}
  waters:
    brook: { pH: 7, alkalinity: 0.5 meq/L, EC: 0.2 mS/cm }
  containers:
    crock:
      inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
      net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }
  stages:
    leaf: { lasts: ${harvest}, batch: opening, uses: 60 mL/d }
  plantings:
    basil: { container: crock, count: 3, sow: 2027-02-25, transplant: ${transplant}, stages: [leaf], keep-air-gap: 3 cm }
  batches:
    opening: { water: brook, volume: as needed }
`;

interface Read {
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly date: string;
  readonly allDay: boolean;
}

function read(text: string): { readonly name: string; readonly events: readonly Read[] } {
  const parsed = new ICAL.Component(ICAL.parse(text));
  const events = parsed.getAllSubcomponents('vevent').map(component => {
    const { uid, summary, description, startDate } = new ICAL.Event(component);
    return { uid, summary, description, date: startDate.toString(), allDay: startDate.isDate };
  });
  // The RFC defines no name of a calendar, so the parser leaves its marks in it.
  const name = String(parsed.getFirstPropertyValue('x-wr-calname')).replaceAll(/\\(?<sign>[\\;,])/g, '$<sign>');
  return { name, events };
}

const eventsOf = (of: MarkedRecipe, home = 'greens.grow.yaml') => read(calendarText(of.snapshot(), home)).events;

test('every task is an event of its whole day', () => {
  const greens = season();
  const events = eventsOf(greens);
  const tasks = seasonOf(greens.snapshot().plan).tasks;
  expect(events.map(({ summary }) => summary)).toEqual(tasks.map(({ what }) => what));
  expect(events.every(({ allDay }) => allDay)).toBe(true);
  expect(events.find(({ uid }) => uid.includes('/harvest/'))?.date).toBe('2027-04-24');
});

test('what a task takes stands in the description', () => {
  const { description } = eventsOf(season()).find(({ uid }) => uid.includes('/fill/')) ?? {};
  expect(description).toMatch(/^3 × [\d.]+ L, up to 14 cm$/);
});

test('a moved date keeps its identity: the event moves and is not doubled', () => {
  const before = eventsOf(season());
  const after = eventsOf(season('Stairwell greens', '2027-03-27'));
  const uids = (events: readonly Read[]) => events.map(({ uid }) => uid).filter(uid => !uid.includes('/thin/'));
  expect(uids(after)).toEqual(uids(before));
  const fill = (events: readonly Read[]) => events.find(({ uid }) => uid.includes('/fill/'))?.date;
  expect([fill(before), fill(after)]).toEqual(['2027-03-20', '2027-03-27']);
});

test('no two events share an identity, not even those of recipes of one name in two folders', () => {
  const homes = ['garden/a.grow.yaml', 'garden/b c/a.grow.yaml'];
  const uids = homes.flatMap(home => eventsOf(season(), home)).map(({ uid }) => uid);
  expect(new Set(uids).size).toBe(uids.length);
  expect(uids.every(uid => /^\S+@tidemark$/.test(uid))).toBe(true);
});

test('it is stamped with the day it is given, and the same plan gives the same bytes', () => {
  const text = calendarText(season().snapshot(), 'a.grow.yaml');
  expect(text).toMatch(/^DTSTAMP:20270105T000000Z\r$/m);
  expect(calendarText(season().snapshot(), 'a.grow.yaml')).toBe(text);
});

test('lines end with CRLF and are folded at 75 octets, inside no character', () => {
  const long = `${'Grünzeug für die Küche, '.repeat(20)}🌱`;
  const text = calendarText(season(long).snapshot(), 'a.grow.yaml');
  expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  expect(Math.max(...text.split('\r\n').map(line => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
  expect(read(text).name).toBe(long);
});

test('a title cannot put anything of its own into the calendar', () => {
  const title = 'Greens; a, b\\\r\nBEGIN:VEVENT\nUID:x\u0007';
  const { name, events } = read(calendarText(season(title).snapshot(), 'a.grow.yaml'));
  expect(name).toBe('Greens; a, b\\ BEGIN:VEVENT UID:x\uFFFD');
  expect(events.length).toBe(eventsOf(season()).length);
});

test('a plan without days is a calendar without events', () => {
  const { events } = read(calendarText(recipe`recipe: 1`.snapshot(), 'a.grow.yaml'));
  expect(events).toEqual([]);
});
