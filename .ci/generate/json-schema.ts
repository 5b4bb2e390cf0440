// The JSON Schema of a grow recipe, for editors and programs that know nothing else of the format. It says no more than the
// zod schema that reads recipes: what it refuses, Tidemark refuses too.

import { parse } from 'yaml';
import * as z from 'zod/mini';
import { words } from '../../schema/field.ts';
import { recipe } from '../../schema/recipe.ts';
import { isDef, unwrapped } from '../../server/recipe/form.ts';

type Json = z.core.JSONSchema.BaseSchema;

const freeKeys = { '^x-': {} };
/** A quantity, range, dose or date holds a number; text without one is refused before its unit is looked at. */
const holdsNumber = '[0-9½⅓¼⅛⅔¾]';

/** The text of schema/grow-recipe.schema.json. */
export function jsonSchemaText(): string {
  const schema = z.toJSONSchema(recipe, {
    io: 'input',
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema }) => describe(zodSchema, jsonSchema),
  });
  const { $schema, ...rest } = schema;
  const head = {
    $schema,
    title: 'Grow recipe, version 1',
    $comment: 'Generated from schema/recipe.ts by .ci/generate/json-schema.ts.',
  };
  return `${JSON.stringify({ ...head, ...rest }, null, 2)}\n`;
}

function describe(schema: z.core.$ZodType, json: Json): void {
  const def = schema._zod.def;
  if (isDef(def, 'optional')) return;
  if (isDef(def, 'object')) json.patternProperties = freeKeys;
  if (isDef(def, 'record')) nameKeys(def, json);
  const is = words.get(schema);
  if (def.type === 'string' && is?.refers === undefined) json.type = ['string', 'number', 'boolean'] as never;
  if (is === undefined) return;
  json.description = is.says;
  if (is.examples !== undefined) json.examples = is.examples.map(example => parse(example));
  if (is.oneOf === true && isDef(def, 'object')) {
    json.oneOf = Object.keys(def.shape).map(key => ({ required: [key] }));
  }
  if (def.type === 'pipe') constrainText(is.fixed, is.dimensions !== undefined, json);
}

/** A map's keys: fixed ones are listed with their values, free ones follow the rule for names. */
function nameKeys(def: z.core.$ZodRecordDef, json: Json): void {
  const keys = unwrapped(def.keyType)._zod.def;
  json.patternProperties = freeKeys;
  if (isDef(keys, 'enum')) {
    const value = json.additionalProperties ?? {};
    json.properties = Object.fromEntries(Object.values(keys.entries).map(key => [key, value]));
    json.additionalProperties = false;
    delete json.propertyNames;
    delete json.required;
    return;
  }
  json.propertyNames = { pattern: '^[a-z][a-z0-9-]*$' };
}

function constrainText(fixed: readonly string[] | undefined, quantity: boolean, json: Json): void {
  const text = quantity ? { type: 'string', pattern: holdsNumber } : { type: 'string' };
  // The fixed words are offered by editors; other text may stand there too.
  const written = fixed === undefined ? text : { anyOf: [{ enum: [...fixed] }, text] };
  delete json.type;
  Object.assign(json, written);
}
