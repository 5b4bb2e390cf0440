// An entry that nothing in its file uses. A file without plantings is a shelf or a beginning, and is left in peace.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { type SectionName, sectionNames } from '../../schema/section-names.ts';
import { memo } from '../plan/memo.ts';
import type { Plan } from '../plan/plan.ts';
import { referencesOf } from '../recipe/names.ts';
import type { Recipe } from '../recipe/recipe.ts';
import { allSections } from '../recipe/use.ts';
import { wholePlan } from './each.ts';

export const nameUnused = wholePlan((plan: Plan): readonly FindingOf<'name-unused'>[] => {
  const { recipe } = plan.scope;
  if (recipe.sections.plantings.size === 0) return [];
  const used = namesUsed(recipe);
  const found: FindingOf<'name-unused'>[] = [];
  for (const section of allSections) {
    if (section === 'plantings') continue;
    for (const [name, value] of recipe.sections[section]) {
      if (used[section].some(names => names.has(name)) || (section === 'tools' && isMeasuring(value))) continue;
      found.push({
        code: 'name-unused',
        params: { name, kind: sectionNames[section] },
        at: keyAt([section, name]),
        fixes: [{ title: `Take out \`${name}\``, edits: [{ kind: 'remove', path: [section, name] }], sure: false }],
      });
    }
  }
  return found;
});

/** The names that are used anywhere, by the section they stand in; in more than one where only the reader can tell which is meant. */
function namesUsed(recipe: Recipe): Readonly<Record<SectionName, readonly ReadonlySet<string>[]>> {
  const uses = [...allSections.map(section => usedIn(recipe.sections[section], section)), usedInLog(recipe.log)];
  const used = allSections.map(section => [section, uses.flatMap(use => use.get(section) ?? [])]);
  return Object.fromEntries(used);
}

type Uses = ReadonlyMap<SectionName, ReadonlySet<string>>;

const usedIn = memo(
  (entries: ReadonlyMap<string, object>, section: SectionName): Uses => usesOf(entries.values(), section),
);
const usedInLog = memo((log: Recipe['log']): Uses => usesOf(log, 'log'));

function usesOf(values: Iterable<object | undefined>, section: SectionName | 'log'): Uses {
  const used = new Map<SectionName, Set<string>>();
  for (const value of values) {
    for (const { name, refers } of value === undefined ? [] : referencesOf(section, value)) {
      for (const of of refers) {
        const names = used.get(of);
        if (names === undefined) used.set(of, new Set([name]));
        else names.add(name);
      }
    }
  }
  return used;
}

/** Every dose is measured with whatever the bench has: a scale is in use without being named. */
function isMeasuring(tool: object): boolean {
  return 'smallest' in tool || 'largest' in tool || 'steps' in tool;
}
