// The vocabulary in which sections are declared: a field is a zod schema with its words beside it. Reading, the JSON Schema,
// completion, hover on keys and the reference page are all derived from these declarations.

import * as z from 'zod/mini';
import type { Dimension } from './dimensions.ts';
import type { Parsed } from './parsed.ts';
import { type AnyQuantity, type Limits, parseQuantity } from './quantity.ts';
import { parseRange, type Range } from './range.ts';
import type { SectionName } from './section-names.ts';

/** What a field says of itself beyond its type. */
export interface Words {
  /** One or two sentences: what it is, and what follows from it. */
  readonly says: string;
  /** What may be written, as it would stand behind the key. */
  readonly examples?: readonly string[];
  /** For a reference: the sections in which the name is looked up, in order. */
  readonly refers?: readonly SectionName[];
  /** For a quantity or range: what it may measure. */
  readonly dimensions?: readonly Dimension[];
  /** For a bare number: its least and its largest value. */
  readonly between?: readonly [number, number];
  /** For an entry or group: how a message speaks of it, as in "a water". */
  readonly called?: string;
  /** For a group of which one key is written: exactly one of them, as the shapes of a container. */
  readonly oneOf?: boolean;
  /** For a text that is read: fixed words it may hold, offered in completion. */
  readonly fixed?: readonly string[];
  /** For a text that is read: what reads it. */
  readonly parse?: (text: string) => Parsed<unknown>;
}

/** The words of every declared field, by its schema. */
export const words = z.registry<Words>();

/** A group of keys. */
export function group<S extends Readonly<Record<string, z.core.SomeType>>>(shape: S, is: Words & { called: string }) {
  return z.strictObject(shape).register(words, is);
}

/** A text that is parsed into a value. Reading parses it, so as to have the whole complaint; zod is told the type alone. */
export function parsed<T>(parse: (text: string) => Parsed<T>, is: Omit<Words, 'parse'>) {
  return z.pipe(anyText, textRead as z.ZodMiniTransform<T, string>).register(words, { ...is, parse });
}

const anyText = z.string();
const textRead = z.transform((text: string) => text);

/** A quantity of one of some dimensions, within limits in base units. */
export function quantity<const D extends Dimension>(
  accepted: readonly D[],
  is: Omit<Words, 'dimensions'>,
  limits: Limits = {},
) {
  return parsed<AnyQuantity<D>>(text => parseQuantity(text, accepted, limits), { ...is, dimensions: accepted });
}

/** A range of one dimension, ends included. */
export function range<const D extends Dimension>(dimension: D, is: Omit<Words, 'dimensions'>) {
  return parsed<Range<D>>(text => parseRange(text, dimension), { ...is, dimensions: [dimension] });
}

/** Plain text, as it stands. */
export function plainText(is: Words) {
  return z.string().register(words, is);
}

/** A bare number between two ends. */
export function bareNumber(low: number, high: number, is: Words) {
  return z
    .number()
    .check(z.minimum(low), z.maximum(high))
    .register(words, { ...is, between: [low, high] });
}

/** A whole number between two ends. */
export function count(low: number, high: number, is: Words) {
  return z
    .int()
    .check(z.minimum(low), z.maximum(high))
    .register(words, { ...is, between: [low, high] });
}

/** `true` or `false`. */
export function flag(is: Words) {
  return z.boolean().register(words, is);
}

/** One of some fixed words. */
export function choice<const C extends readonly [string, ...string[]]>(of: C, is: Words) {
  return z.enum(of).register(words, { ...is, fixed: of });
}

/** The name of an entry that stands elsewhere. */
export function reference(refers: readonly [SectionName, ...SectionName[]], is: Omit<Words, 'refers'>) {
  return z.string().register(words, { ...is, refers });
}

/** A list of like things. */
export function listOf<S extends z.core.SomeType>(item: S, is: Words) {
  return z.array(item).register(words, is);
}

/** A map from names that stand elsewhere to values. */
export function byName<S extends z.core.SomeType>(
  refers: readonly [SectionName, ...SectionName[]],
  value: S,
  is: Omit<Words, 'refers'>,
) {
  return z.record(z.string(), value).register(words, { ...is, refers });
}

/** A map from one of some fixed keys to like values. */
export function byKey<const K extends readonly [string, ...string[]], S extends z.core.SomeType>(
  keys: K,
  value: S,
  is: Words & { called: string },
) {
  return z.partialRecord(z.enum(keys), value).register(words, is);
}
