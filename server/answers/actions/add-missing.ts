// Adds every key that an entry still needs at once, each with the format's own example.

import type { Path } from '../../../schema/place.ts';
import type { Cursor } from '../../syntax/cursor.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';

/** Where one key is missing its own fix is enough. */
export function addMissingActions({ findings, document }: Snapshot, { path }: Cursor): readonly Action[] {
  const entry = path.slice(0, 2);
  if (entry.length < 2) return [];
  const edits = findings.flatMap(({ finding }) => {
    const isHere = finding.code === 'value-missing' && startsWith(finding.at.path, entry);
    return isHere ? (finding.fixes?.[0]?.edits ?? []) : [];
  });
  if (edits.length < 2) return [];
  const changes = textEdits(document, edits);
  const title = `Add all that \`${entry[1]}\` needs`;
  return [{ kind: 'rewrite', title, edits: changes, preferred: false }];
}

function startsWith(path: Path, start: Path): boolean {
  return start.every((key, at) => path[at] === key);
}
