// A name that is written where an entry is meant, and that no entry has.

import type { FindingOf, Fix } from '../../schema/findings.ts';
import { nearest } from '../../schema/nearest.ts';
import type { Path } from '../../schema/place.ts';
import { lentSections, type SectionName, sectionNames } from '../../schema/section-names.ts';
import { gatheredOwn, keptList } from '../plan/gather.ts';
import { type Logged, loggedIn } from '../plan/logged.ts';
import { foundInEach } from '../plan/made-of-each.ts';
import { memo } from '../plan/memo.ts';
import type { Plan } from '../plan/plan.ts';
import { type Reference, referencesOf } from '../recipe/names.ts';
import { namesOf } from '../recipe/names-of.ts';
import { allSections, resolved, type Scope, type Sourced } from '../recipe/use.ts';
import { wholePlan } from './each.ts';

export const nameUnknown = wholePlan(({ scope }: Plan): readonly FindingOf<'name-unknown'>[] => {
  const { recipe } = scope;
  const names = namesSeenBy(scope);
  const unknown = [
    ...allSections.flatMap(section => unknownIn(gatheredOwn(recipe, section), names)),
    ...unknownInLog(loggedIn(recipe.log), names),
  ];
  if (unknown.length === 0) return [];
  const isWhole = hasAllLenders(scope);
  const suggest = suggestions(names);
  return unknown.flatMap(({ path, reference }) => {
    const { name, refers } = reference;
    // Where a used file could not be had, the name may stand there; that file is the finding.
    if (!isWhole && refers.some(section => lentSections.includes(section))) return [];
    return [unknownName(reference, path, suggest(name, refers))];
  });
});

/** What a recipe has itself before what it borrows, which outlives it. */
const sections = allSections.toReversed();

/** For each of these sections the names of it: the recipe's own, then those of each file that lends them. */
type Names = readonly (readonly ReadonlySet<string>[])[];

/** The names that a recipe sees; the same object while none comes or goes. */
function namesSeenBy({ recipe, lenders }: Scope): Names {
  const from = (section: SectionName) =>
    lentSections.includes(section) ? [recipe, ...lenders.map(lender => lender.recipe)] : [recipe];
  return keptList(
    sections.map(section => keptList(from(section).map(({ sections: entries }) => namesOf(entries[section])))),
  );
}

function namesFor(names: Names, section: SectionName): readonly ReadonlySet<string>[] {
  return names[sections.indexOf(section)] ?? [];
}

interface Unknown {
  readonly path: Path;
  readonly reference: Reference;
}

const unknownIn = foundInEach(({ value, path }: Sourced<object>, names: Names): readonly Unknown[] =>
  unknownAmong(referencesOf(path[0] as SectionName, value), path, names),
);

const unknownInLog = foundInEach(({ index, entry }: Logged, names: Names): readonly Unknown[] =>
  unknownAmong(referencesOf('log', entry), ['log', index], names),
);

function unknownAmong(references: readonly Reference[], base: Path, names: Names): readonly Unknown[] {
  return references
    .filter(({ name, refers }) => !refers.some(section => namesFor(names, section).some(some => some.has(name))))
    .map(reference => ({ path: [...base, ...reference.path], reference }));
}

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

/** Gives the nearest name for each word, as far as they are not too many. */
function suggestions(names: Names): (name: string, sections: readonly SectionName[]) => string | undefined {
  const asked = new Set<string>();
  return (name, sections) => {
    asked.add(`${sections.join()}/${name}`);
    return asked.size > mostSuggestions ? undefined : nearestOf(names, name, sections);
  };
}

/** Each suggestion looks at every name, so a file of nothing but unknown names would be slow; nobody mends so many one by one. */
const mostSuggestions = 100;

const nearestOf = memo((names: Names, name: string, sections: readonly SectionName[]) =>
  nearest(
    name,
    sections.flatMap(section => namesFor(names, section).flatMap(some => [...some])),
  ),
);

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
