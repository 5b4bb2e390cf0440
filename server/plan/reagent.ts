// An adjuster as the chemistry sees it: what one millilitre or gram adds, or the response that is written in its place.

import { valueAt } from '../../schema/place.ts';
import type { Quantity } from '../../schema/quantity.ts';
import { acidKeys, baseKeys } from '../../schema/sections/adjuster.ts';
import { type Composition, directionOf, perGram, perMillilitre } from '../chemistry/reagent.ts';
import { type ReagentKey, reagents } from '../chemistry/tables/acids.ts';
import type { Totals } from '../chemistry/totals.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type Unknown, unknown } from './figure.ts';
import { memo } from './memo.ts';
import { unreadAny, unreadIn } from './unread.ts';

/** How an adjuster is dosed: liquids by volume, solids by mass. */
export type DosedBy = 'mL' | 'g';

export type Reagent =
  | {
      readonly kind: 'composition';
      readonly unit: DosedBy;
      /** Moles that one mL or g adds. */
      readonly perUnit: Totals;
      readonly does: 'acid' | 'base';
      readonly composition: Composition;
    }
  | {
      readonly kind: 'response';
      readonly unit: DosedBy;
      /** Change of pH for one mL or g per litre. */
      readonly pHPerUnit: number;
      readonly does: 'acid' | 'base';
    };

/** What is known of an adjuster, or what is missing. A composition counts before a response. */
export const reagentOf = memo((adjuster: Sourced<Adjuster>): Reagent | Unknown => {
  const { acid, base, density, response } = adjuster.value;
  const unread = [
    ...unreadIn(adjuster.value, ['acid', 'base', 'density'], adjuster.path, adjuster.file),
    ...unreadAny(acid, [...adjuster.path, 'acid'], adjuster.file),
    ...unreadAny(base, [...adjuster.path, 'base'], adjuster.file),
  ];
  if (unread.length > 0) return unknown(unread);
  const composition = compositionOf(adjuster.value);
  const does = directionOf(composition);
  if (does !== undefined) {
    const liquid = density === undefined ? liquidOf(composition) : undefined;
    if (liquid !== undefined) {
      const says = `the density of ${adjuster.name}: ${liquid} is a liquid`;
      return unknown([{ says, at: valueAt([...adjuster.path, 'density'], adjuster.file) }]);
    }
    // A density counts mg per litre, the chemistry kilograms.
    const perUnit = density === undefined ? perGram(composition) : perMillilitre(composition, density.value / 1e6);
    return { kind: 'composition', unit: density === undefined ? 'g' : 'mL', perUnit, does, composition };
  }
  if (response !== undefined && response.pH !== 0 && response.at.value > 0) {
    const byVolume = response.at.dimension === 'volume-per-volume';
    const perLitre = byVolume ? response.at.value : response.at.value / 1000;
    const pHPerUnit = response.pH / perLitre;
    return { kind: 'response', unit: byVolume ? 'mL' : 'g', pHPerUnit, does: pHPerUnit < 0 ? 'acid' : 'base' };
  }
  const says =
    acid !== undefined && base !== undefined
      ? `either an acid or a base in ${adjuster.name}`
      : `the strength of ${adjuster.name}`;
  return unknown([{ says, at: valueAt(adjuster.path, adjuster.file) }]);
});

/** The shares by mass that an adjuster states. */
export function compositionOf({ acid, base }: Adjuster): Composition {
  const composition: Partial<Record<ReagentKey, number>> = {};
  for (const key of acidKeys) take(key, acid?.[key]);
  for (const key of baseKeys) take(key, base?.[key]);
  return composition;

  function take(key: ReagentKey, share: Quantity<'fraction'> | undefined): void {
    if (share !== undefined && share.value > 0) composition[key] = share.value;
  }
}

/** Acids that are sold and poured as liquids at any strength. */
const poured = ['phosphoric', 'nitric', 'sulfuric', 'hydrochloric', 'acetic'] as const satisfies ReagentKey[];

/** Flakes and pellets of these hold at least so much; what holds less is a solution. */
const leastSolid = { KOH: 0.8, NaOH: 0.9 } as const satisfies Partial<Record<ReagentKey, number>>;

/** What of a composition can only be a liquid, by name; undefined where it may be a powder, which is dosed in grams. */
export function liquidOf(composition: Composition): string | undefined {
  const acid = poured.find(key => composition[key] !== undefined);
  if (acid !== undefined) return reagents[acid].title;
  const lye = (['KOH', 'NaOH'] as const).find(key => {
    const share = composition[key];
    return share !== undefined && share < leastSolid[key];
  });
  return lye === undefined ? undefined : `${reagents[lye].title} of this strength`;
}

/** An amount of an adjuster in its own unit; undefined where it is stated in the other kind and no density tells. */
export function amountIn(
  unit: DosedBy,
  amount: { readonly dimension: 'volume' | 'mass'; readonly value: number },
  adjuster: Sourced<Adjuster>,
): number | undefined {
  const gPerMl = adjuster.value.density === undefined ? undefined : adjuster.value.density.value / 1e6;
  if (amount.dimension === 'volume') {
    const mL = amount.value * 1000;
    if (unit === 'mL') return mL;
    return gPerMl === undefined ? undefined : mL * gPerMl;
  }
  if (unit === 'g') return amount.value;
  return gPerMl === undefined ? undefined : amount.value / gPerMl;
}
