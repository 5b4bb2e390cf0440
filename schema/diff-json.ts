// What `diff --format json` prints, version 1: a contract like that of the plan. A number that is not known is null, as is one that
// is not there; the text that people are shown beside it tells the two apart.

import * as z from 'zod/mini';
import { findingJson } from './finding-json.ts';
import { keyPath, said, text } from './json-words.ts';

const value = () => z.nullable(z.union([z.number(), text]));
const shown = () => z.nullable(text);
const count = z.int().check(z.minimum(0));
const group = z.enum(['batch', 'planting', 'container', 'supply', 'task']);

const change = z.object({
  group,
  name: said(z.string(), 'the batch, planting, container or supply; of a task, what it is about'),
  what: said(z.string(), 'what of it, as a phrase; with group and name a key'),
  before: said(value(), 'a number in `unit`, a date or a text; null where it is not known or not there'),
  after: said(value(), 'the same after the change'),
  unit: said(z.nullable(text), 'of the numbers; null for texts, dates and plain numbers'),
  change: said(z.nullable(z.number()), 'after less before; of two dates, in days'),
  percent: said(z.nullable(z.number()), 'null where a share means nothing, as of a pH or a count'),
  shown: said(
    z.object({ before: shown(), after: shown(), change: shown() }),
    'the same as people read it, in the units of the new recipe; null where there is nothing',
  ),
  because: said(z.array(count), 'which of the `causes`, counted from 0'),
});

const cause = z.object({
  path: said(keyPath(), 'the written place'),
  side: said(z.enum(['before', 'after']), 'in which state the place is to be looked up'),
  file: text,
  line: said(z.int().check(z.minimum(1)), 'counted from 1'),
  before: said(shown(), 'what is written there, where it fits a line'),
  after: shown(),
});

const file = z.object({
  file: said(z.string(), 'the new name where there is one'),
  was: said(z.nullable(text), 'the old name, where it is another one'),
  state: said(z.enum(['compared', 'added', 'removed', 'unread']), '`unread`: one side could not be read'),
  textChanged: z.boolean(),
  notes: said(z.array(text), 'what to know of the comparison, such as why a side could not be read'),
  renames: said(
    z.array(z.object({ group, before: text, after: text })),
    'entries that only have another name: nothing else of them changed',
  ),
  changes: said(z.array(change), 'only what people would see change'),
  causes: z.array(cause),
  unchanged: said(
    z.int().check(z.minimum(0)),
    'how many values stay the same; of a file that is new or gone, how many it has',
  ),
  findings: z.object({
    appear: z.array(findingJson),
    change: said(z.array(z.object({ before: findingJson, after: findingJson })), 'the same finding with other amounts'),
    disappear: z.array(findingJson),
    stay: count,
  }),
  cautions: said(z.array(text), 'to be said with the amounts of acid or base in `changes`'),
});

export const diffJson = z.object({
  formatVersion: z.literal(1),
  before: said(z.string(), 'the two states, as they were named'),
  after: text,
  counts: said(
    z.object({
      changed: count,
      unchanged: count,
      appear: count,
      change: count,
      disappear: count,
      added: count,
      removed: count,
      unread: count,
    }),
    'over all files: values, findings, recipes',
  ),
  untouched: said(z.int().check(z.minimum(0)), 'recipes that are the same, with all that they use'),
  files: z.array(file),
});

export type DiffJson = z.infer<typeof diffJson>;
