// The forms of everything dissolved: mass balance of every component under activities and ion pairs, at a pH that is known or
// together with one unknown that is sought.

import { logGammaOfCharge1, logGammaOfNeutral } from './activity.ts';
import { nothing, powers } from './forms.ts';
import { cations, ligands, members } from './network.ts';
import { type Pool, startOver } from './pool.ts';
import { componentKeys } from './tables/species.ts';

/** Fills the pool at this pH and returns the net charge, eq/kg, which falls as pH rises. */
export function fillAt(pool: Pool, pH: number): number {
  pool.pH = pH;
  pool.settled = false;
  for (let sweep = 0; sweep < mostSweeps && !pool.settled; sweep += 1) pool.settled = sweepOnce(pool) < tolerance;
  return pool.charge;
}

/** One unknown of a pool: its pH, or how much of something is in it. */
export interface Sought {
  /** How far the unknown still is from where it should be, judged by what the pool holds now. */
  readonly off: () => number;
  readonly move: (by: number) => void;
  /** So near is near enough. */
  readonly width: number;
}

/**
 * Lets the mass balance and one unknown come to rest together: the unknown moves after each sweep, so that finding it costs little
 * more than one speciation. False where that leads nowhere: an answer needs a safer search then.
 */
export function settle(pool: Pool, { off, move, width }: Sought): boolean {
  for (let sweep = 0; sweep < mostTogether; sweep += 1) {
    const shift = sweepOnce(pool);
    const by = off();
    if (!Number.isFinite(by)) break;
    if (shift < tolerance && Math.abs(by) <= width) {
      pool.settled = true;
      return true;
    }
    move(by);
  }
  startOver(pool);
  return false;
}

const mostSweeps = 400;
const mostTogether = 60;
const tolerance = 1e-11;

/**
 * Adds up all forms once at the pool's pH and moves its ionic strength; returns how much the solution still moved, relatively.
 *
 * At a fixed ionic strength one round (ligands from cations, cations from ligands) is a standard interference function
 * in the sense of Yates (1995): it grows with the free cations but less than in proportion, so repeating it converges
 * from any start to its only solution. The ionic strength follows the sweeps, a weak coupling.
 */
export function sweepOnce(pool: Pool): number {
  const { medium, forms } = pool;
  const { inNetwork, protonPlace, gammaPlace, neutralPlace, sum } = forms;
  const activity = tenTo(-pool.pH);
  const gamma = tenTo(logGammaOfCharge1(medium.slope, pool.ionicStrength));
  fillPowers(protonPowers, activity, powers.proton.lowest);
  fillPowers(gammaPowers, gamma, powers.gamma.lowest);
  fillPowers(neutralPowers, tenTo(logGammaOfNeutral(pool.ionicStrength)), powers.neutral.lowest);
  sums.fill(0);
  for (let i = 0; i < inNetwork.length; i += 1) {
    const factor =
      (medium.constants[inNetwork[i] ?? 0] ?? 0) *
      (protonPowers[protonPlace[i] ?? 0] ?? 0) *
      (gammaPowers[gammaPlace[i] ?? 0] ?? 0) *
      (neutralPowers[neutralPlace[i] ?? 0] ?? 0);
    factors[i] = factor;
    const place = sum[i] ?? 0;
    sums[place] = (sums[place] ?? 0) + factor;
  }
  if (pool.pressure_atm !== undefined)
    pool.free[forms.carbonate] = medium.carbonateInAir(pool.pressure_atm) / (activity ** 2 * gamma ** 4);
  let shift = bindOnce(pool);
  for (let round = 0; round < 3 && shift > tolerance; round += 1) shift = bindOnce(pool);
  pool.protons = activity / gamma;
  const strength = addUp(pool);
  const step = strength - pool.ionicStrength;
  pool.ionicStrength = strength;
  pool.sweeps += 1;
  return Math.max(shift, Math.abs(step) / (strength + 1e-12));
}

/** Ligands from cations, cations from ligands; returns the largest relative change of a free cation. */
function bindOnce(pool: Pool): number {
  const { free } = pool;
  const { pairCation, pairLigand, firstLigand, carbonate } = pool.forms;
  const totals = pool.contents.amounts;
  const { length } = free;
  const isOpen = pool.pressure_atm !== undefined;
  for (let place = 0; place < length; place += 1) bound[place] = sums[place] ?? 0;
  for (let pair = 0; pair < pairLigand.length; pair += 1) {
    const l = pairLigand[pair] ?? 0;
    bound[l] = (bound[l] ?? 0) + (sums[length + pair] ?? 0) * (free[pairCation[pair] ?? 0] ?? 0);
  }
  for (let l = firstLigand; l < length; l += 1) {
    if (!isOpen || l !== carbonate) free[l] = (totals[l] ?? 0) / (bound[l] ?? 0);
  }
  for (let pair = 0; pair < pairCation.length; pair += 1) {
    const c = pairCation[pair] ?? 0;
    bound[c] = (bound[c] ?? 0) + (sums[length + pair] ?? 0) * (free[pairLigand[pair] ?? 0] ?? 0);
  }
  let shift = 0;
  for (let c = nothing + 1; c < firstLigand; c += 1) {
    const now = (totals[c] ?? 0) / (bound[c] ?? 0);
    shift = Math.max(shift, Math.abs(now / (free[c] ?? 0) - 1));
    free[c] = now;
  }
  return shift;
}

/** Fills the amounts and the charge from what is free; returns the ionic strength. */
function addUp(pool: Pool): number {
  const { amounts, free, contents } = pool;
  const { cation, ligand, charge } = pool.forms;
  let net = contents.charge + contents.unknown + pool.protons;
  // The unknown ions are taken as of charge one: the least that carries their charge.
  let squares = contents.squares + Math.abs(contents.unknown) + pool.protons;
  for (let i = 0; i < amounts.length; i += 1) {
    const amount = (factors[i] ?? 0) * (free[cation[i] ?? 0] ?? 0) * (free[ligand[i] ?? 0] ?? 0);
    const z = charge[i] ?? 0;
    amounts[i] = amount;
    net += amount * z;
    squares += amount * z * z;
  }
  pool.charge = net;
  return squares / 2;
}

// The bench that a sweep works on: it is laid anew each time, and nothing of it is read afterwards.
/** What each form comes to with one of each of its components free. */
const factors = new Float64Array(members.length);
/** Factors of the forms of each component alone, and then of each pair. */
const sums = new Float64Array(componentKeys.length + 1 + cations.length * ligands.length);
const bound = new Float64Array(componentKeys.length + 1);
const protonPowers = new Float64Array(powers.proton.count);
const gammaPowers = new Float64Array(powers.gamma.count);
const neutralPowers = new Float64Array(powers.neutral.count);

/** Whole powers of `x`, that of `lowest`, which is not above 0, at place 0. */
function fillPowers(to: Float64Array, x: number, lowest: number): void {
  let power = 1;
  for (let place = -lowest; place < to.length; place += 1) {
    to[place] = power;
    power *= x;
  }
  power = 1;
  for (let place = -lowest - 1; place >= 0; place -= 1) {
    power /= x;
    to[place] = power;
  }
}

function tenTo(x: number): number {
  return Math.exp(Math.LN10 * x);
}
