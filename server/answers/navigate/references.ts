// Every place where the name at a place is written, in its own file and in those that borrow from it.

import type { Snapshot } from '../../workspace/snapshot.ts';
import { type Entity, entityAt, isLent, type Occurrence, occurrencesIn } from './entity.ts';

/** What is known of a file and of every file that uses it, as far as they are held; the file itself first. */
export type Readers = (uri: string) => readonly Snapshot[];

/** In the order of the files, then of the text. */
export function references(snapshot: Snapshot, offset: number, readers: Readers): readonly Occurrence[] {
  const found = entityAt(snapshot, offset);
  return found === undefined ? [] : allOccurrences(snapshot, found.entity, readers);
}

export function allOccurrences(snapshot: Snapshot, entity: Entity, readers: Readers): readonly Occurrence[] {
  return filesOf(snapshot, entity, readers).flatMap(file =>
    [...occurrencesIn(file, entity)].sort((a, b) => a.range.from - b.range.from),
  );
}

/** The files in which an entity may be named: entries of a section that is not lent are seen in their own file only. */
export function filesOf(snapshot: Snapshot, { section, file }: Entity, readers: Readers): readonly Snapshot[] {
  return isLent(section) ? readers(file) : [snapshot];
}
