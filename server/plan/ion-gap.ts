// How far a water report's ions are from balance. Apart from the water, because it says how far to trust the report, not the water.

import type { IonGap } from '../chemistry/water.ts';
import { type Figure, formula } from './figure.ts';
import type { WaterPlan } from './water.ts';

export interface GapFigures {
  /** Above zero anions are missing from the report, below zero cations. */
  readonly charge: Figure<'charge-per-volume'>;
  readonly share: Figure<'fraction'>;
  /** Whether the report names both cations and anions, so that a gap says something. */
  readonly isWhole: boolean;
  /** Whether it is more than a good analysis leaves. */
  readonly isLarge: boolean;
}

/** Undefined where the water cannot be solved. */
export function ionGapOf({ solved }: WaterPlan): GapFigures | undefined {
  if (solved.kind === 'unknown') return undefined;
  const { dissolved, alkalinity } = solved.inputs;
  const charge = ionGap({ dissolved, alkalinity }, solved.gap);
  const share = ionGapShare({ dissolved, alkalinity }, solved.gap);
  const { cations, anions } = solved.stated;
  const isLarge = share.kind === 'known' && tolerated < Math.abs(share.quantity.value);
  return { charge, share, isWhole: cations > 0 && (anions > 0 || alkalinity.length > 0), isLarge };
}

/** Standard Methods 1030 E takes 2 to 5 % for a good analysis of drinking water, by how many ions it has. */
const tolerated = 0.05;

const takes = { dissolved: ['mass-per-volume'], alkalinity: ['charge-per-volume'] } as const;

export const ionGap = formula({
  id: 'ion-gap',
  says: 'what the ions of the report lack to balance',
  statement: 'gap = charge of cations − charge of anions, with the carbonate that pH and alkalinity give',
  source: 'standard-methods-1030',
  takes,
  gives: 'charge-per-volume',
  evaluate: (_, gap: IonGap) => gap.charge * 1000,
});

export const ionGapShare = formula({
  id: 'ion-gap-share',
  says: 'the same as a share of all charges',
  statement: 'share = gap ÷ (charge of cations + charge of anions)',
  source: 'standard-methods-1030',
  takes,
  gives: 'fraction',
  evaluate: (_, gap: IonGap) => gap.percent / 100,
});
