// Moves an entry into a file that this one uses, where its name goes on meaning the same.

import { referencesOf } from '../../recipe/names.ts';
import { hasName, nameOfFile, type Scope } from '../../recipe/use.ts';
import type { Cursor } from '../../syntax/cursor.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { entityOf, isLent, isSection } from '../navigate/entity.ts';
import type { Action } from './actions.ts';
import { entryText } from './entry-text.ts';

/** On the name of an entry, for each used file that can hold it: what the entry refers to must be seen from there too. */
export function moveEntryActions(snapshot: Snapshot, { path, on }: Cursor): readonly Action[] {
  const { document, recipe, scope } = snapshot;
  const [section, name] = path;
  if (on !== 'key' || path.length !== 2 || !isSection(section) || typeof name !== 'string' || !isLent(section))
    return [];
  const value = recipe.sections[section].get(name);
  const text = value === undefined ? undefined : entryText(document, [section, name], 'lines');
  if (value === undefined || text === undefined) return [];
  return scope.lenders.flatMap((lender): readonly Action[] => {
    const into = snapshot.documentOf(lender.file);
    if (into === undefined) return [];
    // What the lender itself borrows stands behind it among the lenders, nearest first; more than it sees is never taken.
    const there: Scope = { file: lender.file, recipe: lender.recipe, lenders: [] };
    const isFree = !hasName({ ...scope, recipe: lender.recipe }, section, name);
    const seesAll = referencesOf(section, value).every(({ name: other, refers }) => {
      const meant = entityOf(scope, refers, other);
      return meant === undefined || entityOf(there, refers, other)?.file === meant.file;
    });
    if (!isFree || !seesAll) return [];
    const added = textEdits(into, [{ kind: 'insert', into: [section], key: name, text }]);
    const removed = textEdits(document, [{ kind: 'remove', path: [section, name] }]);
    if (added.length === 0 || removed.length === 0) return [];
    const title = `Move \`${name}\` to ${nameOfFile(lender.file)}`;
    const elsewhere = [{ uri: lender.file, edits: added }];
    return [{ kind: 'rewrite', title, edits: removed, elsewhere, preferred: false }];
  });
}
