// Totals in, solution out: the one door to the solver, and the account it hands back.

import { balance } from './charge.ts';
import type { Medium } from './network.ts';
import { inerts, mediumAt, members } from './network.ts';
import type { Pool } from './speciate.ts';
import { fillAt, poolOf } from './speciate.ts';
import { gases } from './tables/gases.ts';
import type { Species } from './tables/species.ts';
import { components, isSpecies } from './tables/species.ts';
import type { Totals } from './totals.ts';

/** Solves for pH: the closed vessel keeps its carbonate, the open one takes up or loses CO2 until in balance with air. */
export function solve(question: Question & { readonly near?: number }): Solution {
  const pool = poolFor(question);
  const found = balance(pool, question.near);
  return solutionOf(pool, found.at, found.residual, found.evaluations);
}

/** The same at a pH that is known; the residual is the charge that does not add up. */
export function solveAt(question: Question, pH: number): Solution {
  const pool = poolFor(question);
  const residual = fillAt(pool, pH);
  return solutionOf(pool, pH, residual, 1);
}

export interface Question {
  readonly totals: Totals;
  readonly temperature_C: number;
  readonly air: Air;
  /** Constants at that temperature, where they are at hand; worked out otherwise. */
  readonly medium?: Medium;
}

/** Closed, open to outdoor air, or open to air with this partial pressure of CO2 in atm. */
export type Air = 'closed' | 'open' | { readonly CO2_atm: number };

export interface Solution {
  readonly pH: number;
  readonly temperature_C: number;
  /** As asked, with the carbonate that is really there. */
  readonly totals: Totals;
  /** mol/kg. */
  readonly ionicStrength: number;
  /** Acid it takes to about pH 4.5, eq/kg; negative where the solution is more acid than that. */
  readonly alkalinity: number;
  /** Carbonate of all forms, mol/kg. */
  readonly inorganicCarbon: number;
  /** Every form present, mol/kg. */
  readonly species: Readonly<Partial<Record<Species, number>>>;
  readonly medium: Medium;
  readonly account: Account;
}

/** How the answer was reached. */
export interface Account {
  /** Net charge left, eq/kg; zero where the pH was found, the gap where it was given. */
  readonly residual: number;
  /** pH values tried, and sweeps of the mass balance in all. */
  readonly tries: number;
  readonly sweeps: number;
  /** Whether the last mass balance came to rest. */
  readonly settled: boolean;
}

/** Partial pressure of CO2 that an `air` stands for, atm; undefined for a closed vessel. */
export function pressureOf(air: Air): number | undefined {
  if (air === 'closed') return undefined;
  return air === 'open' ? gases.CO2.pressure_atm : air.CO2_atm;
}

/** A pool for the question; `spare` names what may be poured in later. */
export function poolFor(question: Question, spare: Totals = {}): Pool {
  const medium = question.medium ?? mediumAt(question.temperature_C);
  return poolOf(medium, question.totals, pressureOf(question.air), spare);
}

/** Alkalinity of what the pool holds now, eq/kg. */
export function alkalinityOf(pool: Pool): number {
  let sum = -pool.protons;
  for (const i of pool.active) sum += (pool.amounts[i] ?? 0) * (members[i]?.alkalinity ?? 0);
  return sum;
}

/** Carbonate of all forms that the pool holds now, mol/kg. */
export function carbonateOf(pool: Pool): number {
  if (pool.pressure_atm === undefined) return pool.totals.CO3 ?? 0;
  let sum = 0;
  for (const i of pool.active) if (carbonates.has(i)) sum += pool.amounts[i] ?? 0;
  return sum;
}

const carbonates = new Set(members.flatMap((member, i) => (isCarbonate(member.ligand) ? [i] : [])));

function isCarbonate(ligand: number): boolean {
  return ligand >= 0 && members.some(member => member.ligand === ligand && member.key === 'CO3-2');
}

export function solutionOf(pool: Pool, pH: number, residual: number, tries: number): Solution {
  const species: Partial<Record<Species, number>> = { 'H+': pool.protons };
  for (const i of pool.active) {
    const member = members[i];
    if (member !== undefined) species[member.key] = pool.amounts[i] ?? 0;
  }
  for (const key of inerts) {
    const amount = pool.totals[key] ?? 0;
    const name = components[key].species;
    if (amount > 0 && isSpecies(name)) species[name] = amount;
  }
  const inorganicCarbon = carbonateOf(pool);
  return {
    pH,
    temperature_C: pool.medium.temperature_C,
    totals: pool.pressure_atm === undefined ? pool.totals : { ...pool.totals, CO3: inorganicCarbon },
    ionicStrength: pool.ionicStrength,
    alkalinity: alkalinityOf(pool),
    inorganicCarbon,
    species,
    medium: pool.medium,
    account: { residual, tries, sweeps: pool.sweeps, settled: pool.settled },
  };
}
