// A finding with the range of text that it is about. Ranges are asked for last, when all is known.

import type { Finding, Fix } from '../../schema/findings.ts';
import { type FileNote, notesOf } from '../syntax/address.ts';
import type { Document } from '../syntax/document.ts';
import { nearestRange } from '../syntax/place.ts';
import { positionAt } from '../syntax/position.ts';
import type { Range } from '../syntax/tree.ts';

export interface Located {
  readonly finding: Finding;
  readonly range: Range;
}

/** A finding with its range; where its place is not written, the nearest key above it that is. */
export function locate(document: Document, finding: Finding): Located {
  return { finding, range: nearestRange(document, finding.at) };
}

/** What the syntax found, as findings. A note without a path is about its whole entry. */
export function locateNotes(document: Document): readonly Located[] {
  return notesOf(document).map(note => {
    const { code, params } = note;
    const part = note.nth === undefined ? ({ kind: 'value' } as const) : ({ kind: 'key', nth: note.nth } as const);
    const at = { path: note.path ?? note.entry.base, part };
    return { finding: { code, params, at, fixes: fixesOf(note) } as Finding, range: note.range };
  });
}

/** What the syntax alone can mend: of a key that stands twice, the second may go. */
function fixesOf({ code, path, nth }: FileNote): readonly Fix[] {
  if (code !== 'name-duplicate' || path === undefined || nth === undefined) return [];
  return [{ title: 'Take out the second', edits: [{ kind: 'remove', path, nth }], sure: false }];
}

/**
 * The findings of reading without those about keys on a line that is broken YAML: such a key is half of something else, and the
 * syntax has said so.
 */
export function withoutBrokenKeys(
  document: Document,
  syntax: readonly Located[],
  reading: readonly Located[],
): readonly Located[] {
  const broken = syntax.filter(({ finding }) => finding.code === 'yaml-invalid' || finding.code === 'tab-indent');
  if (broken.length === 0) return reading;
  const lines = new Set(broken.map(({ range }) => positionAt(document, range.from).line));
  return reading.filter(
    ({ finding: { code }, range }) =>
      !((code === 'key-unknown' || code === 'name-invalid') && lines.has(positionAt(document, range.from).line)),
  );
}
