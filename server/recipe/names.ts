// What each written name points at. References are found from the schemas alone: a field that says which section it refers to.

import type * as z from 'zod/mini';
import { words } from '../../schema/field.ts';
import type { Part, Path } from '../../schema/place.ts';
import { keyPart, valuePart } from '../../schema/place.ts';
import { recipe as recipeSchema } from '../../schema/recipe.ts';
import type { SectionName } from '../../schema/section-names.ts';
import { isDef, unwrapped } from './read.ts';
import type { Recipe } from './recipe.ts';
import { allSections } from './use.ts';

/** A name written where it refers to an entry of one of some sections. The path is relative to its named entry or log item. */
export interface Reference {
  readonly name: string;
  readonly refers: readonly SectionName[];
  readonly path: Path;
  readonly part: Part;
}

const known = new WeakMap<object, readonly Reference[]>();

/** The references that one entry's value makes, in order; found once for each value. */
export function referencesOf(section: SectionName | 'log', value: object): readonly Reference[] {
  const before = known.get(value);
  if (before !== undefined) return before;
  const found: Reference[] = [];
  const schema = entrySchema(section);
  if (schema !== undefined) collect(schema, value, [], found);
  known.set(value, found);
  return found;
}

/** Every reference of a recipe with its whole path. */
export function* allReferences(recipe: Recipe): Generator<Reference> {
  for (const section of allSections) {
    for (const [name, value] of recipe.sections[section]) yield* placed(referencesOf(section, value), [section, name]);
  }
  for (const [index, value] of recipe.log.entries()) {
    if (value !== undefined) yield* placed(referencesOf('log', value), ['log', index]);
  }
}

function placed(references: readonly Reference[], base: Path): readonly Reference[] {
  return references.map(reference => ({ ...reference, path: [...base, ...reference.path] }));
}

function entrySchema(section: SectionName | 'log'): z.core.$ZodType | undefined {
  const def = unwrapped(recipeSchema.def.shape[section])._zod.def;
  if (isDef(def, 'record')) return def.valueType;
  return isDef(def, 'array') ? def.element : undefined;
}

function collect(schema: z.core.$ZodType, value: unknown, path: Path, found: Reference[]): void {
  const inner = unwrapped(schema);
  const refers = words.get(inner)?.refers;
  const def = inner._zod.def;
  if (isDef(def, 'object') && typeof value === 'object' && value !== null) {
    for (const [key, below] of Object.entries(value)) {
      const field = def.shape[key];
      if (field !== undefined) collect(field, below, [...path, key], found);
    }
  } else if (isDef(def, 'record') && value instanceof Map) {
    for (const [name, below] of value as ReadonlyMap<string, unknown>) {
      if (refers !== undefined) found.push({ name, refers, path: [...path, name], part: keyPart });
      collect(def.valueType, below, [...path, name], found);
    }
  } else if (isDef(def, 'array') && Array.isArray(value)) {
    for (const [index, item] of value.entries()) collect(def.element, item, [...path, index], found);
  } else if (refers !== undefined && typeof value === 'string') {
    found.push({ name: value, refers, path, part: valuePart });
  }
}
