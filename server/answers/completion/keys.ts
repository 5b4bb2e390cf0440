// Keys that a place takes: those of a group, the fixed ones of a map, and the names that a map may be keyed by.

import type * as z from 'zod/mini';
import { words } from '../../../schema/field.ts';
import { recipe } from '../../../schema/recipe.ts';
import { isDef, isNeeded, keysOf, schemaAt, unwrapped } from '../../recipe/form.ts';
import { all } from '../../recipe/use.ts';
import { entryAt } from '../../syntax/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { detailOf } from '../detail.ts';
import { aboutKey, aboutName } from './about.ts';
import type { Completion } from './completion.ts';
import { holesFor } from './snippet.ts';
import type { KeySpot } from './spot.ts';

export function keyCompletions(snapshot: Snapshot, spot: KeySpot): readonly Completion[] {
  const schema = schemaAt(recipe, spot.within);
  if (schema === undefined) return [];
  return [...nameKeys(snapshot, spot, schema), ...fixedKeys(snapshot, spot, schema)];
}

/** The names by which a map may be keyed, as the feeds of a batch are. */
function nameKeys(snapshot: Snapshot, spot: KeySpot, schema: z.core.$ZodType): readonly Completion[] {
  const def = schema._zod.def;
  const refers = isDef(def, 'record') ? words.get(schema)?.refers : undefined;
  if (refers === undefined || !isDef(def, 'record')) return [];
  const { present, replaces } = spot;
  const hasColon = isBeforeColon(snapshot, replaces.to);
  return refers.flatMap(section =>
    all(snapshot.scope, section)
      .filter(({ name }) => !present.includes(name))
      .map(({ name }) => ({
        kind: 'name' as const,
        label: name,
        text: hasColon ? name : `${name}: `,
        ...(hasColon ? {} : { snippet: `${name}: ${holesFor(snapshot.scope).value(def.valueType)}` }),
        detail: detailOf(snapshot, section, name),
        replaces,
        about: aboutName(section, name),
      })),
  );
}

/** The keys of a group, those it needs first; those that are there already are not offered again. */
function fixedKeys(snapshot: Snapshot, spot: KeySpot, schema: z.core.$ZodType): readonly Completion[] {
  const { within, present, replaces } = spot;
  const isChosen = words.get(schema)?.oneOf === true && present.some(key => keysOf(schema).includes(key));
  const keys = isChosen ? [] : keysOf(schema).filter(key => !present.includes(key));
  const needed = keys.filter(key => isNeeded(schema, key));
  const hasColon = isBeforeColon(snapshot, replaces.to);
  return [...needed, ...keys.filter(key => !needed.includes(key))].map(key => {
    const field = schemaAt(schema, [key]);
    const says = firstSentence((field && words.get(field)?.says) ?? '');
    return {
      kind: 'key' as const,
      label: key,
      text: hasColon ? key : `${key}: `,
      ...(hasColon || field === undefined ? {} : { snippet: keySnippet(snapshot, key, field, spot) }),
      detail: needed.includes(key) ? `needed: ${says}` : says,
      replaces,
      about: aboutKey([...within, key]),
    };
  });
}

/** A key with what belongs behind it: on its line, or on lines of their own for what holds several. */
function keySnippet({ scope }: Snapshot, key: string, field: z.core.$ZodType, { within, flow }: KeySpot): string {
  const def = field._zod.def;
  const { value, lines, hole } = holesFor(scope);
  if (isDef(def, 'record') && within.length === 0) {
    return `${key}:\n  ${hole('name')}:\n    ${lines(unwrapped(def.valueType), 4)}`;
  }
  if (isDef(def, 'object') && !flow && keysOf(field).some(below => isNeeded(field, below))) {
    return `${key}:\n  ${lines(field, 2)}`;
  }
  return `${key}: ${value(field)}`;
}

/** Whether a key that is written anew has its colon already. */
function isBeforeColon({ document }: Snapshot, offset: number): boolean {
  const { entry, start } = entryAt(document, offset);
  return /^[ \t]*:/.test(entry.text.slice(offset - start, offset - start + 8));
}

function firstSentence(says: string): string {
  const first = says.split(/[.:;] |\.$/)[0] ?? says;
  // Of a description that begins with its choices, one alone says nothing.
  return (/^`[^`]*`$/.test(first) ? says.replace(/\.$/, '') : first).replaceAll('`', '');
}
