// The values that one batch, planting or container depends on, gathered in one argument. Gathered again from the same values it is
// the same object, which is what lets `memo` know that nothing changed.

import type { SectionName } from '../../schema/section-names.ts';
import type { Batch, Feed, SectionEntries, Stage, Tool } from '../recipe/seen.ts';
import { all, find, type Scope, type Sourced } from '../recipe/use.ts';
import { interned, memo } from './memo.ts';

/** A named entry of a section, or only its name where nothing has it. */
export type Found<S extends SectionName> = Sourced<SectionEntries[S]> | undefined;

const keepSourced = memo(
  (value: object, name: string, section: SectionName, file: string | undefined): Sourced<object> =>
    file === undefined ? { name, value, path: [section, name] } : { name, value, path: [section, name], file },
);

/** The entry of a name as one object for as long as its value, name and file stay. */
export function gathered<S extends SectionName>(scope: Scope, section: S, name: string | undefined): Found<S> {
  const found = name === undefined ? undefined : find(scope, section, name);
  return found === undefined ? undefined : kept(found, section);
}

/** All entries of a section that a recipe sees, each as one object; the same list while nothing in the section changes. */
export function gatheredAll<S extends SectionName>(scope: Scope, section: S): readonly Sourced<SectionEntries[S]>[] {
  return keptAll(all(scope, section), section) as readonly Sourced<SectionEntries[S]>[];
}

const keptAll = memo((listed: readonly Sourced<object>[], section: SectionName): readonly Sourced<object>[] =>
  listed.map(({ value, name, file }) => keepSourced(value, name, section, file)),
);

function kept<S extends SectionName>(sourced: Sourced<SectionEntries[S]>, section: S): Sourced<SectionEntries[S]> {
  return keepSourced(sourced.value, sourced.name, section, sourced.file) as Sourced<SectionEntries[S]>;
}

export const keepList = interned<unknown>();

/** Gives the same list for the same members. */
export function keptList<T>(members: readonly T[]): readonly T[] {
  return keepList(members) as readonly T[];
}

/** Everything a batch's doses and loads depend on. */
export interface BatchNeeds {
  readonly batch: Sourced<Batch>;
  readonly water: Found<'waters'>;
  /** The feeds in the order in which they are added; `feed` is missing where nothing has the name. */
  readonly feeds: readonly { readonly name: string; readonly feed: Sourced<Feed> | undefined }[];
  readonly vessel: Found<'tools'>;
  /** Every tool that measures. */
  readonly tools: readonly Sourced<Tool>[];
  readonly adjuster: Found<'adjusters'>;
  readonly target: Found<'targets'>;
  /** Everything that the readings say was added, in no order. */
  readonly added: readonly (Sourced<Feed> | Sourced<SectionEntries['adjusters']>)[];
}

const keepFeed = memo((name: string, feed: Sourced<Feed> | undefined) => ({ name, feed }));
const keepNeeds = memo(
  (
    batch: Sourced<Batch>,
    water: Found<'waters'>,
    feeds: BatchNeeds['feeds'],
    vessel: Found<'tools'>,
    tools: readonly Sourced<Tool>[],
    adjuster: Found<'adjusters'>,
    target: Found<'targets'>,
    added: BatchNeeds['added'],
  ): BatchNeeds => ({ batch, water, feeds, vessel, tools, adjuster, target, added }),
);

/** Everything that batches may name, by section; the same object while none of it changes, so that a batch edited looks up nothing for the others. */
export interface Shelf {
  readonly waters: ReadonlyMap<string, Sourced<SectionEntries['waters']>>;
  readonly feeds: ReadonlyMap<string, Sourced<Feed>>;
  readonly adjusters: ReadonlyMap<string, Sourced<SectionEntries['adjusters']>>;
  readonly tools: ReadonlyMap<string, Sourced<Tool>>;
  readonly targets: ReadonlyMap<string, Sourced<SectionEntries['targets']>>;
  /** By batch, the stages that it feeds. */
  readonly stages: ReadonlyMap<string, readonly Sourced<Stage>[]>;
  /** The tools that measure something; a mixing vessel alone does not. */
  readonly measuring: readonly Sourced<Tool>[];
}

export function shelfOf(scope: Scope): Shelf {
  return keepShelf(
    gatheredAll(scope, 'waters'),
    gatheredAll(scope, 'feeds'),
    gatheredAll(scope, 'adjusters'),
    gatheredAll(scope, 'tools'),
    gatheredAll(scope, 'targets'),
    gatheredAll(scope, 'stages'),
  );
}

const keepShelf = memo(
  (
    waters: readonly Sourced<SectionEntries['waters']>[],
    feeds: readonly Sourced<Feed>[],
    adjusters: readonly Sourced<SectionEntries['adjusters']>[],
    tools: readonly Sourced<Tool>[],
    targets: readonly Sourced<SectionEntries['targets']>[],
    stages: readonly Sourced<Stage>[],
  ): Shelf => ({
    waters: byName(waters),
    feeds: byName(feeds),
    adjusters: byName(adjusters),
    tools: byName(tools),
    targets: byName(targets),
    stages: stagesByBatch(stages),
    measuring: keptList(tools.filter(({ value }) => value.smallest !== undefined || value.steps !== undefined)),
  }),
);

function byName<T>(entries: readonly Sourced<T>[]): ReadonlyMap<string, Sourced<T>> {
  return new Map(entries.map(entry => [entry.name, entry]));
}

/** What a batch depends on: the same object while that stays, whatever else changes in the recipe. */
export function gatherBatch(batch: Sourced<Batch>, shelf: Shelf): BatchNeeds {
  const { water, feed, readings, adjust, 'mix-in': vessel } = batch.value;
  const feeds = [...(feed?.keys() ?? [])].map(name => keepFeed(name, shelf.feeds.get(name)));
  const added = new Set((readings ?? []).flatMap(reading => [...(reading?.add?.keys() ?? [])]));
  return keepNeeds(
    batch,
    shelf.waters.get(water ?? ''),
    keptList(feeds),
    shelf.tools.get(vessel ?? ''),
    shelf.measuring,
    shelf.adjusters.get(adjust?.with ?? ''),
    targetOf(batch, shelf),
    keptList([...added].flatMap(name => shelf.adjusters.get(name) ?? shelf.feeds.get(name) ?? [])),
  );
}

/** What a batch aims at: the target it names, or that of the first stage that it feeds. */
function targetOf({ name, value }: Sourced<Batch>, { targets, stages }: Shelf): Found<'targets'> {
  const stage = stages.get(name)?.find(stage => stage.value.target !== undefined);
  return targets.get(value.target ?? stage?.value.target ?? '');
}

/** The stages that a batch feeds, in the order in which they are written. */
export function stagesFedBy(scope: Scope, batch: string): readonly Sourced<Stage>[] {
  return stagesByBatch(gatheredAll(scope, 'stages')).get(batch) ?? [];
}

const stagesByBatch = memo((stages: readonly Sourced<Stage>[]): ReadonlyMap<string, readonly Sourced<Stage>[]> => {
  const found = new Map<string, Sourced<Stage>[]>();
  for (const stage of stages) {
    const { batch } = stage.value;
    if (batch === undefined) continue;
    const others = found.get(batch);
    if (others === undefined) found.set(batch, [stage]);
    else others.push(stage);
  }
  return found;
});
