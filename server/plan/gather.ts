// The values that one batch, planting or container depends on, gathered in one argument. Gathered again from the same values it is
// the same object, which is what lets `memo` know that nothing changed.

import { Remembered } from '../../schema/remembered.ts';
import { lentSections, type SectionName } from '../../schema/section-names.ts';
import { referencesOf } from '../recipe/names.ts';
import { namesOf } from '../recipe/names-of.ts';
import type { Recipe } from '../recipe/recipe.ts';
import type { Batch, Feed, SectionEntries, Stage, Tool } from '../recipe/seen.ts';
import { all, find, type Scope, type Sourced } from '../recipe/use.ts';
import { changedBetween, madeOfEach, valuesOf } from './made-of-each.ts';
import { interned, latest, memo } from './memo.ts';

/** A named entry of a section, or only its name where nothing has it. */
export type Found<S extends SectionName> = Sourced<SectionEntries[S]> | undefined;

/** The recipe's own value stands at one place, a borrowed one in as many recipes as borrow it. */
const keepOwn = latest(
  (value: object, name: string, section: SectionName): Sourced<object> => ({ name, value, path: [section, name] }),
);
const keepLent = memo(
  (value: object, name: string, section: SectionName, file: string): Sourced<object> => ({
    name,
    value,
    path: [section, name],
    file,
  }),
);

/** The entry of a name as one object for as long as its value, name and file stay. */
export function gathered<S extends SectionName>(scope: Scope, section: S, name: string | undefined): Found<S> {
  const found = name === undefined ? undefined : find(scope, section, name);
  return found === undefined ? undefined : (kept(found, section) as Found<S>);
}

/** All entries of a section that a recipe sees, each as one object; the same list while nothing in the section changes. */
export function gatheredAll<S extends SectionName>(scope: Scope, section: S): readonly Sourced<SectionEntries[S]>[] {
  if (scope.lenders.length === 0 || !lentSections.includes(section)) return gatheredOwn(scope.recipe, section);
  return keptAll(all(scope, section), section) as readonly Sourced<SectionEntries[S]>[];
}

/** The same of what the recipe itself has. */
export function gatheredOwn<S extends SectionName>(recipe: Recipe, section: S): readonly Sourced<SectionEntries[S]>[] {
  return keptOwn(recipe.sections[section], section) as readonly Sourced<SectionEntries[S]>[];
}

const keptOwn = memo((entries: ReadonlyMap<string, object>, section: SectionName): readonly Sourced<object>[] => {
  const values = valuesOf(entries);
  const names = namesOf(entries);
  // Names that are those of another state of the section stand in the same order.
  const before = ownBefore.get(names);
  const own =
    before?.own.map((sourced, at) => {
      const value = values[at];
      return value === undefined || value === before.values[at] ? sourced : keepOwn(value, sourced.name, section);
    }) ?? [...entries].map(([name, value]) => keepOwn(value, name, section));
  ownBefore.set(names, { values, own });
  return own;
});

const ownBefore = new Remembered<
  ReadonlySet<string>,
  { readonly values: readonly object[]; readonly own: readonly Sourced<object>[] }
>();

const keptAll = memo((listed: readonly Sourced<object>[], section: SectionName): readonly Sourced<object>[] =>
  listed.map(sourced => kept(sourced, section)),
);

function kept({ value, name, file }: Sourced<object>, section: SectionName): Sourced<object> {
  return file === undefined ? keepOwn(value, name, section) : keepLent(value, name, section, file);
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
  /** Every name that the batch mentions. */
  readonly mentions: readonly string[];
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
  ): BatchNeeds => ({ batch, water, feeds, vessel, tools, adjuster, target, added, mentions: mentionsOf(batch) }),
);

function mentionsOf({ value }: Sourced<Batch>): readonly string[] {
  return [...new Set(referencesOf('batches', value).map(({ name }) => name))];
}

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
  /** All of it as lists: what batches name, and the stages. */
  readonly sections: readonly (readonly Sourced<object>[])[];
  readonly fedFrom: readonly Sourced<Stage>[];
}

export function shelfOf(scope: Scope): Shelf {
  return keepShelf(
    gatheredAll(scope, 'stages'),
    gatheredAll(scope, 'targets'),
    gatheredAll(scope, 'tools'),
    gatheredAll(scope, 'adjusters'),
    gatheredAll(scope, 'feeds'),
    gatheredAll(scope, 'waters'),
  );
}

const keepShelf = memo(
  (
    stages: readonly Sourced<Stage>[],
    targets: readonly Sourced<SectionEntries['targets']>[],
    tools: readonly Sourced<Tool>[],
    adjusters: readonly Sourced<SectionEntries['adjusters']>[],
    feeds: readonly Sourced<Feed>[],
    waters: readonly Sourced<SectionEntries['waters']>[],
  ): Shelf => ({
    waters: byName(waters),
    feeds: byName(feeds),
    adjusters: byName(adjusters),
    tools: byName(tools),
    targets: byName(targets),
    stages: stagesByBatch(stages),
    measuring: keptList(tools.filter(({ value }) => value.smallest !== undefined || value.steps !== undefined)),
    sections: [waters, feeds, adjusters, tools, targets],
    fedFrom: stages,
  }),
);

/** Entries by their names; the same map for the same list. */
export const byName = memo(
  (entries: readonly Sourced<object>[]): ReadonlyMap<string, Sourced<object>> =>
    new Map(entries.map(entry => [entry.name, entry])),
) as <T>(entries: readonly Sourced<T>[]) => ReadonlyMap<string, Sourced<T>>;

/** What each batch depends on: the same objects while that stays, whatever else changes in the recipe. */
export const gatherBatches = madeOfEach(gatherBatch, ([was]: [Shelf], [is]: [Shelf]) => {
  if (was.measuring !== is.measuring) return () => true;
  const changed = is.sections.flatMap((section, at) => changedBetween(was.sections[at] ?? [], section));
  const names = new Set(changed.map(({ name }) => name));
  // A batch without a target aims at that of a stage that it feeds.
  const stages = names.size === 0 ? [] : is.fedFrom.filter(({ value }) => names.has(value.target ?? ''));
  for (const { value } of [...stages, ...changedBetween(was.fedFrom, is.fedFrom)]) names.add(value.batch ?? '');
  return ({ name }, { mentions }) => names.has(name) || mentions.some(mention => names.has(mention));
});

function gatherBatch(batch: Sourced<Batch>, shelf: Shelf): BatchNeeds {
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

/** By batch, the stages that it feeds. */
export const stagesByBatch = memo(
  (stages: readonly Sourced<Stage>[]): ReadonlyMap<string, readonly Sourced<Stage>[]> => {
    const found = new Map<string, Sourced<Stage>[]>();
    for (const stage of stages) {
      const { batch } = stage.value;
      if (batch === undefined) continue;
      const others = found.get(batch);
      if (others === undefined) found.set(batch, [stage]);
      else others.push(stage);
    }
    return found;
  },
);
