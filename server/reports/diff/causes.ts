// Why numbers changed, in words: the written place, what stood there and what stands there now, with its file and line.

import { valueAt } from '../../../schema/place.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import type { ChangedPlace } from '../../plan/written.ts';
import { find } from '../../recipe/use.ts';
import { textOf } from '../../syntax/document.ts';
import { nearestRange, rangeOf } from '../../syntax/place.ts';
import { positionAt } from '../../syntax/position.ts';
import { pathText } from '../../words/figure.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

export interface Cause {
  /** `batches › opening › volume`. */
  readonly place: string;
  readonly path: ChangedPlace['path'];
  readonly side: ChangedPlace['side'];
  /** As the reader names it. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** What is written there, where it fits a line; undefined too where nothing is. */
  readonly before: string | undefined;
  readonly after: string | undefined;
}

/** A recipe with the names by which a reader knows its files. */
export interface Sided {
  readonly snapshot: Snapshot;
  readonly nameFile: (uri: string) => string;
}

export function causeOf(place: ChangedPlace, before: Sided, after: Sided): Cause {
  const { snapshot, nameFile } = place.side === 'before' ? before : after;
  const uri = place.file ?? snapshot.uri;
  const document = place.file === undefined ? snapshot.document : snapshot.documentOf(place.file);
  const at = document === undefined ? 0 : nearestRange(document, valueAt(place.path)).from;
  const isLog = place.path[0] === 'log';
  return {
    place: pathText(place.path),
    path: place.path,
    side: place.side,
    file: nameFile(uri),
    line: document === undefined ? 1 : positionAt(document, at).line + 1,
    // A log entry has no name: the number of another entry in the other log says nothing.
    before: isLog && place.side === 'after' ? undefined : writtenIn(before.snapshot, place.path),
    after: isLog && place.side === 'before' ? undefined : writtenIn(after.snapshot, place.path),
  };
}

/** `batches › opening › volume: 84 L, now 80 L`. */
export function causeText({ place, side, before, after }: Cause): string {
  if (before !== undefined && after !== undefined) return `${place}: ${before}, now ${after}`;
  if (side === 'before') return `${place}${before === undefined ? '' : `: ${before}`}, no longer written`;
  return after === undefined ? place : before === undefined ? `${place}: now ${after}` : place;
}

/** What is written at a path, on one line; undefined where nothing is, or more than a line can tell. */
function writtenIn(snapshot: Snapshot, path: ChangedPlace['path']): string | undefined {
  const [section, name] = path;
  const isEntry = typeof section === 'string' && typeof name === 'string' && isSection(section);
  const file = isEntry ? find(snapshot.scope, section, name)?.file : undefined;
  const document = file === undefined ? snapshot.document : snapshot.documentOf(file);
  const range = document && rangeOf(document, valueAt(path));
  if (document === undefined || range === undefined) return undefined;
  const text = textOf(document).slice(range.from, range.to).trim();
  return text === '' || text.includes('\n') || text.length > longest ? undefined : text;
}

const longest = 100;

function isSection(key: string): key is SectionName {
  return Object.hasOwn(sectionNames, key);
}
