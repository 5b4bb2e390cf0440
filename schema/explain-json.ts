// What `explain FILE PATH --format json` prints, version 1: one number with all that led to it, as a tree down to what is written.

import * as z from 'zod/mini';

export const explainJsonVersion = 1;

const text = z.string();
const place = z.object({
  file: text,
  path: z.array(z.union([text, z.int()])),
  /** Counted from 0; null stands for a file that is not there. */
  line: z.nullable(z.int()),
});

/** A number on the way. `value` counts in `unit`, `amount` is the same as a reader reads it. */
const known = {
  /** What the formula above calls it; empty for the number that was asked for. */
  name: text,
  amount: text,
  value: z.number(),
  unit: text,
};

/** Type and schema by hand, as a tree cannot infer itself. */
export type ExplainNode = Known | z.infer<typeof gap>;

interface Common {
  readonly name: string;
  readonly amount: string;
  readonly value: number;
  readonly unit: string;
}

type Known =
  | (Common & { readonly kind: 'written'; readonly at: z.infer<typeof place> })
  | (Common & { readonly kind: 'assumed'; readonly says: string; readonly source: string })
  | (Common & {
      readonly kind: 'computed';
      readonly says: string;
      readonly statement: string;
      readonly source: string;
      readonly account: { readonly what: string; readonly amount: string }[];
      readonly again: boolean;
      readonly inputs: ExplainNode[];
    });

const gap = z.object({ kind: z.literal('unknown'), wants: z.array(z.object({ says: text, at: place })) });

const node: z.ZodMiniType<ExplainNode> = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('written'), ...known, at: place }),
  z.object({ kind: z.literal('assumed'), ...known, says: text, source: text }),
  z.object({
    kind: z.literal('computed'),
    ...known,
    says: text,
    /** The formula with the numbers in place. */
    statement: text,
    source: text,
    /** What the computing reports of its inner work. */
    account: z.array(z.object({ what: text, amount: text })),
    /** True where the same number stands further up with its inputs, which are then not said again. */
    again: z.boolean(),
    inputs: z.array(z.lazy(() => node)),
  }),
  gap,
]);

export const explainJson = z.object({
  formatVersion: z.literal(explainJsonVersion),
  file: text,
  path: text,
  number: node,
  sources: z.array(text),
  /** What to mind, where the number is an amount of acid or base. */
  cautions: z.array(text),
});

export type ExplainJson = z.infer<typeof explainJson>;
