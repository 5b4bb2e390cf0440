// What to say about the place under the cursor: the computed thing first, else the name, the quantity or the key, and then the
// findings there.

import { words } from '../../../schema/field.ts';
import type { Path } from '../../../schema/place.ts';
import { recipe } from '../../../schema/recipe.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import { schemaAt } from '../../recipe/form.ts';
import { find } from '../../recipe/use.ts';
import { type Cursor, placeAt } from '../../syntax/cursor.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { isStructural } from '../structural.ts';
import { blocks } from './blocks.ts';
import { cautionBlock } from './cautions.ts';
import { computedAt } from './computed.ts';
import { findingBlock, findingsAt } from './finding.ts';
import { keyWords } from './key.ts';
import { nameWords } from './name.ts';
import { conversions } from './quantity.ts';

export interface Hover {
  /** What it is about, in offsets of the file. */
  readonly range: Range;
  readonly markdown: string;
}

/** Undefined where there is nothing to say. `leaves`: another extension says what keys mean and what is wrong with them. */
export function hover(snapshot: Snapshot, offset: number, leaves = false): Hover | undefined {
  const cursor = placeAt(snapshot.document, offset);
  const ofKey: KeyWords = leaves ? () => undefined : keyWords;
  const about = cursor === undefined || cursor.on === 'blank' ? undefined : wordsFor(snapshot, cursor, ofKey);
  const findings = findingsAt(snapshot, offset).filter(({ finding }) => !(leaves && isStructural(finding.code)));
  const warned = about?.includes('⚠') === true;
  const said = [about, ...findings.map(found => findingBlock(found, snapshot, warned))].filter(
    part => part !== undefined,
  );
  const range = about === undefined ? findings[0]?.range : cursor?.replaces;
  return said.length === 0 || range === undefined ? undefined : { range, markdown: said.join('\n\n---\n\n') };
}

type KeyWords = typeof keyWords;

function wordsFor(snapshot: Snapshot, cursor: Cursor, ofKey: KeyWords): string | undefined {
  const answer = computedAt(snapshot, cursor.path);
  if (answer === undefined)
    return cursor.on === 'key' ? onKey(snapshot, cursor, ofKey) : onValue(snapshot, cursor, ofKey);
  const isNamed = cursor.path[2] === 'feed' && cursor.path.length === 4;
  return cursor.on === 'key' && !isNamed ? blocks(answer, ofKey(cursor.path)) : answer;
}

function onKey(snapshot: Snapshot, { path }: Cursor, ofKey: KeyWords): string | undefined {
  const [section, name] = path;
  if (path.length === 2 && isSection(section)) return nameWords(snapshot, section, String(name)) ?? ofKey(path);
  const refers = refersTo(path.slice(0, -1));
  const named = refers === undefined ? undefined : nameOf(snapshot, refers, String(path[path.length - 1]));
  return withCautions(snapshot, path, named ?? ofKey(path));
}

function onValue(snapshot: Snapshot, { path, scalar }: Cursor, ofKey: KeyWords): string | undefined {
  const refers = refersTo(path);
  const named = refers === undefined || scalar === undefined ? undefined : nameOf(snapshot, refers, scalar.tree.text);
  if (named !== undefined) return named;
  const schema = schemaAt(recipe, path);
  const dimensions = schema === undefined ? undefined : words.get(schema)?.dimensions;
  const inOthers =
    dimensions === undefined || scalar === undefined ? undefined : conversions(scalar.tree.text, dimensions);
  const key = ofKey(path);
  return withCautions(snapshot, path, key === undefined ? inOthers : blocks(inOthers, key));
}

function refersTo(path: Path): readonly SectionName[] | undefined {
  const schema = schemaAt(recipe, path);
  return schema === undefined ? undefined : words.get(schema)?.refers;
}

function nameOf(snapshot: Snapshot, refers: readonly SectionName[], name: string): string | undefined {
  const section = refers.find(each => find(snapshot.scope, each, name) !== undefined);
  return section === undefined ? undefined : nameWords(snapshot, section, name);
}

/** Inside an adjuster, an adjustment or an addition there are amounts of acid or base: their cautions come with them. */
function withCautions(snapshot: Snapshot, path: Path, said: string | undefined): string | undefined {
  if (said === undefined || said.includes('⚠')) return said;
  const name = adjusterIn(snapshot, path);
  return name === undefined ? said : blocks(said, cautionBlock(find(snapshot.scope, 'adjusters', name)?.value));
}

/** The name of the adjuster that a place is about; one that nothing has is warned of all the same. */
function adjusterIn(snapshot: Snapshot, [section, name, key, index, add, added]: Path): string | undefined {
  if (section === 'adjusters') return name === undefined ? undefined : String(name);
  if (section !== 'batches') return undefined;
  const batch = snapshot.recipe.sections.batches.get(String(name));
  if (key === 'adjust') return batch?.adjust?.with;
  if (key !== 'readings' || add !== 'add' || typeof index !== 'number') return undefined;
  const names = added === undefined ? [...(batch?.readings?.[index]?.add?.keys() ?? [])] : [String(added)];
  return names.find(each => find(snapshot.scope, 'feeds', each) === undefined);
}

function isSection(key: unknown): key is SectionName {
  return typeof key === 'string' && Object.hasOwn(sectionNames, key);
}
