// What `explain FILE PATH --format json` prints, version 1: one number with all that led to it, as a tree down to what is written.

import * as z from 'zod/mini';
import { keyPath, said, text } from './json-words.ts';

const place = z.object({
  file: text,
  path: keyPath(),
  line: said(z.nullable(z.int()), 'counted from 0; null stands for a file that is not there'),
});

/** A number on the way. */
const known = {
  name: said(z.string(), 'what the formula above calls it; empty for the number that was asked for'),
  amount: said(z.string(), 'as a reader reads it'),
  value: said(z.number(), 'counted in `unit`'),
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
    statement: said(z.string(), 'the formula with the numbers in place'),
    source: text,
    account: said(z.array(z.object({ what: text, amount: text })), 'what the computing reports of its inner work'),
    again: said(
      z.boolean(),
      'true where the same number stands further up with its inputs, which are then not said again',
    ),
    inputs: said(z.array(z.lazy(() => node)), 'numbers like this one'),
  }),
  gap,
]);

export const explainJson = z.object({
  formatVersion: z.literal(1),
  file: text,
  path: text,
  number: node,
  sources: z.array(text),
  cautions: said(z.array(text), 'what to mind, where the number is an amount of acid or base'),
});

export type ExplainJson = z.infer<typeof explainJson>;
