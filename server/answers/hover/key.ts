// What a key of the format means: the words of its schema, which are those of the format reference.

import { words } from '../../../schema/field.ts';
import type { Path } from '../../../schema/place.ts';
import { recipe } from '../../../schema/recipe.ts';
import { isNeeded, schemaAt } from '../../recipe/form.ts';
import { blocks, code } from './blocks.ts';

/** What the format says of the key at a path, with examples; undefined where the format has no such key. */
export function keyWords(path: Path): string | undefined {
  const schema = schemaAt(recipe, path);
  const says = schema === undefined ? undefined : words.get(schema);
  const key = path[path.length - 1];
  if (says === undefined || key === undefined) return undefined;
  const above = schemaAt(recipe, path.slice(0, -1));
  const needed = above !== undefined && isNeeded(above, String(key)) ? ', needed' : '';
  const name = typeof key === 'number' ? undefined : `**${code(key)}**${needed}`;
  const examples = says.examples?.map(example => code(typeof key === 'number' ? example : `${key}: ${example}`));
  return blocks(name, says.says, examples === undefined ? undefined : examples.join(', '));
}
