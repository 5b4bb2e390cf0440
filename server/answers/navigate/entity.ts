// The named entry that a place speaks of: the entry itself where it is declared, or the one that a reference points at. Definition,
// references, highlights and renaming all begin here.

import { words } from '../../../schema/field.ts';
import { type Part, type Path, type Place, valuePart } from '../../../schema/place.ts';
import { recipe as recipeSchema } from '../../../schema/recipe.ts';
import { lentSections, type SectionName, sectionNames } from '../../../schema/section-names.ts';
import { schemaAt } from '../../recipe/form.ts';
import { allReferences } from '../../recipe/names.ts';
import { find, type Scope } from '../../recipe/use.ts';
import { placeAt } from '../../syntax/cursor.ts';
import { rangeOf } from '../../syntax/place.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

/** An entry, told apart from entries of other files that have the same name. */
export interface Entity {
  readonly section: SectionName;
  readonly name: string;
  /** The URI of the file that declares it. */
  readonly file: string;
}

/** One place where the name of an entity is written. */
export interface Occurrence {
  readonly role: 'declaration' | 'reference';
  readonly uri: string;
  readonly path: Path;
  readonly part: Part;
  /** Of the name alone, without the quotes that may stand round it. */
  readonly range: Range;
}

/** The entity whose name stands at an offset, with the range of that name. Undefined for a name that nothing declares. */
export function entityAt(
  snapshot: Snapshot,
  offset: number,
): { readonly entity: Entity; readonly range: Range } | undefined {
  const { document, uri, recipe, scope } = snapshot;
  const cursor = placeAt(document, offset);
  if (cursor?.scalar === undefined) return undefined;
  const { path, on, scalar } = cursor;
  const name = scalar.tree.text;
  const place: Pick<Place, 'path' | 'part'> = { path, part: on === 'key' ? { kind: 'key' } : valuePart };
  const range = nameRange(snapshot, place, name);
  // Behind a value blanks still count as of it; a name ends where it ends.
  if (range === undefined || offset < range.from || range.to < offset) return undefined;
  const [section, own] = path;
  if (on === 'key' && path.length === 2) {
    const isDeclared = isSection(section) && typeof own === 'string' && recipe.sections[section].has(own);
    return isDeclared ? { entity: { section, name: own, file: uri }, range } : undefined;
  }
  const schema = schemaAt(recipeSchema, on === 'key' ? path.slice(0, -1) : path);
  const refers = schema === undefined ? undefined : words.get(schema)?.refers;
  const entity = refers === undefined ? undefined : entityOf(scope, refers, name);
  return entity === undefined ? undefined : { entity, range };
}

/** Where the name of an entity is written in a file: where it is declared first, then in the order of the sections. */
export function occurrencesIn(snapshot: Snapshot, entity: Entity): readonly Occurrence[] {
  const { uri, recipe, scope } = snapshot;
  const { section, name } = entity;
  const found: Occurrence[] = [];
  const add = (role: Occurrence['role'], path: Path, part: Part): void => {
    const range = nameRange(snapshot, { path, part }, name);
    // What is repeated through a YAML alias is written once.
    const isNew = range !== undefined && !found.some(one => one.range.from === range.from);
    if (isNew) found.push({ role, uri, path, part, range });
  };
  if (uri === entity.file) add('declaration', [section, name], { kind: 'key' });
  for (const reference of allReferences(recipe)) {
    if (reference.name !== name) continue;
    const meant = entityOf(scope, reference.refers, name);
    if (meant?.section === section && meant.file === entity.file) add('reference', reference.path, reference.part);
  }
  return found;
}

/** The entity that a name means where it may stand for an entry of some sections; the first section that has it counts. */
export function entityOf(scope: Scope, refers: readonly SectionName[], name: string): Entity | undefined {
  for (const section of refers) {
    const found = find(scope, section, name);
    if (found !== undefined) return { section, name, file: found.file ?? scope.file };
  }
  return undefined;
}

/** Whether other files may see entries of a section. */
export function isLent(section: SectionName): boolean {
  return lentSections.includes(section);
}

export function isSection(key: unknown): key is SectionName {
  return typeof key === 'string' && Object.hasOwn(sectionNames, key);
}

function nameRange({ document }: Snapshot, place: Pick<Place, 'path' | 'part'>, name: string): Range | undefined {
  if (place.part.kind !== 'key') {
    return rangeOf(document, { path: place.path, part: { kind: 'slice', from: 0, to: name.length } });
  }
  const range = rangeOf(document, place);
  const isQuoted = range !== undefined && range.to - range.from === name.length + 2;
  return isQuoted ? { from: range.from + 1, to: range.to - 1 } : range;
}
