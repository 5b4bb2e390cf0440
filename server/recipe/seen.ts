// The types of what was read. Text is typed one key at a time, so every key of a read entry is optional; the types come from
// the schemas, so there is nothing here to keep in step.

import type * as z from 'zod/mini';
import type { recipe } from '../../schema/recipe.ts';
import type { adjuster } from '../../schema/sections/adjuster.ts';
import type { batch, reading } from '../../schema/sections/batch.ts';
import type { container } from '../../schema/sections/container.ts';
import type { feed } from '../../schema/sections/feed.ts';
import type { logEntry } from '../../schema/sections/log.ts';
import type { planting } from '../../schema/sections/planting.ts';
import type { stage } from '../../schema/sections/stage.ts';
import type { target } from '../../schema/sections/target.ts';
import type { tool } from '../../schema/sections/tool.ts';
import type { water } from '../../schema/sections/water.ts';

/**
 * What reading by a schema gives: groups with every key optional, maps from names as `ReadonlyMap`, lists in which an item that
 * could not be read is `undefined` (so that numbers of items stay true), and leaves as they were parsed.
 */
export type Seen<S> =
  S extends z.ZodMiniOptional<infer I>
    ? Seen<I>
    : S extends z.ZodMiniObject<infer Shape>
      ? { readonly [K in keyof Shape]?: Seen<Shape[K]> }
      : S extends z.ZodMiniArray<infer I>
        ? readonly (Seen<I> | undefined)[]
        : S extends z.ZodMiniRecord<infer K, infer V>
          ? string extends z.output<K>
            ? ReadonlyMap<string, Seen<V> | undefined>
            : { readonly [P in z.output<K>]?: Seen<V> | undefined }
          : S extends z.core.$ZodType
            ? z.output<S>
            : never;

export type Water = Seen<typeof water>;
export type Feed = Seen<typeof feed>;
export type Adjuster = Seen<typeof adjuster>;
export type Tool = Seen<typeof tool>;
export type Container = Seen<typeof container>;
export type Target = Seen<typeof target>;
export type Stage = Seen<typeof stage>;
export type Planting = Seen<typeof planting>;
export type Batch = Seen<typeof batch>;
export type Reading = Seen<typeof reading>;
export type LogEntry = Seen<typeof logEntry>;
/** A whole recipe as read: its sections are maps from names. */
export type RecipeValues = Seen<typeof recipe>;

/** The entries of each section, by name. */
export interface SectionEntries {
  readonly waters: Water;
  readonly feeds: Feed;
  readonly adjusters: Adjuster;
  readonly tools: Tool;
  readonly containers: Container;
  readonly targets: Target;
  readonly stages: Stage;
  readonly plantings: Planting;
  readonly batches: Batch;
}
