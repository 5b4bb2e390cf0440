// How much of a feed goes into a batch: by the label, by a rate, or as an amount.

import type { Place } from '../../schema/place.ts';
import type { AnyQuantity } from '../../schema/quantity.ts';
import type { Dose } from '../../schema/texts/dose.ts';
import type { Feed } from '../recipe/seen.ts';
import { type Figure, formula, given, givenOr, unknown } from './figure.ts';

/** A dose is a volume of a liquid or a mass of a solid. */
export type DoseFigure = Figure<'volume'> | Figure<'mass'>;
export type RateFigure = Figure<'volume-per-volume'> | Figure<'mass-per-volume'>;

/** The rate at which a feed is given, where the dose is written as one; undefined for an amount for the whole batch. */
export function rateOf(dose: Dose, at: Place, feed: Feed | undefined, feedAt: Place): RateFigure | undefined {
  if (dose.kind === 'amount') return undefined;
  if (dose.kind === 'rate') return given<'volume-per-volume' | 'mass-per-volume'>(dose.rate, at) as RateFigure;
  if (feed === undefined) return unknown([{ says: 'the feed itself', at }]);
  const label: AnyQuantity<'volume-per-volume' | 'mass-per-volume'> | undefined = feed.label;
  if (label === undefined) return unknown([{ says: 'the label’s rate', at: feedAt }]);
  const share = given(dose.share, at);
  if (label.dimension === 'volume-per-volume') {
    const rate = given(label, feedAt);
    return dose.share.value === 1 ? rate : shareOfVolumeRate({ share, label: rate });
  }
  const rate = given(label, feedAt);
  return dose.share.value === 1 ? rate : shareOfMassRate({ share, label: rate });
}

/** The dose for a whole batch. */
export function doseOf(dose: Dose, at: Place, rate: RateFigure | undefined, volume: Figure<'volume'>): DoseFigure {
  if (dose.kind === 'amount') {
    return dose.amount.dimension === 'volume' ? givenOr(dose.amount, at, '') : givenOr(dose.amount, at, '');
  }
  if (rate === undefined) return unknown([{ says: 'a rate', at }]);
  if (rate.kind === 'unknown') return volume.kind === 'unknown' ? unknown([...rate.wants, ...volume.wants]) : rate;
  return rate.quantity.dimension === 'volume-per-volume'
    ? doseByVolume({ rate: rate as Figure<'volume-per-volume'>, volume })
    : doseByMass({ rate: rate as Figure<'mass-per-volume'>, volume });
}

export const shareOfVolumeRate = formula({
  id: 'share-of-label',
  says: 'the rate that this share of the label comes to',
  statement: 'rate = share × label',
  source: 'tidemark-design',
  takes: { share: 'fraction', label: 'volume-per-volume' },
  gives: 'volume-per-volume',
  evaluate: ({ share, label }) => share * label,
});

export const shareOfMassRate = formula({
  id: 'share-of-label-by-mass',
  says: 'the rate that this share of the label comes to',
  statement: 'rate = share × label',
  source: 'tidemark-design',
  takes: { share: 'fraction', label: 'mass-per-volume' },
  gives: 'mass-per-volume',
  evaluate: ({ share, label }) => share * label,
});

export const doseByVolume = formula({
  id: 'dose-by-volume',
  says: 'the dose for the whole batch',
  statement: 'dose = rate × volume',
  source: 'tidemark-design',
  takes: { rate: 'volume-per-volume', volume: 'volume' },
  gives: 'volume',
  // A rate counts mL per litre, a volume litres.
  evaluate: ({ rate, volume }) => (rate * volume) / 1000,
});

export const doseByMass = formula({
  id: 'dose-by-mass',
  says: 'the dose for the whole batch',
  statement: 'dose = rate × volume',
  source: 'tidemark-design',
  takes: { rate: 'mass-per-volume', volume: 'volume' },
  gives: 'mass',
  // A rate counts mg per litre, a mass grams.
  evaluate: ({ rate, volume }) => (rate * volume) / 1000,
});

/** The rate that a dose for a whole batch comes to. */
export function rateOfDose(dose: DoseFigure, volume: Figure<'volume'>): RateFigure {
  if (dose.kind === 'unknown') return dose;
  return dose.quantity.dimension === 'volume'
    ? rateOfVolume({ dose: dose as Figure<'volume'>, volume })
    : rateOfMass({ dose: dose as Figure<'mass'>, volume });
}

export const rateOfVolume = formula({
  id: 'rate-of-dose',
  says: 'the rate that the dose comes to',
  statement: 'rate = dose ÷ volume',
  source: 'tidemark-design',
  takes: { dose: 'volume', volume: 'volume' },
  gives: 'volume-per-volume',
  evaluate: ({ dose, volume }) => (volume > 0 ? (dose * 1000) / volume : { reason: 'a volume above zero' }),
});

export const rateOfMass = formula({
  id: 'rate-of-dose-by-mass',
  says: 'the rate that the dose comes to',
  statement: 'rate = dose ÷ volume',
  source: 'tidemark-design',
  takes: { dose: 'mass', volume: 'volume' },
  gives: 'mass-per-volume',
  evaluate: ({ dose, volume }) => (volume > 0 ? (dose * 1000) / volume : { reason: 'a volume above zero' }),
});
