// The forms of everything dissolved at a given pH: mass balance of every component under activities and ion pairs.
// Separate from the charge balance because a known pH needs no search.

import { logGammaOfCharge1, logGammaOfNeutral } from './activity.ts';
import type { Medium } from './network.ts';
import { cations, inerts, ligands, members } from './network.ts';
import type { Component } from './tables/species.ts';
import { components } from './tables/species.ts';
import type { Totals } from './totals.ts';

/** A vessel of one solution at one temperature, whose arrays the solver fills again for each pH it tries. */
export interface Pool {
  readonly medium: Medium;
  /** Partial pressure of CO2 the solution is in balance with, atm; absent for a closed vessel. */
  readonly pressure_atm: number | undefined;
  /** Members whose components are present. */
  readonly active: readonly number[];
  readonly cationTotals: Float64Array;
  readonly ligandTotals: Float64Array;
  readonly freeCations: Float64Array;
  readonly freeLigands: Float64Array;
  /** Concentration of each member, mol/kg. */
  readonly amounts: Float64Array;
  totals: Totals;
  /** Charge, eq/kg, and half the sum of c z² of ions that nothing happens to. */
  inertCharge: number;
  inertStrength: number;
  ionicStrength: number;
  protons: number;
  /** Sweeps of the mass balance since the pool was made. */
  sweeps: number;
  settled: boolean;
}

/** A pool for these totals; `spare` names components that later totals may hold as well. */
export function poolOf(medium: Medium, totals: Totals, pressure_atm: number | undefined, spare: Totals = {}): Pool {
  let present = pressure_atm === undefined ? 0 : bitOf(nC + carbonatePlace);
  for (let place = 0; place < nC + nL; place += 1) {
    const key = place < nC ? cations[place] : ligands[place - nC];
    if (totalOf(totals, key) > 0 || totalOf(spare, key) > 0) present |= bitOf(place);
  }
  const pool: Pool = {
    medium,
    totals,
    pressure_atm,
    active: membersOf(present),
    cationTotals: new Float64Array(nC),
    ligandTotals: new Float64Array(nL),
    freeCations: new Float64Array(nC),
    freeLigands: new Float64Array(nL),
    amounts: new Float64Array(members.length),
    inertCharge: 0,
    inertStrength: 0,
    ionicStrength: 0,
    protons: 0,
    sweeps: 0,
    settled: false,
  };
  pour(pool, totals);
  pool.ionicStrength = pool.inertStrength;
  return pool;
}

/** The members whose components are all present; `present` has a bit for each, cations first. The same few sets come again and again. */
function membersOf(present: number): readonly number[] {
  const known = membersBySet.get(present);
  if (known !== undefined) return known;
  const found = members.flatMap(({ cation, ligand }, i) => {
    const isPresent = (place: number): boolean => (present & bitOf(place)) !== 0;
    return (cation < 0 || isPresent(cation)) && (ligand < 0 || isPresent(nC + ligand)) ? [i] : [];
  });
  membersBySet.set(present, found);
  return found;
}

const membersBySet = new Map<number, readonly number[]>();

function bitOf(place: number): number {
  return 1 << place;
}

/** Puts other totals of the same components into the pool; what was found before is where the next search starts. */
export function pour(pool: Pool, totals: Totals): void {
  pool.totals = totals;
  for (let c = 0; c < nC; c += 1) {
    const total = Math.max(totalOf(totals, cations[c]), 0);
    pool.cationTotals[c] = total;
    if (total === 0 || at(pool.freeCations, c) === 0) pool.freeCations[c] = total;
  }
  for (let l = 0; l < nL; l += 1) pool.ligandTotals[l] = Math.max(totalOf(totals, ligands[l]), 0);
  const unknown = totals.unknownCharge ?? 0;
  pool.inertCharge = unknown + (totals.imbalance ?? 0);
  // The unknown ions are taken as of charge one: the least that carries their charge.
  pool.inertStrength = Math.abs(unknown) / 2;
  for (const key of inerts) {
    const amount = totals[key] ?? 0;
    const z = components[key].charge;
    pool.inertCharge += amount * z;
    pool.inertStrength += (amount * z * z) / 2;
  }
}

function totalOf(totals: Totals, key: Component | undefined): number {
  return key === undefined ? 0 : (totals[key] ?? 0);
}

/**
 * Fills the pool for this pH and returns the net charge, eq/kg, which falls as pH rises.
 *
 * At a fixed ionic strength one round (ligands from cations, cations from ligands) is a standard interference function
 * in the sense of Yates (1995): it grows with the free cations but less than in proportion, so repeating it converges
 * from any start to its only solution. The ionic strength follows the sweeps, a weak coupling.
 */
