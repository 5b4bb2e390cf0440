// What belongs behind a key, as a snippet: places to fill in, with the names that there are to choose from and examples else.

import type * as z from 'zod/mini';
import { words } from '../../../schema/field.ts';
import { isDef, isNeeded, keysOf, schemaAt, unwrapped } from '../../recipe/form.ts';
import { namesIn, type Scope } from '../../recipe/use.ts';

type Schema = z.core.$ZodType;

export interface Holes {
  /** A value on the line of its key. */
  readonly value: (field: Schema) => string;
  /** The needed keys of a group, one a line at an indent; an empty place where it needs none. */
  readonly lines: (group: Schema, indent: number) => string;
  /** A place with something to overtype. */
  readonly hole: (example: string) => string;
}

/** The places of one snippet, counted from 1. */
export function holesFor(scope: Scope): Holes {
  let count = 0;
  const hole = (example: string): string => {
    count += 1;
    return example === '' ? `$${count}` : `\${${count}:${escaped(example)}}`;
  };
  const oneOf = (choices: readonly string[]): string => {
    count += 1;
    return `\${${count}|${choices.map(choice => choice.replace(/[\\,|]/g, '\\$&')).join(',')}|}`;
  };
  const value = (field: Schema): string => {
    const schema = unwrapped(field);
    const def = schema._zod.def;
    const is = words.get(schema);
    const names = namesIn(scope, is?.refers ?? []).slice(0, mostChoices);
    if (isDef(def, 'array') && words.get(unwrapped(def.element))?.refers !== undefined)
      return `[${value(def.element)}]`;
    if (isDef(def, 'record') && names.length > 0) return `{ ${oneOf(names)}: ${value(def.valueType)} }`;
    if (isDef(def, 'object')) {
      const keys = startingKeys(schema);
      if (keys.length === 0) return `{ ${hole('')} }`;
      return `{ ${keys.map(key => `${key}: ${valueBelow(schema, key)}`).join(', ')} }`;
    }
    if (names.length > 1) return oneOf(names);
    if (isDef(def, 'enum')) return oneOf(Object.values(def.entries).map(String));
    return hole(names[0] ?? is?.examples?.[0] ?? '');
  };
  const valueBelow = (group: Schema, key: string): string => {
    const field = schemaAt(group, [key]);
    return field === undefined ? hole('') : value(field);
  };
  const lines = (group: Schema, indent: number): string => {
    const keys = startingKeys(group);
    if (keys.length === 0) return '$0';
    return keys.map(key => `${key}: ${valueBelow(group, key)}`).join(`\n${' '.repeat(indent)}`);
  };
  return { value, lines, hole };
}

/** A snippet as plain text, with what stands in its places. */
export function withoutHoles(snippet: string): string {
  return snippet
    .replace(
      /\$\{\d+:((?:\\.|[^}\\])*)\}|\$\{\d+\|((?:\\.|[^,|\\])*)[^}]*\}|\$\d+/g,
      (_, example, choice) => example ?? choice ?? '',
    )
    .replace(/\\([\\$},|])/g, '$1');
}

/** A choice longer than this is no help. */
const mostChoices = 30;

/** The keys with which a group begins: those it needs, or the first shape where it is one of several. */
function startingKeys(group: Schema): readonly string[] {
  const keys = keysOf(group);
  return words.get(unwrapped(group))?.oneOf === true ? keys.slice(0, 1) : keys.filter(key => isNeeded(group, key));
}

/** Snippet syntax gives `$`, `}` and `\` a meaning. */
function escaped(text: string): string {
  return text.replace(/[\\$}]/g, character => `\\${character}`);
}
