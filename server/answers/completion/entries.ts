// New entries of a section: the names that are used somewhere and stand for nothing yet, and one under a name of one's own.

import { recipe } from '../../../schema/recipe.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import { schemaAt } from '../../recipe/form.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { aboutKey } from './about.ts';
import type { Completion } from './completion.ts';
import { holesFor } from './snippet.ts';
import type { KeySpot } from './spot.ts';

export function entryCompletions(snapshot: Snapshot, spot: KeySpot): readonly Completion[] {
  const [section, ...deeper] = spot.within;
  if (!isSection(section) || deeper.length > 0) return [];
  const { typed, replaces, flow } = spot;
  const schema = schemaAt(recipe, [section, '']);
  if (schema === undefined || flow) return [];
  const entry = (label: string, name: string | undefined, detail: string): Completion => {
    const { hole, lines } = holesFor(snapshot.scope);
    const key = name ?? hole('name');
    return {
      kind: 'key',
      label,
      text: `${name ?? 'name'}:`,
      snippet: `${key}:\n  ${lines(schema, 2)}`,
      detail,
      replaces,
      about: aboutKey([section, '']),
    };
  };
  const missing = namesMissing(snapshot, section).filter(name => !spot.present.includes(name));
  const own = /^[a-z][a-z0-9-]*$/.test(typed) ? typed : undefined;
  return [
    ...missing.map(name => entry(name, name, 'used, and not written yet')),
    entry(own ?? `new ${sectionNames[section]}`, own, `a new ${sectionNames[section]}`),
  ];
}

/** The names that something in the recipe takes to stand in a section, where nothing has them. */
function namesMissing({ findings }: Snapshot, section: SectionName): readonly string[] {
  const names = findings.flatMap(({ finding }) =>
    finding.code === 'name-unknown' && finding.params.among.includes(section) ? [finding.params.name] : [],
  );
  return [...new Set(names)];
}

function isSection(key: unknown): key is SectionName {
  return typeof key === 'string' && Object.hasOwn(sectionNames, key);
}
