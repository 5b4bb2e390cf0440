// Entries of all recipes by a part of their name. Apart from the outline, because nothing is computed for it: there may be hundreds
// of files.

import type { SectionName } from '../../../schema/section-names.ts';
import { allSections } from '../../recipe/use.ts';
import { rangeOf } from '../../syntax/place.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

export interface FoundSymbol {
  readonly name: string;
  readonly section: SectionName;
  readonly uri: string;
  readonly nameRange: Range;
}

/** The entries whose name holds the letters of a query in their order, the best matches first; all for an empty query. */
export function workspaceSymbols(snapshots: readonly Snapshot[], query: string): readonly FoundSymbol[] {
  const wanted = query.toLowerCase().replaceAll(/\s/g, '');
  const found = snapshots.flatMap(({ uri, document, recipe }) =>
    allSections.flatMap(section =>
      [...recipe.sections[section].keys()].flatMap(name => {
        const rank = rankOf(name, wanted);
        const nameRange =
          rank === undefined ? undefined : rangeOf(document, { path: [section, name], part: { kind: 'key' } });
        return rank === undefined || nameRange === undefined ? [] : [{ name, section, uri, nameRange, rank }];
      }),
    ),
  );
  return found.sort((a, b) => a.rank - b.rank).map(({ rank: _, ...symbol }) => symbol);
}

/** 0 where a name begins with what is wanted, 1 where it holds it, 2 where its letters stand in it; undefined where they do not. */
function rankOf(name: string, wanted: string): number | undefined {
  const lower = name.toLowerCase();
  if (lower.startsWith(wanted)) return 0;
  if (lower.includes(wanted)) return 1;
  let at = 0;
  for (const letter of lower) if (letter === wanted[at]) at++;
  return at === wanted.length ? 2 : undefined;
}
