// The JSON Schema is held against the samples and against texts that Tidemark itself refuses: it must not say more or less
// than the reader of recipes does.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { readRecipe } from '../../server/recipe/recipe.ts';
import { openDocument } from '../../server/syntax/document.ts';

const root = join(import.meta.dirname, '..', '..');
const schema = JSON.parse(readFileSync(join(root, 'schema', 'grow-recipe.schema.json'), 'utf8'));
const validate = new Ajv2020({
  allErrors: true,
  strict: true,
  allowUnionTypes: true,
  strictTypes: false,
  strictRequired: false,
}).compile(schema);

/** The places at which the schema refuses a text, and whether the reader of recipes has something to say too. */
function refused(text: string): { readonly schema: readonly string[]; readonly reader: boolean } {
  validate(parse(text));
  const places = (validate.errors ?? []).map(({ instancePath, keyword }) => `${instancePath} ${keyword}`);
  return { schema: [...new Set(places)], reader: readRecipe(openDocument(text)).notes.length > 0 };
}

const samples = readdirSync(join(root, 'samples'), { recursive: true, encoding: 'utf8' }).filter(path =>
  path.endsWith('.grow.yaml'),
);

test.each(samples)('%s follows the schema', path => {
  expect(refused(readFileSync(join(root, 'samples', path), 'utf8'))).toEqual({ schema: [], reader: false });
});

const batch = (line: string): string => `recipe: 1\nbatches:\n  first: { water: tap, volume: 5 L, ${line} }\n`;

test.each([
  ['keys of one’s own', 'recipe: 1\nx-mine: { a: 1 }\nwaters: { tap: { pH: 7, x-note: read on a Friday } }\n'],
  ['a title that is a number', 'recipe: 1\ntitle: 2027\n'],
  ['every way to write a dose', batch('feed: { a: label, b: 50 % of label, c: 4 mL/gal, d: ½ tsp }')],
  ['a volume as needed', 'recipe: 1\nbatches: { first: { water: tap, volume: as needed } }\n'],
])('%s: taken by both', (_, text) => {
  expect(refused(text)).toEqual({ schema: [], reader: false });
});

test.each([
  ['a misspelt section', 'recipe: 1\nwater: { tap: { pH: 7 } }\n', ' additionalProperties'],
  ['a misspelt key', 'recipe: 1\nwaters: { tap: { ph: 7 } }\n', '/waters/tap additionalProperties'],
  [
    'an ion that is none',
    'recipe: 1\nwaters: { tap: { ions: { Xx: 1 mg/L } } }\n',
    '/waters/tap/ions additionalProperties',
  ],
  [
    'a number without a unit',
    'recipe: 1\nbatches: { first: { water: tap, volume: 5 } }\n',
    '/batches/first/volume type',
  ],
  ['a quantity without a number', batch('temperature: warm'), '/batches/first/temperature pattern'],
  ['a pH of 15', batch('readings: [{ pH: 15 }]'), '/batches/first/readings/0/pH maximum'],
  ['a word that is not one of the fixed', 'recipe: 1\nshow: imperial\n', '/show enum'],
  ['a batch without water', 'recipe: 1\nbatches: { first: { volume: 5 L } }\n', '/batches/first required'],
  ['a name in capitals', 'recipe: 1\nwaters: { Tap: { pH: 7 } }\n', '/waters propertyNames'],
  ['two shapes at once', twoShapes(), '/containers/pot/inside oneOf'],
  ['a version to come', 'recipe: 2\n', '/recipe const'],
])('%s: refused by both', (_, text, place) => {
  const { schema: places, reader } = refused(text);
  expect(places).toContain(place);
  expect(reader).toBe(true);
});

test('every key says what it is', () => {
  const silent = [...keysBelow(schema, '')].filter(([, key]) => key.description === undefined).map(([path]) => path);
  expect(silent).toEqual([]);
});

function twoShapes(): string {
  return `recipe: 1
containers:
  pot:
    inside: { cylinder: { diameter: 5 cm, height: 5 cm }, box: { length: 5 cm, width: 5 cm, height: 5 cm } }
`;
}

interface Below {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Below>>;
  readonly additionalProperties?: Below | boolean;
  readonly items?: Below;
}

/** Every key that the schema names, with its path. */
function* keysBelow(at: Below, path: string): Generator<readonly [string, Below]> {
  for (const [key, below] of Object.entries(at.properties ?? {})) {
    yield [`${path}/${key}`, below];
    yield* keysBelow(below, `${path}/${key}`);
  }
  if (typeof at.additionalProperties === 'object') yield* keysBelow(at.additionalProperties, `${path}/*`);
  if (at.items !== undefined) yield* keysBelow(at.items, `${path}[]`);
}
