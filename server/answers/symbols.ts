// The outline of a recipe: its sections, the entries by name with what each comes to, and the log by date.

import { keyPart, type Path } from '../../schema/place.ts';
import { type SectionName, sectionNames } from '../../schema/section-names.ts';
import { pairRange, rangeOf } from '../syntax/place.ts';
import type { Range } from '../syntax/tree.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { detailOf, logDetail, logName } from './detail.ts';

export interface RecipeSymbol {
  readonly name: string;
  /** What it comes to, as `20 L, 40 mL green`; may be empty. */
  readonly detail: string;
  readonly kind: 'section' | 'entry' | 'log-entry';
  /** All of it, its name included. */
  readonly range: Range;
  readonly nameRange: Range;
  readonly children: readonly RecipeSymbol[];
}

/** In the order of the text. */
export function symbols(snapshot: Snapshot): readonly RecipeSymbol[] {
  const sections = Object.keys(sectionNames).filter(isSection);
  const all = [...sections.map(section => sectionSymbol(snapshot, section)), logSymbol(snapshot)];
  return inOrder(all.filter(symbol => symbol !== undefined));
}

function sectionSymbol(snapshot: Snapshot, section: SectionName): RecipeSymbol | undefined {
  const names = [...snapshot.recipe.sections[section].keys()].filter(name => name !== '');
  const children = names.flatMap(name => {
    const symbol = symbolAt(snapshot, [section, name], name, 'entry', detailOf(snapshot, section, name), []);
    return symbol === undefined ? [] : [symbol];
  });
  return symbolAt(snapshot, [section], section, 'section', '', inOrder(children));
}

function logSymbol(snapshot: Snapshot): RecipeSymbol | undefined {
  const { log, show } = snapshot.recipe;
  const children = log.flatMap((entry, index) => {
    if (entry === undefined) return [];
    const symbol = symbolAt(snapshot, ['log', index], logName(entry, index), 'log-entry', logDetail(entry, show), []);
    return symbol === undefined ? [] : [symbol];
  });
  return symbolAt(snapshot, ['log'], 'log', 'section', '', children);
}

function symbolAt(
  { document }: Snapshot,
  path: Path,
  name: string,
  kind: RecipeSymbol['kind'],
  detail: string,
  children: readonly RecipeSymbol[],
): RecipeSymbol | undefined {
  const range = pairRange(document, path);
  const nameRange = rangeOf(document, { path, part: keyPart });
  return range === undefined || nameRange === undefined
    ? undefined
    : { name, detail, kind, range, nameRange, children };
}

function inOrder(symbols: readonly RecipeSymbol[]): readonly RecipeSymbol[] {
  return [...symbols].sort((a, b) => a.range.from - b.range.from);
}

function isSection(key: string): key is SectionName {
  return Object.hasOwn(sectionNames, key);
}
