// What the keys of our JSON mean, beside their schemas, so that the page for programs can say it.

import * as z from 'zod/mini';

/** The meaning of a key, by its schema; units and null are told by the key's name and its schema. */
export const meanings = z.registry<{ readonly says: string }>();

/** A schema with what it means. Each call needs a schema of its own: a shared one would mean the last thing said of it. */
export function said<S extends z.core.$ZodType>(schema: S, says: string): S {
  meanings.add(schema, { says });
  return schema;
}

export const text = z.string();

/** A date, as `2027-02-01`. */
export const day = () => z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/));

/** A number, or null where it cannot be had; what stands in its way is then listed under `unknown`. */
export const figure = () => z.nullable(z.number());

/** A place in a recipe or a number's place in our JSON: names of keys, and items of lists counted from 0. */
export const keyPath = () => z.array(z.union([text, z.int()]));
