// A name that is written where an entry is meant, and that no entry has.

import type { FindingOf, Fix } from '../../schema/findings.ts';
import { nearest } from '../../schema/nearest.ts';
import type { Path } from '../../schema/place.ts';
import { lentSections, type SectionName, sectionNames } from '../../schema/section-names.ts';
import type { Plan } from '../plan/plan.ts';
import { type Reference, referencesOf } from '../recipe/names.ts';
import { allSections, hasName, namesIn, resolved, type Scope } from '../recipe/use.ts';
import { wholePlan } from './each.ts';

export const nameUnknown = wholePlan((plan: Plan): readonly FindingOf<'name-unknown'>[] => {
  const { scope } = plan;
  const found: FindingOf<'name-unknown'>[] = [];
  const suggest = suggestions(scope);
  const isWhole = hasAllLenders(scope);
  const isKnown = ({ name, refers }: Reference): boolean => refers.some(section => hasName(scope, section, name));
  const note = (reference: Reference, base: Path): void => {
    const { name, refers } = reference;
    // Where a used file could not be had, the name may stand there; that file is the finding.
    if (!isWhole && refers.some(section => lentSections.includes(section))) return;
    found.push(unknownName(reference, [...base, ...reference.path], suggest(name, refers)));
  };
  for (const section of allSections) {
    for (const [name, value] of scope.recipe.sections[section]) {
      for (const reference of referencesOf(section, value)) if (!isKnown(reference)) note(reference, [section, name]);
    }
  }
  for (const [index, entry] of scope.recipe.log.entries()) {
    if (entry === undefined) continue;
    for (const reference of referencesOf('log', entry)) if (!isKnown(reference)) note(reference, ['log', index]);
  }
  return found;
});

function unknownName(reference: Reference, path: Path, close: string | undefined): FindingOf<'name-unknown'> {
  const { name, refers, part } = reference;
  const kind = refers.map(section => sectionNames[section]).join(' or ');
  const at = { path, part };
  const fixes: readonly Fix[] =
    close === undefined
      ? []
      : [
          {
            title: `Change to \`${close}\``,
            edits: [part.kind === 'key' ? { kind: 'rename', path, key: close } : { kind: 'replace', at, text: close }],
            sure: false,
          },
        ];
  return { code: 'name-unknown', params: { name, kind, nearest: close, among: refers }, at, fixes };
}

/** Gives the nearest name, looked for once for each word. */
function suggestions(scope: Scope): (name: string, sections: readonly SectionName[]) => string | undefined {
  const known = new Map<string, string | undefined>();
  return (name, sections) => {
    const key = `${sections.join()}/${name}`;
    if (!known.has(key) && known.size < mostSuggestions) known.set(key, nearest(name, namesIn(scope, sections)));
    return known.get(key);
  };
}

/** Each suggestion looks at every name, so a file of nothing but unknown names would be slow; nobody mends so many one by one. */
const mostSuggestions = 100;

/** Whether everything that is used, directly or not, has been read. */
function hasAllLenders({ file, recipe, lenders }: Scope): boolean {
  const had = new Set([file, ...lenders.map(lender => lender.file)]);
  return [{ file, recipe }, ...lenders].every(user =>
    user.recipe.use.every(written => {
      const uri = written === undefined ? undefined : resolved(user.file, written);
      return uri !== undefined && had.has(uri);
    }),
  );
}
