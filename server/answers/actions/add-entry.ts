// Adds the entry of a name that nothing declares, with the keys that such an entry needs.

import { words } from '../../../schema/field.ts';
import { recipe as recipeSchema } from '../../../schema/recipe.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import { isNeeded, keysOf, schemaAt } from '../../recipe/form.ts';
import { isName } from '../../recipe/read.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';
import { touches } from './fix.ts';

/** One for each section in which the name was looked up. */
export function addEntryActions({ findings, document }: Snapshot, at: Range): readonly Action[] {
  return findings
    .filter(({ range }) => touches(range, at))
    .flatMap(located => {
      const { finding } = located;
      if (finding.code !== 'name-unknown' || !isName(finding.params.name)) return [];
      const { name, among } = finding.params;
      return among.flatMap((section): readonly Action[] => {
        const text = skeleton(section);
        const edits = textEdits(document, [{ kind: 'insert', into: [section], key: name, text }]);
        const title = `Add the ${sectionNames[section]} \`${name}\``;
        return edits.length === 0 ? [] : [{ kind: 'fix', title, edits, preferred: false, mends: located }];
      });
    });
}

/** The needed keys with the format's own examples, to be written over. */
function skeleton(section: SectionName): string {
  const entry = schemaAt(recipeSchema, [section, 'name']);
  if (entry === undefined) return '{}';
  const pairs = keysOf(entry).flatMap(key => {
    const field = isNeeded(entry, key) ? schemaAt(recipeSchema, [section, 'name', key]) : undefined;
    const example = field === undefined ? undefined : words.get(field)?.examples?.[0];
    return example === undefined ? [] : [`${key}: ${example}`];
  });
  return pairs.length === 0 ? '{}' : `{ ${pairs.join(', ')} }`;
}
