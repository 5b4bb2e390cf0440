// How a solution answers to a small change: of its pH, or to more of something in it. The steps towards a pH or a dose rest on it.
// What is free of each cation is taken to stay as it is, which is near enough for a step.

import { nothing } from './forms.ts';
import type { Contents, Pool } from './pool.ts';
import { componentKeys, components } from './tables/species.ts';

/** The charge that falls away for each unit by which pH rises, eq/kg: the buffer value of Van Slyke (1922). */
export function bufferOf(pool: Pool): number {
  const isOpen = pool.pressure_atm !== undefined;
  let spread = pool.protons + countProtons(pool);
  for (let place = nothing + 1; place < pool.free.length; place += 1) {
    const there = amounts[place] ?? 0;
    const protons = held[place] ?? 0;
    // A component is shared out anew among its forms: it buffers by the variance of its protons. Carbonate in balance with air
    // is not shared out: there is as much as comes in as CO2, with two protons each.
    spread += isOpen && place === pool.forms.carbonate ? 4 * (there - protons) : -(protons * protons) / there;
  }
  return Math.LN10 * spread;
}

/** Protons that each mole of the component holds in the forms it takes now. */
export function protonsHeld(pool: Pool, place: number): number {
  countProtons(pool);
  return (held[place] ?? 0) / (amounts[place] ?? 0);
}

/** The charge that each unit of `more` brings at the pool's pH, eq. */
export function chargeBrought(pool: Pool, more: Contents): number {
  countProtons(pool);
  const isOpen = pool.pressure_atm !== undefined;
  let charge = more.charge + more.unknown;
  for (let place = nothing + 1; place < pool.free.length; place += 1) {
    const added = more.amounts[place] ?? 0;
    // What is added of carbonate leaves an open vessel again.
    if (added === 0 || (isOpen && place === pool.forms.carbonate)) continue;
    const key = pool.forms.components[place];
    const own = key === undefined ? 0 : components[key].charge;
    charge += added * (own + (held[place] ?? 0) / (amounts[place] ?? 0));
  }
  return charge;
}

/** Adds up what there is of each component and the protons it holds; returns the sum of their squares over all forms. */
function countProtons({ forms, amounts: ofForms }: Pool): number {
  const { holder, protons } = forms;
  amounts.fill(0);
  held.fill(0);
  let squares = 0;
  for (let i = 0; i < ofForms.length; i += 1) {
    const place = holder[i] ?? 0;
    const amount = ofForms[i] ?? 0;
    const holds = (protons[i] ?? 0) * amount;
    amounts[place] = (amounts[place] ?? 0) + amount;
    held[place] = (held[place] ?? 0) + holds;
    squares += (protons[i] ?? 0) * holds;
  }
  return squares;
}

// The bench of `countProtons`, by place.
const amounts = new Float64Array(componentKeys.length + 1);
const held = new Float64Array(componentKeys.length + 1);
