// From a bottle's composition to what a litre or a kilogram of it adds to a solution, and how it hurts. Separate because
// the solver speaks in moles and the shelf in percent by mass.

import { readCompound } from './compound.ts';
import type { Hazard, ReagentKey } from './tables/acids.ts';
import { isReagent, reagents } from './tables/acids.ts';
import type { Totals } from './totals.ts';
import { addTotals } from './totals.ts';

/** Shares by mass, 0 to 1, of the acids or bases in a bottle or bag. */
export type Composition = Readonly<Partial<Record<ReagentKey, number>>>;

/** Molar mass of the pure acid or base, g/mol. */
export function reagentMolarMass(key: ReagentKey): number {
  const compound = readCompound(reagents[key].formula);
  if (compound.kind !== 'compound') throw new Error(`${reagents[key].formula} is no formula.`);
  return compound.molarMass_g_per_mol;
}

/** Moles that one gram of the mixture adds. */
export function perGram(composition: Composition): Totals {
  return compositionEntries(composition).reduce<Totals>(
    (sum, [key, share]) => addTotals(sum, reagents[key].adds, share / reagentMolarMass(key)),
    {},
  );
}

/** Moles that one millilitre of the mixture adds, from its density in kg/L. */
export function perMillilitre(composition: Composition, density_kg_per_L: number): Totals {
  return addTotals({}, perGram(composition), density_kg_per_L);
}

/** Amount-of-substance concentration of each acid or base in a liquid, mol/L. */
export function molarity(composition: Composition, density_kg_per_L: number): Composition {
  const concentrations: Partial<Record<ReagentKey, number>> = {};
  for (const [key, share] of compositionEntries(composition))
    concentrations[key] = (share * density_kg_per_L * 1000) / reagentMolarMass(key);
  return concentrations;
}

/** Whether the mixture lowers or raises pH; undefined where it holds both kinds or none. */
export function directionOf(composition: Composition): 'acid' | 'base' | undefined {
  const kinds = new Set(compositionEntries(composition).map(([key]) => reagents[key].does));
  const [only] = kinds;
  return kinds.size === 1 ? only : undefined;
}

/** Hazard statements that apply to the mixture, each once; the strongest band of each ingredient that is reached. */
export function hazardsOf(composition: Composition): readonly Hazard[] {
  const found = new Set<Hazard>();
  for (const [key, share] of compositionEntries(composition)) {
    const reached = reagents[key].bands.filter(band => share >= band.from).at(-1);
    for (const hazard of reached?.hazards ?? []) found.add(hazard);
  }
  return [...found];
}

function compositionEntries(composition: Composition): readonly (readonly [ReagentKey, number])[] {
  return Object.entries(composition).filter((entry): entry is [ReagentKey, number] => isReagent(entry[0]));
}
