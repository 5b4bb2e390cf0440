// Fixed words of what may be written as a value; and while nothing is written, examples and what is made of the names there are.

import type * as z from 'zod/mini';
import { words } from '../../../schema/field.ts';
import { recipe } from '../../../schema/recipe.ts';
import { isDef, schemaAt, unwrapped } from '../../recipe/form.ts';
import { namesIn } from '../../recipe/use.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { aboutKey } from './about.ts';
import type { Completion } from './completion.ts';
import { holesFor, withoutHoles } from './snippet.ts';
import type { ValueSpot } from './spot.ts';

export function valueCompletions(snapshot: Snapshot, spot: ValueSpot): readonly Completion[] {
  const { path, replaces, said } = spot;
  const schema = schemaAt(recipe, path);
  if (schema === undefined) return [];
  const item = (text: string, more: Partial<Completion> = {}): Completion => ({
    kind: 'value',
    label: text,
    text,
    replaces,
    about: aboutKey(path),
    ...more,
  });
  const is = words.get(schema);
  const fixed = fixedWords(schema) ?? is?.fixed ?? [];
  if (said.trim() !== '') return fixed.map(text => item(text));
  const made = collections(snapshot, schema);
  if (made !== undefined) return made.map(snippet => item(withoutHoles(snippet), { snippet }));
  // Nothing is known of the files beside this one.
  if (path[0] === 'use') return [];
  const isReference = is?.refers !== undefined;
  // An example helps where nothing is typed yet; later it would be in the way.
  const examples = isReference || fixedWords(schema) !== undefined ? [] : (is?.examples ?? []);
  return [
    ...fixed.map(text => item(text)),
    ...examples.filter(text => !fixed.includes(text)).map(text => item(text, { detail: 'example' })),
  ];
}

/** Lists and maps of names, and groups, on one line, as snippets; undefined where the place takes none. */
function collections({ scope }: Snapshot, schema: z.core.$ZodType): readonly string[] | undefined {
  const def = schema._zod.def;
  if (isDef(def, 'array')) {
    const refers = words.get(unwrapped(def.element))?.refers;
    return refers && namesIn(scope, refers).map(name => `[${name}$0]`);
  }
  if (isDef(def, 'record')) {
    const refers = words.get(schema)?.refers;
    return refers && namesIn(scope, refers).map(name => `{ ${name}: ${holesFor(scope).value(def.valueType)} }`);
  }
  if (!isDef(def, 'object')) return undefined;
  const made = holesFor(scope).value(schema);
  return made === '{ $1 }' ? [] : [made];
}

function fixedWords(schema: z.core.$ZodType): readonly string[] | undefined {
  const def = schema._zod.def;
  if (isDef(def, 'enum')) return Object.values(def.entries).map(String);
  if (isDef(def, 'literal')) return def.values.map(String);
  return def.type === 'boolean' ? ['true', 'false'] : undefined;
}
