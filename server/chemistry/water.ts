// A source water from what is known of it: pH and alkalinity, alkalinity alone, or a lab report without alkalinity.
// Separate because a water's carbonate is inferred, never stated.

import { pressureOver } from './air.ts';
import type { Point } from './bracket.ts';
import { crossingBetween } from './bracket.ts';
import { protonsHeld } from './buffer.ts';
import { highestPH, lowestPH, settleAtPH } from './charge.ts';
import type { Medium } from './network.ts';
import { mediumAt } from './network.ts';
import { type Contents, contentsOf, type Pool, poolOf, pour } from './pool.ts';
import type { Air, Solution } from './solution.ts';
import { alkalinityOf, poolFor, solutionOf, solve, solveAt } from './solution.ts';
import { fillAt, settle } from './speciate.ts';
import type { Species } from './tables/species.ts';
import { components, isSpecies, species } from './tables/species.ts';
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
  const pool = poolOf(medium, ions, undefined, carbonate);
  const first = contentsOf(pool.forms, ions);
  const more = contentsOf(pool.forms, carbonate);
  let amount = 0;
  pool.pH = pH;
  const isSettled = settle(pool, {
    // A mole of carbonate brings two equivalents less the protons that it holds at this pH.
    off: () =>
      (alkalinity - alkalinityOf(pool)) / (components.CO3.alkalinity - protonsHeld(pool, pool.forms.carbonate)),
    move: by => {
      amount = Math.max(0, amount + by);
      pour(pool, first, more, amount);
    },
    width: 1e-14,
  });
  if (isSettled && amount > 0) {
    const solution = solutionOf(pool, { ...ions, CO3: amount });
    if (pressureOver(solution) <= most_atm) return waterOf(solution);
  }
  return fromAlkalinityBetween(pool, first, more, alkalinity, ions);
}

const carbonate: Totals = { CO3: 1 };

/** Partial pressure of CO2 above which it boils off at once. */
const most_atm = 1;

/** The same by a search that cannot fail, which also tells why there is no such water. */
function fromAlkalinityBetween(
  pool: Pool,
  first: Contents,
  more: Contents,
  alkalinity: number,
  ions: Totals,
): Water | ImpossibleWater {
  const { pH, medium } = pool;
  const missingWith = (CO3: number): number => {
    pour(pool, first, more, CO3);
    fillAt(pool, pH);
    return alkalinityOf(pool) - alkalinity;
  };
  const none: Point = { x: 0, y: missingWith(0) };
  // Carbonate only adds to alkalinity, so what is already above cannot be mended; a rounding remainder can.
  if (none.y > Math.max(1e-6, alkalinity * 1e-3))
    return { kind: 'impossible-water', why: 'alkalinity-too-low', reachable: none.y + alkalinity };
  let CO3 = 0;
  if (none.y < 0) {
    const { temperature_C } = medium;
    const fizzing = solveAt({ totals: ions, temperature_C, medium, air: { CO2_atm: most_atm } }, pH);
    if (fizzing.alkalinity < alkalinity)
      return { kind: 'impossible-water', why: 'alkalinity-too-high', reachable: fizzing.alkalinity };
    const most: Point = { x: fizzing.inorganicCarbon, y: fizzing.alkalinity - alkalinity };
    CO3 = crossingBetween(missingWith, none, most, { width: most.x * 1e-12, enough: 1e-13 });
  }
  missingWith(CO3);
  return waterOf(solutionOf(pool, { ...ions, CO3 }));
}

function fromAlkalinityInAir(alkalinity: number, air: Air, ions: Totals, medium: Medium): Water {
  const { temperature_C } = medium;
  const pool = poolFor({ totals: ions, temperature_C, medium, air });
  // Alkalinity rises with pH as charge falls: both count the protons that are given off.
  if (!settleAtPH(pool, 8, () => alkalinity - alkalinityOf(pool))) {
    const missingAt = (pH: number): number => {
      fillAt(pool, pH);
      return alkalinityOf(pool) - alkalinity;
    };
    // It does so without bound on both sides, so this bracket always closes.
    const low: Point = { x: lowestPH, y: missingAt(lowestPH) };
    const high: Point = { x: highestPH, y: missingAt(highestPH) };
    missingAt(crossingBetween(missingAt, low, high, { width: 1e-9, enough: 1e-14 }));
  }
  return waterOf(solutionOf(pool, ions));
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
