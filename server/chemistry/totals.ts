// How much of each component a solution holds, and the arithmetic of adding and blending. Separate because doses,
// waters and reagents all speak in totals, whether or not anybody solves them.

import type { Component } from './tables/species.ts';
import { componentKeys, components } from './tables/species.ts';

/**
 * Amounts per kilogram of water, mol (close to mol/L in a dilute solution). What is absent is zero. Two charges, eq,
 * stand beside the components, positive where cations are missing from the list:
 *
 * - `unknownCharge`: ions that are certainly there but not known, as the counter-ions of a labelled concentrate. They
 *   count in the charge balance, the ionic strength and the conductivity.
 * - `imbalance`: what figures lack to add up, as the gap of a water analysis or the shift to a measured pH. Any ion of
 *   the list may be the wrong one, so it counts in the charge balance only.
 */
export type Totals = Readonly<Partial<Record<Component, number>>> & {
  readonly unknownCharge?: number;
  readonly imbalance?: number;
};

/** `to` with `times` of `what` added: a dose, or with a negative number what was taken out. */
export function addTotals(to: Totals, what: Totals, times = 1): Totals {
  const sum: Partial<Record<Component | 'unknownCharge' | 'imbalance', number>> = { ...to };
  for (const key of componentKeys) {
    const more = what[key];
    if (more !== undefined && more !== 0) sum[key] = (sum[key] ?? 0) + more * times;
  }
  for (const key of ['unknownCharge', 'imbalance'] as const) {
    const more = what[key];
    if (more !== undefined && more !== 0) sum[key] = (sum[key] ?? 0) + more * times;
  }
  return sum;
}

/** Solutions mixed by volume without change of volume; shares add up to one. */
export function blendTotals(parts: readonly { readonly totals: Totals; readonly share: number }[]): Totals {
  return parts.reduce<Totals>((sum, part) => addTotals(sum, part.totals, part.share), {});
}

/** Net charge, eq, of the totals in the forms they are counted in: the protons a neutral solution must hold beside them. */
export function chargeOfTotals(totals: Totals): number {
  return componentKeys.reduce(
    (sum, key) => sum + (totals[key] ?? 0) * components[key].charge,
    (totals.unknownCharge ?? 0) + (totals.imbalance ?? 0),
  );
}
