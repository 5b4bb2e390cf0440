// Elements in a litre, in one line: `N 115, P 20.1, K 57.3 mg/L`.

import { unitOf } from '../../schema/find-unit.ts';
import { targetElements } from '../../schema/sections/target.ts';
import type { ElementSymbol } from '../chemistry/tables/elements.ts';
import type { Figure, Want } from '../plan/figure.ts';
import { countIn } from './amount.ts';

/** The known elements with their mg/L, in the order of a label; undefined where none is known. */
export function elementsText(of: ReadonlyMap<ElementSymbol, Figure<'mass-per-volume'>>): string | undefined {
  const known = [...of]
    .sort(([a], [b]) => rank(a) - rank(b))
    .flatMap(([element, figure]) =>
      figure.kind === 'known' ? [`${element} ${countIn(figure.quantity, milligrams)}`] : [],
    );
  return known.length === 0 ? undefined : `${known.join(', ')} mg/L`;
}

/** What is missing for the elements that are not known, each want once. */
export function elementWants(of: ReadonlyMap<ElementSymbol, Figure>): readonly Want[] {
  const wants = [...of.values()].flatMap(figure => (figure.kind === 'unknown' ? figure.wants : []));
  return [...new Map(wants.map(want => [want.says, want])).values()];
}

/** The place of an element in the order in which labels list them. */
function rank(element: ElementSymbol): number {
  const at = listed.indexOf(element);
  return at === -1 ? listed.length : at;
}

const listed: readonly string[] = targetElements;

const milligrams = unitOf('mg/L');
