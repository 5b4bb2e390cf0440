// Moves a map that stands where a name belongs into the section of that name, and writes the name in its place.

import { words } from '../../../schema/field.ts';
import { type Path, valueAt } from '../../../schema/place.ts';
import { recipe as recipeSchema } from '../../../schema/recipe.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import { schemaAt } from '../../recipe/form.ts';
import { hasName, type Scope } from '../../recipe/use.ts';
import { find } from '../../syntax/address.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';
import { entryText } from './entry-text.ts';
import { touches } from './fix.ts';

/** One for each section in which the name would be looked up. */
export function extractEntryActions(snapshot: Snapshot, at: Range): readonly Action[] {
  const { findings, document, scope } = snapshot;
  return findings
    .filter(({ finding, range }) => finding.code === 'value-invalid' && touches(range, at))
    .flatMap(located => {
      const { path } = located.finding.at;
      if (find(document, path)?.tree.kind !== 'map') return [];
      return sectionsFor(path).flatMap((section): readonly Action[] => {
        const home = find(document, [section])?.tree;
        const text = entryText(document, path, home?.kind === 'map' && home.flow ? 'braces' : 'lines');
        if (text === undefined) return [];
        const name = freeName(scope, section);
        const edits = textEdits(document, [
          { kind: 'insert', into: [section], key: name, text },
          { kind: 'replace', at: valueAt(path), text: name },
        ]);
        if (edits.length < 2) return [];
        const title = `Move this into \`${section}\` as \`${name}\``;
        return [{ kind: 'fix', title, edits, preferred: false, mends: located, names: name }];
      });
    });
}

function sectionsFor(path: Path): readonly SectionName[] {
  const schema = schemaAt(recipeSchema, path);
  return (schema === undefined ? undefined : words.get(schema)?.refers) ?? [];
}

/** `water-1`, or the next that nothing is called, in this file or in those that it uses. */
function freeName(scope: Scope, section: SectionName): string {
  for (let number = 1; ; number++) {
    const name = `${sectionNames[section]}-${number}`;
    if (!hasName(scope, section, name)) return name;
  }
}
