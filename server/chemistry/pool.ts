// A vessel of one solution at one temperature, whose arrays the solver fills again and again until everything in them agrees.

import { type Forms, formsOf, nothing } from './forms.ts';
import type { Medium } from './network.ts';
import { inerts } from './network.ts';
import { type Component, components } from './tables/species.ts';
import type { Totals } from './totals.ts';

export interface Pool {
  readonly medium: Medium;
  /** Partial pressure of CO2 the solution is in balance with, atm; absent for a closed vessel. */
  readonly pressure_atm: number | undefined;
  readonly forms: Forms;
  /** What is in the vessel. */
  readonly contents: Contents;
  /** What of each component is free, mol/kg. */
  readonly free: Float64Array;
  /** What there is of each form, mol/kg; not a number before the first sweep. */
  readonly amounts: number[];
  pH: number;
  ionicStrength: number;
  /** Concentration of the proton, mol/kg. */
  protons: number;
  /** Net charge, eq/kg. */
  charge: number;
  /** Sweeps of the mass balance since the pool was made. */
  sweeps: number;
  settled: boolean;
}

/** Totals, laid out as the forms want them. */
export interface Contents {
  /** Of each component that binds, by its place, mol/kg. */
  readonly amounts: Float64Array;
  /** Of ions that nothing happens to: charge, eq/kg, and the sum of c z². */
  charge: number;
  squares: number;
  /** Ions that are known by their charge only, eq/kg. */
  unknown: number;
}

/** A pool for these totals; `spare` names components that may be poured in later. */
export function poolOf(medium: Medium, totals: Totals, pressure_atm: number | undefined, spare: Totals = {}): Pool {
  const forms = formsOf(
    key => (totals[key] ?? 0) > 0 || (spare[key] ?? 0) > 0 || (key === 'CO3' && pressure_atm !== undefined),
  );
  const contents = contentsOf(forms, totals);
  for (let place = 1; place < contents.amounts.length; place += 1) {
    contents.amounts[place] = Math.max(contents.amounts[place] ?? 0, trace);
  }
  const pool: Pool = {
    medium,
    pressure_atm,
    forms,
    contents,
    free: new Float64Array(contents.amounts.length),
    // A copied list is made faster than a typed array of more than a few numbers.
    amounts: forms.notYet.slice(),
    pH: 7,
    ionicStrength: 0,
    protons: 0,
    charge: 0,
    sweeps: 0,
    settled: false,
  };
  startOver(pool);
  return pool;
}

/** Forgets what was found: all is taken to be free, as nearly all of a dilute solution is. */
export function startOver(pool: Pool): void {
  const { contents, free } = pool;
  free.set(contents.amounts);
  free[nothing] = 1;
  pool.ionicStrength = (contents.squares + Math.abs(contents.unknown)) / 2;
}

/** Stands for none of a component that may be poured in later: so little that it counts for nothing, and its forms have shares. */
const trace = 1e-30;

/** Totals as contents of a vessel that holds these forms. */
export function contentsOf(forms: Forms, totals: Totals): Contents {
  const amounts = new Float64Array(forms.components.length);
  for (let place = 1; place < amounts.length; place += 1) {
    const key = forms.components[place];
    if (key !== undefined) amounts[place] = totals[key] ?? 0;
  }
  const contents = { amounts, charge: totals.imbalance ?? 0, squares: 0, unknown: totals.unknownCharge ?? 0 };
  for (const { key, z } of inertCharges) {
    const amount = totals[key] ?? 0;
    contents.charge += amount * z;
    contents.squares += amount * z * z;
  }
  return contents;
}

const inertCharges: readonly { readonly key: Component; readonly z: number }[] = inerts.map(key => ({
  key,
  z: components[key].charge,
}));

/** Puts `first`, with `times` of `more`, into the pool; what was found before is where the next search starts. */
export function pour(pool: Pool, first: Contents, more: Contents = first, times = 0): void {
  const { contents } = pool;
  for (let place = 1; place < contents.amounts.length; place += 1) {
    const amount = (first.amounts[place] ?? 0) + times * (more.amounts[place] ?? 0);
    contents.amounts[place] = Math.max(amount, trace);
  }
  contents.charge = first.charge + times * more.charge;
  contents.squares = first.squares + times * more.squares;
  contents.unknown = first.unknown + times * more.unknown;
}
