// What a schema asks for, in the words of reading: found out once for each schema, when something is first read by it.

import type * as z from 'zod/mini';
import { words } from '../../schema/field.ts';
import type { Parsed } from '../../schema/parsed.ts';
import type { Path } from '../../schema/place.ts';
import { Remembered } from '../../schema/remembered.ts';

export type Schema = z.core.$ZodType;

export type Form = GroupForm | MapForm | ListForm | LeafForm;

/** Keys, each with a schema of its own. */
export interface GroupForm {
  readonly kind: 'group';
  readonly schema: Schema;
  readonly fields: ReadonlyMap<string, Schema>;
  /** The keys that must be written; of `oneOf`, a single one of all. */
  readonly needed: readonly string[];
  readonly oneOf: boolean;
}

/** Names, or some fixed keys, with like values. */
export interface MapForm {
  readonly kind: 'map';
  readonly schema: Schema;
  /** Empty where any name may stand. */
  readonly fixed: readonly string[];
  readonly value: Schema;
  /** Whether it names entries, rather than refer to entries that are named elsewhere. */
  readonly isNaming: boolean;
}

export interface ListForm {
  readonly kind: 'list';
  readonly schema: Schema;
  readonly item: Schema;
}

export interface LeafForm {
  readonly kind: 'leaf';
  readonly schema: Schema;
  /** `text` as it stands, text that is `parsed`, a fixed `word`, or a `value` that YAML knows. */
  readonly takes: 'text' | 'word' | 'value' | ((text: string) => Parsed<unknown>);
}

const forms = new Remembered<Schema, Form>();

/** The form of a schema, or of what is inside an `optional`. */
export function formOf(schema: Schema): Form {
  const known = forms.get(schema);
  if (known !== undefined) return known;
  const form = makeForm(unwrapped(schema));
  forms.set(schema, form);
  return form;
}

function makeForm(schema: Schema): Form {
  const { def } = schema._zod;
  const is = words.get(schema);
  if (isDef(def, 'object')) {
    const fields = Object.entries(def.shape);
    const needed = fields.flatMap(([key, field]) => (isDef(field._zod.def, 'optional') ? [] : [key]));
    return { kind: 'group', schema, fields: new Map(fields), needed, oneOf: is?.oneOf === true };
  }
  if (isDef(def, 'record')) {
    const keys = def.keyType._zod.def;
    const fixed = isDef(keys, 'enum') ? Object.values(keys.entries).map(String) : [];
    const isNaming = fixed.length === 0 && is?.refers === undefined;
    return { kind: 'map', schema, fixed, value: def.valueType, isNaming };
  }
  if (isDef(def, 'array')) return { kind: 'list', schema, item: def.element };
  const takes = is?.parse ?? (def.type === 'string' ? 'text' : def.type === 'enum' ? 'word' : 'value');
  return { kind: 'leaf', schema, takes };
}

/** The schema of what stands at a path, where the schema has such a place. */
export function schemaAt(schema: Schema, path: Path): Schema | undefined {
  let at: Schema | undefined = schema;
  for (const key of path) {
    if (at === undefined) return undefined;
    const form = formOf(at);
    if (form.kind === 'group') at = form.fields.get(String(key));
    else if (form.kind === 'map') at = form.value;
    else at = form.kind === 'list' && typeof key === 'number' ? form.item : undefined;
  }
  return at === undefined ? undefined : unwrapped(at);
}

/** The keys that a map read by this schema may have: a group's, or the fixed ones of a map. Empty where names are free. */
export function keysOf(schema: Schema): readonly string[] {
  const form = formOf(schema);
  if (form.kind === 'group') return [...form.fields.keys()];
  return form.kind === 'map' ? form.fixed : [];
}

/** Whether a group's key must be written. */
export function isNeeded(schema: Schema, key: string): boolean {
  const form = formOf(schema);
  return form.kind === 'group' && form.needed.includes(key);
}

/** What is inside an `optional`. */
export function unwrapped(schema: Schema): Schema {
  const { def } = schema._zod;
  return isDef(def, 'optional') ? unwrapped(def.innerType) : schema;
}

interface Defs {
  readonly optional: z.core.$ZodOptionalDef;
  readonly object: z.core.$ZodObjectDef;
  readonly record: z.core.$ZodRecordDef;
  readonly array: z.core.$ZodArrayDef;
  readonly enum: z.core.$ZodEnumDef;
  readonly literal: z.core.$ZodLiteralDef<z.core.util.Literal>;
}

export function isDef<T extends keyof Defs>(def: z.core.$ZodTypeDef, type: T): def is Defs[T] & z.core.$ZodTypeDef {
  return def.type === type;
}
