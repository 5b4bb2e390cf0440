// The ways in which a check looks at a plan: at an entry, a batch, a planting with or without its season, or at the whole. All that look
// at one thing are run together and remembered, so that what did not change costs next to nothing, however many checks there are.

import type { Finding, FindingCode, FindingOf } from '../../schema/findings.ts';
import type { SectionName } from '../../schema/section-names.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { gatheredOwn } from '../plan/gather.ts';
import { foundInEach, valuesOf } from '../plan/made-of-each.ts';
import { latest, memo } from '../plan/memo.ts';
import type { Plan, PlantingPlan } from '../plan/plan.ts';
import { type PlantingSeason, plantingSeasons } from '../plan/season.ts';
import type { Recipe } from '../recipe/recipe.ts';
import type { SectionEntries } from '../recipe/seen.ts';
import { allSections, type Sourced } from '../recipe/use.ts';

/** What finds one code. Pure. */
export interface Check<C extends FindingCode> {
  readonly looks: readonly Look<FindingOf<C>>[];
}

/** One thing that a check looks at. */
export type Look<F> =
  | { readonly at: 'plan'; readonly find: (plan: Plan) => readonly F[] }
  | { readonly at: 'entry'; readonly section: SectionName; readonly find: (entry: Sourced<object>) => readonly F[] }
  | { readonly at: 'batch'; readonly find: (batch: BatchPlan, show: Recipe['show']) => readonly F[] }
  | { readonly at: 'planting'; readonly find: (planting: PlantingPlan) => readonly F[] }
  | { readonly at: 'season'; readonly find: (season: PlantingSeason) => readonly F[] };

/** Checks what no part alone can tell; run again at every change, so it must not look at every entry. */
export function wholePlan<C extends FindingCode>(find: (plan: Plan) => readonly FindingOf<C>[]): Check<C> {
  return { looks: [{ at: 'plan', find }] };
}

/**
 * Checks each of some things by what is `given` beside them. All are looked at again where what is given changed, so it must be cheap
 * or remember.
 */
export function eachOf<T extends object, G, C extends FindingCode>(
  things: (plan: Plan) => readonly T[],
  given: (plan: Plan) => G,
  find: (thing: T, given: G) => readonly FindingOf<C>[],
): Check<C> {
  const findAll = foundInEach(find);
  return wholePlan(plan => findAll(things(plan), given(plan)));
}

/** The things of a plan that many checks look at. */
export const batchesIn = ({ batches }: Plan): readonly BatchPlan[] => valuesOf(batches);
export const plantingsIn = ({ plantings }: Plan): readonly PlantingPlan[] => valuesOf(plantings);

/** Checks every entry that the recipe itself has in a section; borrowed entries are checked in their own file. */
export function eachOwn<S extends SectionName, C extends FindingCode>(
  section: S,
  find: (entry: Sourced<SectionEntries[S]>) => readonly FindingOf<C>[],
): Check<C> {
  return { looks: [{ at: 'entry', section, find: entry => find(entry as Sourced<SectionEntries[S]>) }] };
}

/** Checks every batch as it was worked out. */
export function eachBatch<C extends FindingCode>(
  find: (batch: BatchPlan, show: Recipe['show']) => readonly FindingOf<C>[],
): Check<C> {
  return { looks: [{ at: 'batch', find }] };
}

/** Checks every planting with its fill. */
export function eachPlanting<C extends FindingCode>(
  find: (planting: PlantingPlan) => readonly FindingOf<C>[],
): Check<C> {
  return { looks: [{ at: 'planting', find }] };
}

/** Checks every planting over time: its stages, its forecast and what the log says of it. */
export function eachSeason<C extends FindingCode>(find: (season: PlantingSeason) => readonly FindingOf<C>[]): Check<C> {
  return { looks: [{ at: 'season', find }] };
}

/** One check that looks at several things. */
export function together<C extends FindingCode>(...checks: readonly Check<C>[]): Check<C> {
  return { looks: checks.flatMap(check => check.looks) };
}

/** Runs all looks over a plan. */
export function runner(looks: readonly Look<Finding>[]): (plan: Plan) => readonly Finding[] {
  const ofPlan = allOf(looks.flatMap(look => (look.at === 'plan' ? [look.find] : [])));
  const ofBatches = foundInEach(latest(allOf(looks.flatMap(look => (look.at === 'batch' ? [look.find] : [])))));
  const ofPlantings = foundInEach(memo(allOf(looks.flatMap(look => (look.at === 'planting' ? [look.find] : [])))));
  const ofSeasons = foundInEach(memo(allOf(looks.flatMap(look => (look.at === 'season' ? [look.find] : [])))));
  const ofSections = allSections.map(section => sectionRunner(looks, section));
  return plan => {
    const { recipe } = plan.scope;
    return [
      ...ofPlan(plan),
      ...ofSections.flatMap(ofSection => ofSection(recipe)),
      ...ofBatches(batchesIn(plan), recipe.show),
      ...ofPlantings(plantingsIn(plan)),
      ...ofSeasons(plantingSeasons(plan)),
    ];
  };
}

function sectionRunner(looks: readonly Look<Finding>[], section: SectionName): (recipe: Recipe) => readonly Finding[] {
  const own = looks.flatMap(look => (look.at === 'entry' && look.section === section ? [look.find] : []));
  if (own.length === 0) return () => [];
  const ofEntries = foundInEach(memo(allOf(own)));
  return recipe => ofEntries(gatheredOwn(recipe, section));
}

/** Asks many about one thing; most find nothing. */
function allOf<A extends readonly unknown[], F>(
  finders: readonly ((...of: A) => readonly F[])[],
): (...of: A) => readonly F[] {
  return (...of) => {
    let found: readonly F[] = nothing;
    for (const find of finders) {
      const here = find(...of);
      if (here.length > 0) found = found.length === 0 ? here : [...found, ...here];
    }
    return found;
  };
}

const nothing: readonly never[] = [];
