// The ways in which a check looks at a plan: at an entry, a batch, a planting, or at the whole. All that look at one thing are run
// together and remembered by it, so that what did not change costs one look, however many checks there are.

import type { Finding, FindingCode, FindingOf } from '../../schema/findings.ts';
import type { SectionName } from '../../schema/section-names.ts';
import type { BatchPlan } from '../plan/batch.ts';
import { latest, memo } from '../plan/memo.ts';
import type { Plan, PlantingPlan } from '../plan/plan.ts';
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
  | { readonly at: 'planting'; readonly find: (planting: PlantingPlan) => readonly F[] };

/** Checks what no part alone can tell; run again at every change, so it must be cheap. */
export function wholePlan<C extends FindingCode>(find: (plan: Plan) => readonly FindingOf<C>[]): Check<C> {
  return { looks: [{ at: 'plan', find }] };
}

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

/** One check that looks at several things. */
export function together<C extends FindingCode>(...checks: readonly Check<C>[]): Check<C> {
  return { looks: checks.flatMap(check => check.looks) };
}

/** Runs all looks over a plan. */
export function runner(looks: readonly Look<Finding>[]): (plan: Plan) => readonly Finding[] {
  const ofPlan = looks.flatMap(look => (look.at === 'plan' ? [look.find] : []));
  const ofBatch = latest((batch: BatchPlan, show: Recipe['show']) =>
    looks.flatMap(look => (look.at === 'batch' ? look.find(batch, show) : [])),
  );
  const ofPlanting = memo((planting: PlantingPlan) =>
    looks.flatMap(look => (look.at === 'planting' ? look.find(planting) : [])),
  );
  const ofSections = allSections.map(section => sectionRunner(looks, section));
  return plan => {
    const { recipe } = plan.scope;
    return [
      ...ofPlan.flatMap(find => find(plan)),
      ...ofSections.flatMap(ofSection => ofSection(recipe)),
      ...collect(plan.batches.values(), batch => ofBatch(batch, recipe.show)),
      ...collect(plan.plantings.values(), ofPlanting),
    ];
  };
}

function sectionRunner(looks: readonly Look<Finding>[], section: SectionName): (recipe: Recipe) => readonly Finding[] {
  const own = looks.flatMap(look => (look.at === 'entry' && look.section === section ? [look.find] : []));
  const ofEntry = latest((value: object, name: string) =>
    own.flatMap(find => find({ name, value, path: [section, name] })),
  );
  // A section in which nothing changed is the same map.
  const ofSection = memo((entries: ReadonlyMap<string, object>) =>
    collect(entries, ([name, value]) => ofEntry(value, name)),
  );
  return recipe => (own.length === 0 ? [] : ofSection(recipe.sections[section]));
}

/** What is found in each of many things, most of which are in order. */
export function collect<T, F>(things: Iterable<T>, find: (thing: T) => readonly F[]): readonly F[] {
  const found: F[] = [];
  for (const thing of things) {
    const here = find(thing);
    if (here.length > 0) found.push(...here);
  }
  return found;
}
