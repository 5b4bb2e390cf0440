// The reference page of the format: every section and key, what it is, what may be written. Made from the schema that reads
// recipes, so the page cannot promise a key that is not read.

import type * as z from 'zod/mini';
import { dimensions } from '../../schema/dimensions.ts';
import { type Words, words } from '../../schema/field.ts';
import { recipe } from '../../schema/recipe.ts';
import { sectionNames } from '../../schema/section-names.ts';
import { isDef, isNeeded, keysOf, schemaAt, unwrapped } from '../../server/recipe/form.ts';
import { anchor, code, generatedNote, page, table } from './markdown.ts';

type Schema = z.core.$ZodType;

/** The text of schema/reference/format.md. */
export function formatPage(): string {
  const sections = keysOf(recipe).filter(key => isSection(at(recipe, key)));
  const plain = keysOf(recipe).filter(key => !sections.includes(key));
  return page(
    '# The format',
    generatedNote('schema/recipe.ts and schema/sections/'),
    intro,
    '## The head of the file',
    keyTable(plain.map(key => rowOf(key, at(recipe, key), isNeeded(recipe, key) || key === 'recipe'))),
    `Then the sections: ${sections.map(name => `[${name}](#${anchor(name)})`).join(', ')}.`,
    ...sections.flatMap(name => section(name, at(recipe, name))),
  );
}

const intro = `A recipe is a YAML 1.2 file in UTF-8 named \`*.grow.yaml\` or \`*.grow.yml\`. Its sections are maps from a name
(small letters, digits, hyphens; a letter first) to an entry, and entries refer to each other by name.

* A quantity is a number and its unit: \`20 L\`, \`2 mL/L\`, \`0.9 mS/cm\`. The [units](units.md) are listed on a page of their own.
* A range has one unit for both ends, which belong to it: \`5.5..6.5\`, \`0.8..1.2 mS/cm\`.
* A bare number is accepted only where there is no unit: a pH or a count.
* A date is written \`2027-02-01\`.
* A key that begins with \`x-\` is yours: it is kept and never read. Any other key that is not listed here is a
  [finding](findings/key-unknown.md).`;

function isSection(schema: Schema): boolean {
  const def = schema._zod.def;
  return isDef(def, 'record') || (isDef(def, 'array') && isDef(unwrapped(def.element)._zod.def, 'object'));
}

function section(name: string, schema: Schema): readonly string[] {
  const def = schema._zod.def;
  const entry = isDef(def, 'record') ? def.valueType : isDef(def, 'array') ? def.element : schema;
  const inner = unwrapped(entry);
  const rows = keysOf(inner).flatMap(key => rowsBelow(key, at(inner, key), isNeeded(inner, key)));
  return [`## ${name}`, wordsOf(schema).says, wordsOf(inner).says, keyTable(rows)];
}

interface Row {
  readonly key: string;
  readonly needed: boolean;
  readonly written: string;
  readonly is: Words;
}

function keyTable(rows: readonly Row[]): string {
  return table(
    ['key', 'what it is', 'what is written', 'for example'],
    rows.map(({ key, needed, written, is }) => [
      needed ? `${code(key)} (needed)` : code(key),
      is.says,
      written,
      (is.examples ?? []).map(code).join(', '),
    ]),
  );
}

/** A key, and the keys of the group or of the list of groups that stands behind it. */
function rowsBelow(key: string, schema: Schema, needed: boolean): readonly Row[] {
  const def = schema._zod.def;
  const own = rowOf(key, schema, needed);
  if (isDef(def, 'object')) {
    return [
      own,
      ...keysOf(schema).flatMap(below => rowsBelow(`${key}.${below}`, at(schema, below), isNeeded(schema, below))),
    ];
  }
  if (!isDef(def, 'array')) return [own];
  const item = unwrapped(def.element);
  if (!isDef(item._zod.def, 'object')) return [own];
  return [
    own,
    ...keysOf(item).flatMap(below => rowsBelow(`${key}[].${below}`, at(item, below), isNeeded(item, below))),
  ];
}

function rowOf(key: string, schema: Schema, needed: boolean): Row {
  return { key, needed, written: writtenAs(schema), is: wordsOf(schema) };
}

function writtenAs(schema: Schema): string {
  const def = schema._zod.def;
  const is = wordsOf(schema);
  if (isDef(def, 'literal')) return def.values.map(value => code(String(value))).join(' or ');
  if (isDef(def, 'enum')) return or(Object.values(def.entries).map(value => code(String(value))));
  if (isDef(def, 'array')) return `a list: ${writtenAs(unwrapped(def.element))}`;
  if (isDef(def, 'object')) return is.oneOf === true ? 'one of the keys below' : 'the keys below';
  if (isDef(def, 'record')) return recordAs(schema, def, is);
  if (is.refers !== undefined) return `the name of ${or(is.refers.map(named))}`;
  if (def.type === 'boolean') return '`true` or `false`';
  if (def.type === 'number') return numberAs(schema);
  if (is.dimensions !== undefined) return dimensionsAs(is);
  if (def.type === 'string') return 'text';
  return is.fixed === undefined ? 'as in the example' : `${or(is.fixed.map(code))}, or as in the examples`;
}

function recordAs(schema: Schema, def: z.core.$ZodRecordDef, is: Words): string {
  const keys = keysOf(schema);
  const value = writtenAs(unwrapped(def.valueType));
  if (keys.length > 0) return `for each of ${keys.map(code).join(' ')}: ${value}`;
  return `for the name of ${or((is.refers ?? []).map(named))}: ${value}`;
}

function numberAs(schema: Schema): string {
  const [low, high] = wordsOf(schema).between ?? [];
  const whole = 'format' in schema._zod.def ? 'whole ' : '';
  return `a ${whole}number${low === undefined || high === undefined ? '' : ` from ${low} to ${high}`}`;
}

function dimensionsAs(is: Words): string {
  const kinds = or(
    (is.dimensions ?? []).map(dimension => `[${dimensions[dimension].title}](units.md#${anchor(dimension)})`),
  );
  const range = is.examples?.some(example => example.includes('..')) === true;
  return range ? `a range of ${kinds.replace(/\[an? /g, '[')}` : kinds;
}

function named(section: keyof typeof sectionNames): string {
  return `${/^[aeiou]/.test(sectionNames[section]) ? 'an' : 'a'} [${sectionNames[section]}](#${section})`;
}

function or(options: readonly string[]): string {
  return options.length < 2 ? options.join('') : `${options.slice(0, -1).join(', ')} or ${options[options.length - 1]}`;
}

function at(schema: Schema, key: string): Schema {
  const found = schemaAt(schema, [key]);
  if (found === undefined) throw new Error(`the schema has no ${key}`);
  return found;
}

function wordsOf(schema: Schema): Words {
  const found = words.get(schema);
  if (found === undefined) throw new Error(`a ${schema._zod.def.type} of the schema has no words`);
  return found;
}
