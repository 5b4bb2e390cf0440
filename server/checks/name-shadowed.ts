// A name that stands in this file and in one that it borrows from, or in two that it borrows from: one of them is not used.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt, type Path } from '../../schema/place.ts';
import { lentSections, type SectionName, sectionNames } from '../../schema/section-names.ts';
import type { Plan } from '../plan/plan.ts';
import { referencesOf } from '../recipe/names.ts';
import { allSections, nameOfFile, type Scope } from '../recipe/use.ts';
import { wholePlan } from './each.ts';

export const nameShadowed = wholePlan(({ scope }: Plan): readonly FindingOf<'name-shadowed'>[] => {
  return scope.lenders.length === 0 ? [] : [...ownNames(scope), ...borrowedNames(scope)];
});

function ownNames(scope: Scope): readonly FindingOf<'name-shadowed'>[] {
  const found: FindingOf<'name-shadowed'>[] = [];
  for (const section of lentSections) {
    for (const name of scope.recipe.sections[section].keys()) {
      const [other] = lendersOf(scope, section, name);
      if (other === undefined) continue;
      found.push({
        code: 'name-shadowed',
        params: { name, kind: sectionNames[section], file: nameOfFile(other), used: 'this file' },
        at: keyAt([section, name]),
        related: [{ at: keyAt([section, name], other), says: 'the entry that is not used' }],
      });
    }
  }
  return found;
}

/** Names that are used here and lent by two files: said once, where the first use is. */
function borrowedNames(scope: Scope): readonly FindingOf<'name-shadowed'>[] {
  if (scope.lenders.length < 2) return [];
  const found = new Map<string, FindingOf<'name-shadowed'>>();
  const look = (section: SectionName | 'log', value: object, base: Path): void => {
    for (const { name, refers, path, part } of referencesOf(section, value)) {
      const of = refers.find(kind => lentSections.includes(kind) && lendersOf(scope, kind, name).length > 0);
      if (of === undefined || found.has(`${of}/${name}`) || scope.recipe.sections[of].has(name)) continue;
      const [lender, other] = lendersOf(scope, of, name);
      if (lender === undefined || other === undefined) continue;
      found.set(`${of}/${name}`, {
        code: 'name-shadowed',
        params: { name, kind: sectionNames[of], file: nameOfFile(other), used: `\`${nameOfFile(lender)}\`` },
        at: { path: [...base, ...path], part },
        related: [
          { at: keyAt([of, name], lender), says: 'the entry that is used' },
          { at: keyAt([of, name], other), says: 'the entry that is not used' },
        ],
      });
    }
  };
  for (const section of allSections) {
    for (const [name, value] of scope.recipe.sections[section]) look(section, value, [section, name]);
  }
  return [...found.values()];
}

function lendersOf(scope: Scope, section: SectionName, name: string): readonly string[] {
  return scope.lenders.flatMap(({ file, recipe }) => (recipe.sections[section].has(name) ? [file] : []));
}
