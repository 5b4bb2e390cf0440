// The page for programs: what each `--format json` prints, key by key. Made from the schemas that the tests hold every print to.

import type * as z from 'zod/mini';
import { diffJson } from '../../schema/diff-json.ts';
import { explainJson } from '../../schema/explain-json.ts';
import { checkJson, findingJson } from '../../schema/finding-json.ts';
import { meanings } from '../../schema/json-words.ts';
import { planJson, waterJson } from '../../schema/plan-json.ts';
import { suppliesJson } from '../../schema/supplies-json.ts';
import { code, generatedNote, page, table } from './markdown.ts';

type Schema = z.core.$ZodType;

const commands: Readonly<Record<string, Schema>> = {
  'check --format json': checkJson,
  'plan --format json': planJson,
  'water --format json': waterJson,
  'supplies --format json': suppliesJson,
  'diff --format json': diffJson,
  'explain FILE PATH --format json': explainJson,
};

/** The text of schema/reference/json.md. */
export function jsonPage(): string {
  return page(
    '# JSON for programs',
    generatedNote('schema/*-json.ts'),
    intro,
    ...Object.entries(commands).flatMap(([command, schema]) => [
      `## ${command}`,
      table(
        ['key', 'what stands there', 'what it means'],
        [...rowsIn(schema, ''), ...(schema === checkJson ? rowsIn(findingJson, 'findings[].') : [])].map(
          ({ key, holds, says }) => [code(key), holds, says],
        ),
      ),
    ]),
  );
}

const intro = `\`formatVersion\` is 1. Within a version keys are added, and none is taken away or changes its meaning: pass over those
that you do not know.

* A key carries the unit of its number. A number that cannot be had is \`null\`, never \`0\`, and \`unknown\` says what is missing for it.
* \`*\` stands for every name that the recipe gives, \`[]\` for every item of a list.
* Numbers are given to twelve digits, so that programs can go on with them; three or four of them are known.
* An amount of acid or base comes with \`cautions\`: whoever shows the one shows the other.`;

interface Row {
  readonly key: string;
  readonly holds: string;
  readonly says: string;
}

/** The keys of an object, those of what stands in them behind each. */
function rowsIn(schema: Schema, above: string): readonly Row[] {
  const def = schema._zod.def;
  if (!isA(def, 'object')) return [];
  return Object.entries(def.shape).flatMap(([name, value]) => rowsOf(`${above}${name}`, value));
}

/** Its keys are told once, where findings are all that is printed. */
const aFinding = 'a finding as `check` prints it';

function rowsOf(key: string, schema: Schema): readonly Row[] {
  const { inner, says, isOptional, isNullable } = opened(schema);
  const def = inner._zod.def;
  const orNull = isNullable ? ' or null' : '';
  const row = (holds: string): Row => ({ key, holds: `${holds}${orNull}${isOptional ? '; may be absent' : ''}`, says });
  if (inner === findingJson) return [row(aFinding)];
  if (isA(def, 'object')) return [row('an object'), ...rowsIn(inner, `${key}.`)];
  if (isA(def, 'record')) return [row(`by name${itemsOf(def.valueType)}`), ...below(`${key}.*`, def.valueType)];
  if (isA(def, 'array')) return [row(`a list${itemsOf(def.element)}`), ...below(`${key}[]`, def.element)];
  if (isA(def, 'union') && def.options.some(option => isA(option._zod.def, 'object'))) {
    return [row('one of several objects'), ...variantsOf(key, def.options)];
  }
  return [row(wordFor(inner))];
}

/** What stands in a map or list has keys of its own, or is told by the row above. */
function below(key: string, schema: Schema): readonly Row[] {
  const { inner } = opened(schema);
  const def = inner._zod.def;
  if (isA(def, 'object')) return inner === findingJson ? [] : rowsIn(inner, `${key}.`);
  if (isA(def, 'record')) return below(`${key}.*`, def.valueType);
  return isA(def, 'array') ? below(`${key}[]`, def.element) : [];
}

/** Keys of all variants, each once; which of them are there follows from the first. */
function variantsOf(key: string, options: readonly Schema[]): readonly Row[] {
  const rows = new Map<string, Row>();
  for (const row of options.flatMap(option => rowsIn(option, `${key}.`))) {
    const old = rows.get(row.key);
    const isNew = old === undefined || old.holds === row.holds;
    rows.set(row.key, isNew ? row : { ...row, holds: `${old.holds} or ${row.holds}` });
  }
  return [...rows.values()];
}

function itemsOf(item: Schema): string {
  const { inner, isNullable } = opened(item);
  const def = inner._zod.def;
  if (inner === findingJson) return `: ${aFinding}`;
  if (isA(def, 'object') || isA(def, 'lazy')) return '';
  if (isA(def, 'array')) return `, a list${itemsOf(def.element)}`;
  return `: ${wordFor(inner)}${isNullable ? ' or null' : ''}`;
}

/** What stands behind the marks of what may be null or left out, and what is said at any of them. */
function opened(schema: Schema) {
  let inner = schema;
  let says = meanings.get(inner)?.says ?? '';
  let isOptional = false;
  let isNullable = false;
  for (;;) {
    const def = inner._zod.def;
    if (!isA(def, 'optional') && !isA(def, 'nullable')) return { inner, says, isOptional, isNullable };
    isOptional ||= isA(def, 'optional');
    isNullable ||= isA(def, 'nullable');
    inner = def.innerType;
    says = says === '' ? (meanings.get(inner)?.says ?? '') : says;
  }
}

function wordFor(schema: Schema): string {
  const def = schema._zod.def;
  if (isA(def, 'enum')) return valuesOf(Object.values(def.entries));
  if (isA(def, 'literal')) return code(String(def.values[0]));
  if (isA(def, 'union')) return def.options.map(wordFor).join(' or ');
  if (def.type === 'string') return 'text';
  if (def.type === 'boolean') return '`true` or `false`';
  return def.type === 'number' ? 'number' : def.type;
}

function valuesOf(values: readonly unknown[]): string {
  const listed = values.map(value => code(String(value)));
  // The codes of findings stand on a page of their own.
  return listed.length > 12 ? 'a code of a [finding](findings/README.md)' : listed.join(', ');
}

interface Defs {
  readonly object: z.core.$ZodObjectDef;
  readonly record: z.core.$ZodRecordDef;
  readonly array: z.core.$ZodArrayDef;
  readonly union: z.core.$ZodUnionDef;
  readonly optional: z.core.$ZodOptionalDef;
  readonly nullable: z.core.$ZodNullableDef;
  readonly lazy: z.core.$ZodLazyDef;
  readonly enum: z.core.$ZodEnumDef;
  readonly literal: z.core.$ZodLiteralDef<z.core.util.Literal>;
}

function isA<T extends keyof Defs>(def: z.core.$ZodTypeDef, type: T): def is Defs[T] & z.core.$ZodTypeDef {
  return def.type === type;
}
