// An entry that nothing in its file uses. A file without plantings is a shelf or a beginning, and is left in peace.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { type SectionName, sectionNames } from '../../schema/section-names.ts';
import { gatheredOwn, keptList } from '../plan/gather.ts';
import { type Logged, loggedIn } from '../plan/logged.ts';
import { madeOfEach } from '../plan/made-of-each.ts';
import { latest, memo } from '../plan/memo.ts';
import type { Plan } from '../plan/plan.ts';
import { type Reference, referencesOf } from '../recipe/names.ts';
import { namesOf } from '../recipe/names-of.ts';
import type { Recipe } from '../recipe/recipe.ts';
import type { Tool } from '../recipe/seen.ts';
import { allSections, type Sourced } from '../recipe/use.ts';
import { wholePlan } from './each.ts';

export const nameUnused = wholePlan(({ scope }: Plan): readonly FindingOf<'name-unused'>[] => {
  const { recipe } = scope;
  if (recipe.sections.plantings.size === 0) return [];
  const uses = usesIn(recipe);
  return allSections.flatMap(section => {
    if (section === 'plantings') return [];
    // Where only the reader can tell which entry is meant, all of them are used.
    const used = keptList(uses.flatMap(use => use.get(section) ?? []));
    const unused = unusedIn(namesOf(recipe.sections[section]), used, section);
    return section === 'tools'
      ? unused.filter(({ params }) => !isMeasuring(recipe.sections.tools.get(params.name)))
      : unused;
  });
});

const unusedIn = latest(
  (
    names: ReadonlySet<string>,
    used: readonly ReadonlySet<string>[],
    section: SectionName,
  ): readonly FindingOf<'name-unused'>[] =>
    [...names].filter(name => !used.some(some => some.has(name))).map(name => unusedName(section, name)),
);

function unusedName(section: SectionName, name: string): FindingOf<'name-unused'> {
  const path = [section, name];
  const params = { name, kind: sectionNames[section] };
  return {
    code: 'name-unused',
    params,
    at: keyAt(path),
    fixes: [{ title: `Take out \`${name}\``, edits: [{ kind: 'remove', path }], sure: false }],
  };
}

/** The names that are used, by the section they stand in. */
type Uses = ReadonlyMap<SectionName, ReadonlySet<string>>;

/** What each section uses, and the log. */
function usesIn(recipe: Recipe): readonly Uses[] {
  const bySection = allSections.map(section => united(inEntries(gatheredOwn(recipe, section))));
  return [...bySection, united(inLog(loggedIn(recipe.log)))];
}

const inEntries = madeOfEach(
  ({ value, path }: Sourced<object>) => referencesOf(path[0] as SectionName, value),
  undefined,
  nameTheSame,
);
const inLog = madeOfEach(({ entry }: Logged) => referencesOf('log', entry), undefined, nameTheSame);

function nameTheSame(some: readonly Reference[], others: readonly Reference[]): boolean {
  if (some.length !== others.length) return false;
  return some.every(({ name, refers }, at) => name === others[at]?.name && refers === others[at]?.refers);
}

const united = memo((lists: readonly (readonly Reference[])[]): Uses => {
  const used = new Map<SectionName, Set<string>>();
  for (const references of lists) {
    for (const { name, refers } of references) {
      for (const of of refers) {
        const names = used.get(of);
        if (names === undefined) used.set(of, new Set([name]));
        else names.add(name);
      }
    }
  }
  return used;
});

/** Every dose is measured with whatever the bench has: a scale is in use without being named. */
function isMeasuring(tool: Tool | undefined): boolean {
  return tool !== undefined && ('smallest' in tool || 'largest' in tool || 'steps' in tool);
}
