// Names of entries where a reference belongs, the recipe's own before borrowed ones.

import { words } from '../../../schema/field.ts';
import type { Path } from '../../../schema/place.ts';
import { recipe } from '../../../schema/recipe.ts';
import { sectionNames } from '../../../schema/section-names.ts';
import { schemaAt } from '../../recipe/form.ts';
import { all, nameOfFile } from '../../recipe/use.ts';
import { find } from '../../syntax/address.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { detailOf } from '../detail.ts';
import { aboutName } from './about.ts';
import type { Completion } from './completion.ts';
import type { ValueSpot } from './spot.ts';

export function nameCompletions(snapshot: Snapshot, { path, replaces, typed }: ValueSpot): readonly Completion[] {
  const schema = schemaAt(recipe, path);
  const refers = schema === undefined ? undefined : words.get(schema)?.refers;
  if (refers === undefined || schema?._zod.def.type === 'record') return [];
  const taken = namesBeside(snapshot, path);
  return refers.flatMap(section =>
    all(snapshot.scope, section)
      .filter(({ name }) => !taken.includes(name) || name === typed)
      .map(({ name, file }) => {
        const stands = detailOf(snapshot, section, name);
        const from = file === undefined ? '' : ` (from ${nameOfFile(file)})`;
        return {
          kind: 'name' as const,
          label: name,
          text: name,
          detail: `${stands === '' ? sectionNames[section] : stands}${from}`,
          replaces,
          about: aboutName(section, name),
        };
      }),
  );
}

/** The other names of the list that a name stands in. */
function namesBeside({ document }: Snapshot, path: Path): readonly string[] {
  if (typeof path[path.length - 1] !== 'number') return [];
  const list = find(document, path.slice(0, -1))?.tree;
  return list?.kind === 'list' ? list.items.flatMap(item => (item.kind === 'scalar' ? [item.text] : [])) : [];
}
