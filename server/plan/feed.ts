// A feed worked out by itself: what it is made of, and what a litre holds of it at the rate that its label gives.

import { valueAt } from '../../schema/place.ts';
import type { ElementSymbol } from '../chemistry/tables/elements.ts';
import type { Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { RateFigure } from './dose.ts';
import { type ElementShares, sharesOf } from './elements.ts';
import { type Figure, formula, given, givenOr, unknown } from './figure.ts';
import { memo } from './memo.ts';

export interface FeedPlan {
  readonly feed: Sourced<Feed>;
  readonly label: RateFigure;
  /** The shares of its mass that are elements. */
  readonly shares: ElementShares;
  /** What it adds to a litre at the label's rate, by element. */
  readonly atLabel: ReadonlyMap<ElementSymbol, Figure<'mass-per-volume'>>;
}

export const planFeed = memo((feed: Sourced<Feed>): FeedPlan => {
  const shares = sharesOf(feed);
  const label = labelOf(feed);
  const atLabel = new Map([...shares].map(([element, share]) => [element, elementAtRate(feed, label, share)]));
  return { feed, label, shares, atLabel };
});

function labelOf(feed: Sourced<Feed>): RateFigure {
  const at = valueAt([...feed.path, 'label'], feed.file);
  const { label } = feed.value;
  if (label === undefined) return unknown([{ says: `the label’s rate of ${feed.name}`, at }]);
  return label.dimension === 'volume-per-volume' ? given(label, at) : given(label, at);
}

function elementAtRate(feed: Sourced<Feed>, rate: RateFigure, share: Figure<'fraction'>): Figure<'mass-per-volume'> {
  if (rate.kind === 'unknown') return rate;
  if (rate.quantity.dimension === 'mass-per-volume') {
    return elementAtMassRate({ rate: rate as Figure<'mass-per-volume'>, share });
  }
  const at = valueAt([...feed.path, 'density'], feed.file);
  const density = givenOr(feed.value.density, at, `the density of ${feed.name}`);
  return elementAtVolumeRate({ rate: rate as Figure<'volume-per-volume'>, density, share });
}

export const elementAtVolumeRate = formula({
  id: 'element-at-rate-of-liquid',
  says: 'the element in a litre at this rate',
  statement: 'element = rate × density × share',
  source: 'aapfco-labels',
  takes: { rate: 'volume-per-volume', density: 'mass-per-volume', share: 'fraction' },
  gives: 'mass-per-volume',
  // A rate counts mL per litre, a density mg per litre.
  evaluate: ({ rate, density, share }) => (rate * density * share) / 1000,
});

export const elementAtMassRate = formula({
  id: 'element-at-rate-of-solid',
  says: 'the element in a litre at this rate',
  statement: 'element = rate × share',
  source: 'aapfco-labels',
  takes: { rate: 'mass-per-volume', share: 'fraction' },
  gives: 'mass-per-volume',
  evaluate: ({ rate, share }) => rate * share,
});
