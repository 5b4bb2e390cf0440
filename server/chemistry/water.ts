// A source water from what is known of it: pH and alkalinity, alkalinity alone, or a lab report without alkalinity.
// Separate because a water's carbonate is inferred, never stated.

import type { Point } from './bracket.ts';
import { crossingBetween } from './bracket.ts';
import { highestPH, lowestPH } from './charge.ts';
import type { Medium } from './network.ts';
import { mediumAt } from './network.ts';
import type { Air, Solution } from './solution.ts';
import { alkalinityOf, poolFor, solutionOf, solve, solveAt } from './solution.ts';
import { fillAt, pour } from './speciate.ts';
import type { Species } from './tables/species.ts';
import { isSpecies, species } from './tables/species.ts';
import type { Totals } from './totals.ts';

/** What is known of a water. Alkalinity is in eq/kg; `ions` leaves carbonate out. */
export type WaterReport =
  | { readonly kind: 'pH-and-alkalinity'; readonly pH: number; readonly alkalinity: number }
  | { readonly kind: 'alkalinity-in-air'; readonly alkalinity: number; readonly air?: Exclude<Air, 'closed'> }
  | { readonly kind: 'pH-in-air'; readonly pH: number; readonly air?: Exclude<Air, 'closed'> }
  | { readonly kind: 'ions-in-air'; readonly air?: Exclude<Air, 'closed'> };

export interface Water {
  readonly kind: 'water';
  /** Its totals carry the gap as `imbalance`, so that the water keeps its pH when it is mixed. */
  readonly solution: Solution;
  readonly gap: IonGap;
}

/** How far the listed ions are from balance, hydrogen, hydroxide and carbonate included. */
export interface IonGap {
  /** Cations less anions, eq/kg: positive where anions are missing from the list. */
  readonly charge: number;
  /** The same in percent of their sum, as Standard Methods 1030 E checks an analysis. */
  readonly percent: number;
}

/**
 * No water can be as reported: its other ions alone carry more alkalinity at that pH, or it would hold so much CO2 that
 * it boils off at once (above 1 atm). `reachable` is the nearest alkalinity that can be, eq/kg.
 */
export interface ImpossibleWater {
  readonly kind: 'impossible-water';
  readonly why: 'alkalinity-too-low' | 'alkalinity-too-high';
  readonly reachable: number;
}

/** A water's carbonate from what is known, its ions balanced by a named gap; `ions` holds no carbonate. */
export function waterFrom(
  report: WaterReport,
  ions: Totals,
  temperature_C: number,
  medium: Medium = mediumAt(temperature_C),
): Water | ImpossibleWater {
  const known = { totals: ions, temperature_C, medium };
  switch (report.kind) {
    case 'pH-and-alkalinity':
      return fromAlkalinityAt(report.pH, report.alkalinity, ions, medium);
    case 'alkalinity-in-air':
      return fromAlkalinityInAir(report.alkalinity, report.air ?? 'open', ions, medium);
    case 'pH-in-air':
      return waterOf(solveAt({ ...known, air: report.air ?? 'open' }, report.pH));
    case 'ions-in-air':
      return waterOf(solve({ ...known, air: report.air ?? 'open' }));
  }
}

function fromAlkalinityAt(pH: number, alkalinity: number, ions: Totals, medium: Medium): Water | ImpossibleWater {
  const { temperature_C } = medium;
  const pool = poolFor({ totals: ions, temperature_C, medium, air: 'closed' }, { CO3: 1 });
  const chargeWith = (CO3: number): number => {
    pour(pool, { ...ions, CO3 });
    return fillAt(pool, pH);
  };
  const missingWith = (CO3: number): number => {
    chargeWith(CO3);
    return alkalinityOf(pool) - alkalinity;
  };
  const none: Point = { x: 0, y: missingWith(0) };
  // Carbonate only adds to alkalinity, so what is already above cannot be mended; a rounding remainder can.
  if (none.y > Math.max(1e-6, alkalinity * 1e-3))
    return { kind: 'impossible-water', why: 'alkalinity-too-low', reachable: none.y + alkalinity };
  let carbonate = 0;
  if (none.y < 0) {
    const fizzing = solveAt({ totals: ions, temperature_C, medium, air: { CO2_atm: 1 } }, pH);
    if (fizzing.alkalinity < alkalinity)
      return { kind: 'impossible-water', why: 'alkalinity-too-high', reachable: fizzing.alkalinity };
    const most: Point = { x: fizzing.inorganicCarbon, y: fizzing.alkalinity - alkalinity };
    carbonate = crossingBetween(missingWith, none, most, { width: most.x * 1e-12, enough: 1e-13 }).at;
  }
  return waterOf(solutionOf(pool, pH, chargeWith(carbonate), 1));
}

function fromAlkalinityInAir(alkalinity: number, air: Air, ions: Totals, medium: Medium): Water {
  const { temperature_C } = medium;
  const pool = poolFor({ totals: ions, temperature_C, medium, air });
  const missingAt = (pH: number): number => {
    fillAt(pool, pH);
    return alkalinityOf(pool) - alkalinity;
  };
  // Alkalinity rises with pH without bound on both sides, so this bracket always closes.
  const low: Point = { x: lowestPH, y: missingAt(lowestPH) };
  const high: Point = { x: highestPH, y: missingAt(highestPH) };
  const found = crossingBetween(missingAt, low, high, { width: 1e-9, enough: 1e-14 });
  const residual = fillAt(pool, found.at);
  return waterOf(solutionOf(pool, found.at, residual, found.evaluations));
}

/** Hands the residual over to the imbalance and says how large it was. */
function waterOf(solution: Solution): Water {
  const gap = solution.account.residual;
  const imbalance = (solution.totals.imbalance ?? 0) - gap;
  const totals = Math.abs(gap) > 1e-12 ? { ...solution.totals, imbalance } : solution.totals;
  let sum = 0;
  for (const [key, amount] of Object.entries(solution.species)) if (isSpecies(key)) sum += chargeSize(key) * amount;
  return {
    kind: 'water',
    solution: { ...solution, totals },
    gap: { charge: gap, percent: sum === 0 ? 0 : (100 * gap) / sum },
  };
}

function chargeSize(key: Species): number {
  return Math.abs(species[key].charge);
}
