// What each written name points at. References are found from the schemas alone: a field that says which section it refers to.

import { words } from '../../schema/field.ts';
import type { Part, Path } from '../../schema/place.ts';
import { keyPart, valuePart } from '../../schema/place.ts';
import { recipe as recipeSchema } from '../../schema/recipe.ts';
import { Remembered } from '../../schema/remembered.ts';
import type { SectionName } from '../../schema/section-names.ts';
import { type Form, formOf, type GroupForm, type Schema } from './form.ts';
import type { Recipe } from './recipe.ts';
import { allSections } from './use.ts';

/** A name written where it refers to an entry of one of some sections. The path is relative to its named entry or log item. */
export interface Reference {
  readonly name: string;
  readonly refers: readonly SectionName[];
  readonly path: Path;
  readonly part: Part;
}

const known = new Remembered<object, readonly Reference[]>();

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

function entrySchema(section: SectionName | 'log'): Schema | undefined {
  const form = formOf(recipeSchema.def.shape[section]);
  return form.kind === 'group' ? undefined : belowOne(form)[0];
}

function collect(schema: Schema, value: unknown, path: Path, found: Reference[]): void {
  if (!leadsToNames(schema)) return;
  const form = formOf(schema);
  const refers = words.get(form.schema)?.refers;
  if (form.kind === 'group' && typeof value === 'object' && value !== null) {
    for (const [key, below] of Object.entries(value)) {
      const field = form.fields.get(key);
      if (field !== undefined && leadsToNames(field)) collect(field, below, [...path, key], found);
    }
  } else if (form.kind === 'map' && value instanceof Map) {
    for (const [name, below] of value as ReadonlyMap<string, unknown>) {
      if (refers !== undefined) found.push({ name, refers, path: [...path, name], part: keyPart });
      if (leadsToNames(form.value)) collect(form.value, below, [...path, name], found);
    }
  } else if (form.kind === 'list' && Array.isArray(value)) {
    for (const [index, item] of value.entries()) collect(form.item, item, [...path, index], found);
  } else if (refers !== undefined && typeof value === 'string') {
    found.push({ name: value, refers, path, part: valuePart });
  }
}

const leading = new Remembered<Schema, boolean>();

/** Whether anything that a schema reads may be a name; most are quantities. */
function leadsToNames(schema: Schema): boolean {
  const known = leading.get(schema);
  if (known !== undefined) return known;
  const form = formOf(schema);
  const below = form.kind === 'group' ? [...form.fields.values()] : belowOne(form);
  const leads = words.get(form.schema)?.refers !== undefined || below.some(leadsToNames);
  leading.set(schema, leads);
  return leads;
}

function belowOne(form: Exclude<Form, GroupForm>): readonly Schema[] {
  if (form.kind === 'map') return [form.value];
  return form.kind === 'list' ? [form.item] : [];
}
