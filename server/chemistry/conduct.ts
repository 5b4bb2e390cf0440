// Electrical conductivity of a solved solution: each ion's share by the law of Debye, Hückel and Onsager.

import type { Solution } from './solution.ts';
import { solveAt } from './solution.ts';
import type { Solvent } from './solvent.ts';
import { solventAt } from './solvent.ts';
import type { MobilityRow } from './tables/mobility.ts';
import { mobility, unknownIon } from './tables/mobility.ts';
import { species, speciesKeys } from './tables/species.ts';

/**
 * EC of the solution brought to 25 °C, mS/cm. Its ions pair anew there (magnesium sulfate more than in the cold); the pH
 * is left where it was, as the little hydrogen that moves carries no current worth counting.
 */
export function conductivityAt25(solution: Solution): number {
  const { totals, pH, temperature_C } = solution;
  if (temperature_C === 25) return conductivityAsIs(solution);
  return conductivityAsIs(solveAt({ totals, temperature_C: 25, air: 'closed' }, pH));
}

/** EC at the solution's own temperature, mS/cm. */
export function conductivityAsIs(solution: Solution): number {
  return conductivity(solution, solution.medium.solvent);
}

/**
 * Sum over ions of λ |z| c. Pairs that carry no charge carry no current, so the solution must be speciated first. The
 * pull of the ionic atmosphere grows with the charge of the ion and of the ions around it, which is why sulfate and
 * calcium carry less than their limiting values say. Ions only known by their charge count as `unknownIon`.
 */
function conductivity(solution: Solution, solvent: Solvent): number {
  const fluidity = viscosityAt25 / solvent.viscosity;
  const heat = solvent.dielectric * solvent.temperature_K;
  const root = Math.sqrt(solution.ionicStrength);
  // Robinson and Stokes 1959, with the viscosity in poise: 30 and 0.23 at 25 °C.
  const electrophoresis = 82.5 / (2 * solvent.viscosity * 10 * Math.sqrt(heat));
  const relaxation = 8.204e5 / heat ** 1.5;
  const carriers = carriersOf(solution);
  const around = { anions: meanCharge(carriers, -1), cations: meanCharge(carriers, 1) };
  let sum = 0;
  for (const { row, charge, amount } of carriers) {
    const size = Math.abs(charge);
    const limiting = row.limiting * fluidity ** row.fluidityPower;
    const counter = charge > 0 ? around.anions : around.cations;
    const crowding = root / (1 + closest * Math.sqrt(size * counter) * root);
    const slowed = limiting - size * (electrophoresis + relaxation * counter * limiting) * crowding;
    sum += Math.max(slowed, 0) * size * amount;
  }
  return sum;
}

const viscosityAt25 = solventAt(25).viscosity;

/**
 * Debye's 0.33 per ångström times 4 Å between ions of charge one; ions of higher charge keep further apart. The square
 * root follows measured conductivities of CaCl2, MgCl2 and Na2SO4 up to 0.1 eq/L within about one percent.
 */
const closest = 1.3;

interface Carrier {
  readonly row: MobilityRow;
  readonly charge: number;
  readonly amount: number;
}

function carriersOf(solution: Solution): readonly Carrier[] {
  const carriers: Carrier[] = [];
  for (const { key, row, charge } of ions) {
    const amount = solution.species[key];
    if (amount !== undefined) carriers.push({ row, charge, amount });
  }
  const unknown = solution.totals.unknownCharge ?? 0;
  if (unknown !== 0) carriers.push({ row: unknownIon, charge: Math.sign(unknown), amount: Math.abs(unknown) });
  return carriers;
}

const ions = speciesKeys.flatMap(key => {
  const row = mobility[key];
  return row === undefined ? [] : [{ key, row, charge: species[key].charge }];
});

/** Mean size of the charges of one sign, weighted as the ionic atmosphere weighs them: by c z². */
function meanCharge(carriers: readonly Carrier[], sign: number): number {
  let weight = 0;
  let sum = 0;
  for (const { charge, amount } of carriers) {
    if (Math.sign(charge) !== sign) continue;
    weight += amount * charge * charge;
    sum += amount * charge * charge * Math.abs(charge);
  }
  return weight === 0 ? 1 : sum / weight;
}
