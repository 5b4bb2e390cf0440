// What `supplies --format json` prints, version 1, and what the plan's JSON says of a supply: a contract with keys that carry their unit.

import * as z from 'zod/mini';
import { day, keyPath, said, text } from './json-words.ts';

const amount = () => z.optional(z.nullable(z.number()));

export const supplyJson = z.object({
  kind: z.enum(['feed', 'adjuster']),
  uses_mL: said(amount(), 'over the whole plan; one of the two keys is there, by what it is measured in'),
  uses_g: amount(),
  package_mL: said(amount(), 'what one package holds; one of the two keys is there, null where it is not written'),
  package_g: amount(),
  packages: z.nullable(z.int()),
  cost: said(z.nullable(text), 'as `54 EUR`'),
  firstPackageEnds: said(
    z.nullable(day()),
    'the day of mixing on which a first package is used up; null where it lasts, or no day is known',
  ),
  cautions: said(z.array(text), 'what to mind with an acid or base; empty for feeds'),
});

/** A number that is null above, and what is missing for it. */
export const gapJson = z.object({
  key: said(keyPath(), 'the keys of a null above, from the top; where they lead to a list or group, of all in it'),
  wants: z.array(text).check(z.minLength(1)),
  places: said(
    z.array(z.object({ file: text, path: keyPath(), line: z.nullable(z.int()) })),
    'where each of them is or would be written; lines count from 0, and null stands for a file that is not there',
  ),
});

export const suppliesJson = z.object({
  formatVersion: z.literal(1),
  file: text,
  supplies: z.record(text, supplyJson),
  cost: said(z.array(text), 'the costs that are known, a sum for each currency'),
  unknown: z.array(gapJson),
});

export type SuppliesJson = z.infer<typeof suppliesJson>;