export function fillAt(pool: Pool, pH: number): number {
  const { medium, active } = pool;
  const { freeLigands } = pool;
  const activity = 10 ** -pH;
  fillPowers(protonPowers, activity, fewestProtons);
  for (let place = 0; place < active.length; place += 1) {
    const i = active[place] ?? 0;
    base[place] = at(medium.constants, i) * at(protonPowers, at(protonsOf, i) - fewestProtons);
  }
  const carbonate =
    pool.pressure_atm === undefined ? undefined : medium.carbonateInAir(pool.pressure_atm) / activity ** 2;
  let lastStep = 0;
  pool.settled = false;
  for (let sweep = 0; sweep < mostSweeps && !pool.settled; sweep += 1) {
    const gamma = 10 ** logGammaOfCharge1(medium.slope, pool.ionicStrength);
    const neutral = 10 ** logGammaOfNeutral(pool.ionicStrength);
    fillPowers(gammaPowers, gamma, lowestPower);
    alone.fill(0);
    pairs.fill(0);
    for (let place = 0; place < active.length; place += 1) {
      const i = active[place] ?? 0;
      const power = at(neutralPowerOf, i);
      const factor =
        at(base, place) *
        at(gammaPowers, at(gammaPowerOf, i) - lowestPower) *
        (power === 0 ? 1 : power === 1 ? neutral : 1 / neutral);
      factors[place] = factor;
      const c = at(cationOf, i);
      const l = at(ligandOf, i);
      if (c >= 0 && l >= 0) pairs[c * nL + l] = at(pairs, c * nL + l) + factor;
      else if (c >= 0) alone[c] = at(alone, c) + factor;
      else if (l >= 0) alone[nC + l] = at(alone, nC + l) + factor;
    }
    if (carbonate !== undefined) freeLigands[carbonatePlace] = carbonate / gamma ** 4;
    let shift = bindOnce(pool);
    for (let round = 0; round < 3 && shift > tolerance; round += 1) shift = bindOnce(pool);
    pool.protons = activity / gamma;
    const strength = strengthOf(pool);
    const step = strength - pool.ionicStrength;
    pool.sweeps += 1;
    pool.settled = Math.max(shift, Math.abs(step) / (strength + 1e-12)) < tolerance;
    // Steps shrink by a steady share, so the rest of them can be taken at once (Aitken).
    const share = lastStep === 0 ? 0 : step / lastStep;
    pool.ionicStrength = strength + (Math.abs(share) < 0.5 ? (step * share) / (1 - share) : 0);
    lastStep = step;
  }
  return netChargeOf(pool);
}

/** Ligands from cations, cations from ligands; returns the largest relative change of a free cation. */
function bindOnce(pool: Pool): number {
  const { freeCations, freeLigands, cationTotals, ligandTotals } = pool;
  const isOpen = pool.pressure_atm !== undefined;
  for (let l = 0; l < nL; l += 1) {
    const total = at(ligandTotals, l);
    if (isOpen && l === carbonatePlace) continue;
    if (total === 0) {
      freeLigands[l] = 0;
      continue;
    }
    let bound = at(alone, nC + l);
    for (let c = 0; c < nC; c += 1) bound += at(pairs, c * nL + l) * at(freeCations, c);
    freeLigands[l] = total / bound;
  }
  let shift = 0;
  for (let c = 0; c < nC; c += 1) {
    const total = at(cationTotals, c);
    if (total === 0) continue;
    let bound = at(alone, c);
    for (let l = 0; l < nL; l += 1) bound += at(pairs, c * nL + l) * at(freeLigands, l);
    const free = total / bound;
    shift = Math.max(shift, Math.abs(free / at(freeCations, c) - 1));
    freeCations[c] = free;
  }
  return shift;
}

const mostSweeps = 400;
const tolerance = 1e-11;
const nC = cations.length;
const nL = ligands.length;
const carbonatePlace = ligands.indexOf('CO3');
const protonsOf = Int8Array.from(members, member => member.protons);
const cationOf = Int8Array.from(members, member => member.cation);
const ligandOf = Int8Array.from(members, member => member.ligand);
const chargeOf = Int8Array.from(members, member => member.charge);
const gammaPowerOf = Int8Array.from(members, member => member.gammaPower);
const neutralPowerOf = Int8Array.from(members, member => member.neutralPower);
const highestPower = Math.max(4, ...gammaPowerOf);
const lowestPower = Math.min(0, ...gammaPowerOf);
const mostProtons = Math.max(...protonsOf);
const fewestProtons = Math.min(...protonsOf);

// The bench that `fillAt` works on: it is laid anew at each call, and nothing of it is read afterwards.
/** Conditional constant of each member, in the order of `active`: at the pH, and at the ionic strength too. */
const base = new Float64Array(members.length);
const factors = new Float64Array(members.length);
/** Sums of factors: of a component's own forms (cations first), and of the pairs of each cation with each ligand. */
const alone = new Float64Array(nC + nL);
const pairs = new Float64Array(nC * nL);
const protonPowers = new Float64Array(mostProtons - fewestProtons + 1);
const gammaPowers = new Float64Array(highestPower - lowestPower + 1);

/** Whole powers of `x`, that of `lowest` at place 0. */
function fillPowers(powers: Float64Array, x: number, lowest: number): void {
  let power = x ** lowest;
  for (let place = 0; place < powers.length; place += 1) {
    powers[place] = power;
    power *= x;
  }
}

/** A number out of an array whose length is known to suffice; the fallback satisfies the type only. */
function at(array: Float64Array | Int8Array, i: number): number {
  return array[i] ?? 0;
}

/** Fills the amounts from the free ions and returns the ionic strength. */
function strengthOf(pool: Pool): number {
  const { active, amounts, freeCations, freeLigands } = pool;
  let twice = 2 * pool.inertStrength + pool.protons;
  for (let place = 0; place < active.length; place += 1) {
    const i = active[place] ?? 0;
    const c = at(cationOf, i);
    const l = at(ligandOf, i);
    const amount = at(factors, place) * (c < 0 ? 1 : at(freeCations, c)) * (l < 0 ? 1 : at(freeLigands, l));
    amounts[i] = amount;
    const z = at(chargeOf, i);
    twice += amount * z * z;
  }
  return twice / 2;
}

function netChargeOf(pool: Pool): number {
  let charge = pool.inertCharge + pool.protons;
  for (let place = 0; place < pool.active.length; place += 1) {
    const i = pool.active[place] ?? 0;
    charge += at(pool.amounts, i) * at(chargeOf, i);
  }
  return charge;
}
