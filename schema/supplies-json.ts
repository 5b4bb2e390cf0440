// What `supplies --format json` prints, version 1: a contract like that of the plan, with keys that carry their unit.

import * as z from 'zod/mini';

export const suppliesJsonVersion = 1;

const amount = z.optional(z.nullable(z.number()));

const supply = z.object({
  kind: z.enum(['feed', 'adjuster']),
  /** Over the whole plan; null where it cannot be had. One of the two keys is there. */
  uses_mL: amount,
  uses_g: amount,
  /** What one package holds; null where it is not written. */
  package_mL: amount,
  package_g: amount,
  packages: z.nullable(z.int()),
  /** As `54 EUR`. */
  cost: z.nullable(z.string()),
  /** The day on which the first package is used up; null where it lasts the plan, or the plan has no days. */
  firstPackageEnds: z.nullable(z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/))),
  /** What to mind with an acid or base; empty for feeds. */
  cautions: z.array(z.string()),
});

export const suppliesJson = z.object({
  formatVersion: z.literal(suppliesJsonVersion),
  file: z.string(),
  supplies: z.record(z.string(), supply),
  /** The costs that are known, a sum for each currency. */
  cost: z.array(z.string()),
  /** What is missing for a number that is null above, by its keys. */
  unknown: z.array(z.object({ key: z.array(z.union([z.string(), z.int()])), wants: z.array(z.string()) })),
});

export type SuppliesJson = z.infer<typeof suppliesJson>;
