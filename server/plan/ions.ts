// What each ion key of a water report stands for: the substance its mass counts, its charge, and the element it brings.

import type { Place } from '../../schema/place.ts';
import type { AnyQuantity } from '../../schema/quantity.ts';
import type { IonKey } from '../../schema/sections/water.ts';
import { readCompound } from '../chemistry/compound.ts';
import type { ElementSymbol } from '../chemistry/tables/elements.ts';
import { assumed, type Figure, formula, given } from './figure.ts';

interface IonRow {
  /** The substance whose mass is stated, and the charge it carries as dissolved. */
  readonly counts: string;
  readonly charge: number;
  /** The element that plants take from it. */
  readonly brings?: ElementSymbol;
  /** The same ion stated otherwise: one of the two may be written. */
  readonly sameAs?: IonKey;
}

export const ions: Readonly<Record<IonKey, IonRow>> = {
  Ca: { counts: 'Ca', charge: 2, brings: 'Ca' },
  Mg: { counts: 'Mg', charge: 2, brings: 'Mg' },
  K: { counts: 'K', charge: 1, brings: 'K' },
  Na: { counts: 'Na', charge: 1, brings: 'Na' },
  NH4: { counts: 'NH4', charge: 1, brings: 'N', sameAs: 'NH4-N' },
  NO3: { counts: 'NO3', charge: -1, brings: 'N', sameAs: 'NO3-N' },
  Cl: { counts: 'Cl', charge: -1, brings: 'Cl' },
  SO4: { counts: 'SO4', charge: -2, brings: 'S', sameAs: 'SO4-S' },
  PO4: { counts: 'PO4', charge: -3, brings: 'P', sameAs: 'PO4-P' },
  HCO3: { counts: 'HCO3', charge: -1 },
  B: { counts: 'B', charge: 0, brings: 'B' },
  Si: { counts: 'Si', charge: 0, brings: 'Si' },
  'NO3-N': { counts: 'N', charge: -1, brings: 'N', sameAs: 'NO3' },
  'NH4-N': { counts: 'N', charge: 1, brings: 'N', sameAs: 'NH4' },
  'PO4-P': { counts: 'P', charge: -3, brings: 'P', sameAs: 'PO4' },
  'SO4-S': { counts: 'S', charge: -2, brings: 'S', sameAs: 'SO4' },
};

const molarMasses = new Map(
  Object.values(ions).map(({ counts }) => {
    const compound = readCompound(counts);
    return [counts, compound.kind === 'compound' ? compound.molarMass_g_per_mol : Number.NaN] as const;
  }),
);

/** Molar mass of what a key's mass counts, g/mol. */
export function countedMolarMass(key: IonKey): number {
  return molarMasses.get(ions[key].counts) ?? Number.NaN;
}

/** An ion's amount, from mg/L of what is named, mmol/L or meq/L. What has no charge cannot be stated in meq/L. */
export function ionAmount(
  key: IonKey,
  written: AnyQuantity<'mass-per-volume' | 'amount-per-volume' | 'charge-per-volume'>,
  at: Place,
): Figure<'amount-per-volume'> {
  switch (written.dimension) {
    case 'mass-per-volume':
      return amountOfMass({ mass: given(written, at), molarMass: molarMassOf(key) });
    case 'amount-per-volume':
      return given(written, at);
    case 'charge-per-volume':
      return amountOfCharge({ stated: given(written, at), charge: chargeOf(key) });
  }
}

function molarMassOf(key: IonKey): Figure<'mass-per-amount'> {
  const quantity = { dimension: 'mass-per-amount', value: countedMolarMass(key) } as const;
  return assumed(quantity, `molar mass of ${ions[key].counts}`, 'ciaaw-2021');
}

function chargeOf(key: IonKey): Figure<'number'> {
  return assumed({ dimension: 'number', value: Math.abs(ions[key].charge) }, `charges of ${key}`, 'tidemark-design');
}

export const amountOfMass = formula({
  id: 'ion-by-mass',
  says: 'the amount of the ion',
  statement: 'amount = mass ÷ molar mass',
  source: 'ciaaw-2021',
  takes: { mass: 'mass-per-volume', molarMass: 'mass-per-amount' },
  gives: 'amount-per-volume',
  evaluate: ({ mass, molarMass }) => mass / molarMass,
});

export const amountOfCharge = formula({
  id: 'ion-by-charge',
  says: 'the amount of the ion',
  statement: 'amount = stated ÷ charge',
  source: 'tidemark-design',
  takes: { stated: 'charge-per-volume', charge: 'number' },
  gives: 'amount-per-volume',
  evaluate: ({ stated, charge }) =>
    charge > 0 ? stated / charge : { reason: 'a mass or amount: it carries no charge' },
});
