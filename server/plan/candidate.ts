// A feed as a formulation may use it: what a millilitre or gram of it brings to a litre, and how much its label allows.

import { valueAt } from '../../schema/place.ts';
import { addTotals, type Totals } from '../chemistry/totals.ts';
import type { Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { sharesOf } from './elements.ts';
import { feedTotals } from './feed-totals.ts';
import { numberOf, type Want } from './figure.ts';

export interface Candidate {
  readonly feed: Sourced<Feed>;
  readonly unit: 'mL' | 'g';
  /** mg of each element that one unit in a litre brings. */
  readonly elements: ReadonlyMap<string, number>;
  readonly perUnit: Totals;
  /** The label's rate, in units per litre. */
  readonly limit: number;
  /** A small amount to try slopes with. */
  readonly trial: number;
}

/** None for a feed that says nothing of what is in it; what else is missing is added to the wants. */
export function candidateOf(feed: Sourced<Feed>, wants: Want[]): readonly Candidate[] {
  const { kind, perGram } = feedTotals(feed);
  if (kind === 'nothing') return [];
  const { label, density } = feed.value;
  const isLiquid = density !== undefined || label?.dimension === 'volume-per-volume';
  if (isLiquid && density === undefined) {
    wants.push({ says: `the density of ${feed.name}`, at: valueAt([...feed.path, 'density'], feed.file) });
    return [];
  }
  // A density counts mg per litre: a millilitre has a millionth of it in grams.
  const gramsPerUnit = isLiquid ? (density?.value ?? 0) / 1e6 : 1;
  const elements = new Map(
    [...sharesOf(feed)].map(([element, share]) => [element, (numberOf(share) ?? 0) * 1000 * gramsPerUnit]),
  );
  const limit =
    label === undefined
      ? Number.POSITIVE_INFINITY
      : label.dimension === 'volume-per-volume'
        ? label.value
        : label.value / 1000 / gramsPerUnit;
  return [
    { feed, unit: isLiquid ? 'mL' : 'g', elements, perUnit: addTotals({}, perGram, gramsPerUnit), limit, trial: 0.01 },
  ];
}
