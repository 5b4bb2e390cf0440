// Totals in, solution out: the one door to the solver, and the account it hands back.

import { balance } from './charge.ts';
import { nothing } from './forms.ts';
import type { Medium } from './network.ts';
import { inerts, mediumAt } from './network.ts';
import { type Pool, poolOf } from './pool.ts';
import { fillAt } from './speciate.ts';
import { gases } from './tables/gases.ts';
import type { Species } from './tables/species.ts';
import { components, isSpecies } from './tables/species.ts';
import type { Totals } from './totals.ts';

/** Solves for pH: the closed vessel keeps its carbonate, the open one takes up or loses CO2 until in balance with air. */
export function solve(question: Question & { readonly near?: number }): Solution {
  const pool = poolFor(question);
  balance(pool, question.near);
  return solutionOf(pool, question.totals);
}

/** The same at a pH that is known; the residual is the charge that does not add up. */
export function solveAt(question: Question, pH: number): Solution {
  const pool = poolFor(question);
  fillAt(pool, pH);
  return solutionOf(pool, question.totals);
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
  /** Sweeps of the mass balance in all. */
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
export function alkalinityOf({ protons, amounts, forms }: Pool): number {
  let sum = -protons;
  for (let i = 0; i < amounts.length; i += 1) sum += (amounts[i] ?? 0) * (forms.alkalinity[i] ?? 0);
  return sum;
}

/** Carbonate of all forms that the pool holds now, mol/kg. */
export function carbonateOf({ amounts, forms }: Pool): number {
  if (forms.carbonate === nothing) return 0;
  let sum = 0;
  for (let i = 0; i < amounts.length; i += 1) if (forms.ligand[i] === forms.carbonate) sum += amounts[i] ?? 0;
  return sum;
}

/** What the pool holds now, of these totals. */
export function solutionOf(pool: Pool, totals: Totals): Solution {
  const { forms, amounts } = pool;
  const species: Partial<Record<Species, number>> = { 'H+': pool.protons };
  for (let i = 0; i < amounts.length; i += 1) {
    const key = forms.members[i]?.key;
    if (key !== undefined) species[key] = amounts[i] ?? 0;
  }
  for (const key of inerts) {
    const amount = totals[key] ?? 0;
    const name = components[key].species;
    if (amount > 0 && isSpecies(name)) species[name] = amount;
  }
  const isOpen = pool.pressure_atm !== undefined;
  const inorganicCarbon = isOpen ? carbonateOf(pool) : (totals.CO3 ?? 0);
  return {
    pH: pool.pH,
    temperature_C: pool.medium.temperature_C,
    totals: isOpen ? { ...totals, CO3: inorganicCarbon } : totals,
    ionicStrength: pool.ionicStrength,
    alkalinity: alkalinityOf(pool),
    inorganicCarbon,
    species,
    medium: pool.medium,
    account: { residual: pool.charge, sweeps: pool.sweeps, settled: pool.settled },
  };
}
