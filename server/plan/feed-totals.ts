// What a gram of a feed adds to a solution, in the components that the chemistry counts. A salt is known whole; of a labelled
// feed some ions are not on the label, and the charge they must carry is kept as a charge of its own.

import { readCompound } from '../chemistry/compound.ts';
import { dissolve } from '../chemistry/salt.ts';
import { type ElementSymbol, elements } from '../chemistry/tables/elements.ts';
import type { Component } from '../chemistry/tables/species.ts';
import { addTotals, chargeOfTotals, type Totals } from '../chemistry/totals.ts';
import type { Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { sharesOf } from './elements.ts';
import { numberOf } from './figure.ts';
import { memo } from './memo.ts';

export interface FeedTotals {
  /** Moles per gram, with the unknown charge. */
  readonly perGram: Totals;
  /** `whole`: a salt, every ion known. `label`: what the label states, its counter-ions by their charge. */
  readonly kind: 'whole' | 'label' | 'nothing';
  /** Nitrogen that the label does not split into forms is counted as nitrate. */
  readonly nitrogenUnsplit: boolean;
}

export const feedTotals = memo((feed: Sourced<Feed>): FeedTotals => {
  const { formula, purity } = feed.value;
  const compound = formula === undefined ? undefined : readCompound(formula);
  if (compound?.kind === 'compound') {
    const share = purity?.value ?? 1;
    const perGram = addTotals({}, dissolve(compound).totals, share / compound.molarMass_g_per_mol);
    return { perGram, kind: 'whole', nitrogenUnsplit: false };
  }
  return labelTotals(feed);
});

/** Elements of a label that are one component of the solution. Iron and the like are too dilute to move the pH. */
const components: readonly (readonly [ElementSymbol, Component])[] = [
  ['P', 'PO4'],
  ['K', 'K'],
  ['Ca', 'Ca'],
  ['Mg', 'Mg'],
  ['S', 'SO4'],
  ['Cl', 'Cl'],
  ['Na', 'Na'],
  ['B', 'B'],
  ['Si', 'Si'],
];

function labelTotals(feed: Sourced<Feed>): FeedTotals {
  const shares = sharesOf(feed);
  if (shares.size === 0) return { perGram: {}, kind: 'nothing', nitrogenUnsplit: false };
  const perGram: Partial<Record<Component, number>> = {};
  for (const [element, component] of components) {
    const share = numberOf(shares.get(element)) ?? 0;
    if (share > 0) perGram[component] = share / elements[element].weight;
  }
  const perShare = 1 / elements.N.weight;
  const { nitrate = none, ammonium = none, urea = none } = feed.value.nitrogen ?? {};
  const split = nitrate.value + ammonium.value + urea.value;
  const unsplit = Math.max(0, (numberOf(shares.get('N')) ?? 0) - split);
  const isUnsplit = unsplit > split / 100;
  perGram.NO3 = (nitrate.value + (isUnsplit ? unsplit : 0)) * perShare;
  perGram.NH4 = ammonium.value * perShare;
  // One molecule of urea holds two atoms of nitrogen.
  perGram.urea = (urea.value * perShare) / 2;
  // Concentrates are near neutral salts of dihydrogen phosphate, so each phosphate brings two protons.
  const unknownCharge = -chargeOfTotals(perGram) - 2 * (perGram.PO4 ?? 0);
  return { perGram: { ...perGram, unknownCharge }, kind: 'label', nitrogenUnsplit: isUnsplit };
}

const none = { value: 0 };
