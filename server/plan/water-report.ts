// What a recipe states of a source water, as the chemistry asks for it: which kind of report it is, the ions in moles, the
// alkalinity; and why no water can be as stated.

import { keyAt, type Place, valueAt } from '../../schema/place.ts';
import { ionKeys } from '../../schema/sections/water.ts';
import type { Component } from '../chemistry/tables/species.ts';
import { chargeOfTotals, type Totals } from '../chemistry/totals.ts';
import { type WaterReport as ChemicalReport, type Water as SolvedWater, waterFrom } from '../chemistry/water.ts';
import type { Water } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type Figure, formula, given, numberOf, type Unknown, unknown } from './figure.ts';
import { ionAmount, ions } from './ions.ts';

/** Why no water can be as it is stated, and the nearest that can be. */
export interface Impossible {
  readonly why: 'alkalinity-too-low' | 'alkalinity-too-high' | 'acid-with-alkalinity';
  /** meq/L. */
  readonly nearest: number;
}

export interface StatedIons {
  readonly totals: Totals;
  readonly cations: number;
  readonly anions: number;
}

export type WaterFound =
  | { readonly kind: 'found'; readonly water: SolvedWater; readonly isByDifference: boolean }
  | { readonly kind: 'none'; readonly missing: Unknown; readonly impossible?: Impossible };

/** At and below this pH a titration finds no alkalinity: it is its end point (Standard Methods 2320). */
const endPoint_pH = 4.3;

/** mg/L CaCO3 of a milliequivalent. */
const asCaCO3 = 50.0435;

/** Below this a test kit tells nothing, meq/L: about 1 mg/L CaCO3. */
const kitError = 0.02;

/** The water that fits what is stated, or what is missing or cannot be. */
export function findWater(
  water: Sourced<Water>,
  stated: StatedIons,
  alkalinity: Figure<'charge-per-volume'> | undefined,
  temperature_C: number,
): WaterFound {
  const { pH } = water.value;
  const meq = numberOf(alkalinity);
  if (pH !== undefined && pH < endPoint_pH && meq !== undefined && meq > kitError) {
    return impossible(water, { why: 'acid-with-alkalinity', nearest: 0 });
  }
  const report = reportOf(water.value, meq, stated);
  if (report === undefined) {
    const says = 'the alkalinity (or `air: open`, where the pH was measured after standing in air)';
    return { kind: 'none', missing: unknown([{ says, at: keyAt([...water.path, 'alkalinity'], water.file) }]) };
  }
  const totals = withCounterIons(stated, meq);
  const found = waterFrom(report, totals, temperature_C);
  if (found.kind === 'water') return { kind: 'found', water: found, isByDifference: report.kind === 'ions-in-air' };
  const nearest = found.reachable * 1000;
  if (pH !== undefined && meq !== undefined && Math.abs(nearest - meq) < kitError) {
    const again = waterFrom({ kind: 'pH-and-alkalinity', pH, alkalinity: found.reachable }, totals, temperature_C);
    if (again.kind === 'water') return { kind: 'found', water: again, isByDifference: false };
  }
  return impossible(water, { why: found.why, nearest });
}

function reportOf({ pH, air }: Water, meq: number | undefined, stated: StatedIons): ChemicalReport | undefined {
  const alkalinity = meq === undefined ? undefined : meq / 1000;
  if (pH !== undefined && alkalinity !== undefined) {
    // Mineral acid is no alkalinity below zero in a report: its pH says more.
    return pH < endPoint_pH ? { kind: 'pH-in-air', pH } : { kind: 'pH-and-alkalinity', pH, alkalinity };
  }
  if (alkalinity !== undefined) return { kind: 'alkalinity-in-air', alkalinity };
  if (pH !== undefined) return air === 'open' ? { kind: 'pH-in-air', pH } : undefined;
  const isWhole = stated.cations > 0 && stated.anions > 0;
  return isWhole || air === 'open' ? { kind: 'ions-in-air' } : undefined;
}

/**
 * Where a report names no cation, the cations that alkalinity and anions need are there all the same: they conduct and pair, so
 * they are kept as a charge of their own and not as an error of the report.
 */
function withCounterIons({ totals, cations, anions }: StatedIons, meq = 0): Totals {
  if (cations > 0) return totals;
  const needed = meq / 1000 - (anions > 0 ? chargeOfTotals(totals) : 0);
  return needed > 1e-6 ? { ...totals, unknownCharge: needed } : totals;
}

function impossible(water: Sourced<Water>, found: Impossible): WaterFound {
  const amount = `${Math.round(found.nearest * asCaCO3)} mg/L CaCO3`;
  const says = {
    'alkalinity-too-low': `an alkalinity that its other ions allow at this pH, ${amount} or more`,
    'alkalinity-too-high': `an alkalinity that can be at this pH, ${amount} or less`,
    'acid-with-alkalinity': `an alkalinity of zero, or a pH above ${endPoint_pH}, below which no alkalinity is left`,
  }[found.why];
  const at: Place = valueAt([...water.path, 'alkalinity'], water.file);
  return { kind: 'none', missing: unknown([{ says, at }]), impossible: found };
}

/** The alkalinity that is stated; a report's bicarbonate says the same where no alkalinity stands. */
export function alkalinityOf(water: Sourced<Water>): Figure<'charge-per-volume'> | undefined {
  const { alkalinity, ions: stated } = water.value;
  if (alkalinity !== undefined) return given(alkalinity, valueAt([...water.path, 'alkalinity'], water.file));
  const bicarbonate = stated?.HCO3;
  if (bicarbonate === undefined) return undefined;
  return alkalinityOfBicarbonate({
    amount: ionAmount('HCO3', bicarbonate, valueAt([...water.path, 'ions', 'HCO3'], water.file)),
  });
}

const componentOfIon: Readonly<Partial<Record<string, Component>>> = {
  Ca: 'Ca',
  Mg: 'Mg',
  K: 'K',
  Na: 'Na',
  NH4: 'NH4',
  NO3: 'NO3',
  Cl: 'Cl',
  SO4: 'SO4',
  PO4: 'PO4',
  B: 'B',
  Si: 'Si',
};

/** The stated ions as components, mol/L; of an ion stated twice the one named by its own formula. */
export function statedIons(water: Sourced<Water>): StatedIons {
  const totals: Partial<Record<Component, number>> = {};
  let cations = 0;
  let anions = 0;
  for (const key of ionKeys) {
    const written = water.value.ions?.[key];
    const component = componentOfIon[key.split('-')[0] ?? key];
    if (written === undefined || component === undefined || totals[component] !== undefined) continue;
    const amount = numberOf(ionAmount(key, written, valueAt([...water.path, 'ions', key], water.file)));
    if (amount === undefined) continue;
    totals[component] = amount / 1000;
    if (ions[key].charge > 0) cations += 1;
    if (ions[key].charge < 0) anions += 1;
  }
  return { totals, cations, anions };
}

export const alkalinityOfBicarbonate = formula({
  id: 'alkalinity-of-bicarbonate',
  says: 'the alkalinity that a report gives as bicarbonate',
  statement: 'alkalinity = bicarbonate',
  source: 'standard-methods-2320',
  takes: { amount: 'amount-per-volume' },
  gives: 'charge-per-volume',
  evaluate: ({ amount }) => amount,
});
