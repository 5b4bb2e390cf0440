// How much less an ion counts than its concentration says. One equation family: Debye and Hückel's slope, Davies' law.

import type { Solvent } from './solvent.ts';

/** Beyond this ionic strength Davies' equation turns upward and is held at its value here (Davies 1962: good to about 0.5). */
export const highestIonicStrength = 0.5;

/** Debye and Hückel's slope A for log10, from water's density and dielectric constant; 0.51 at 25 °C. */
export function debyeHueckelSlope(solvent: Solvent): number {
  return (1.82483e6 * Math.sqrt(solvent.density_kg_per_L)) / (solvent.dielectric * solvent.temperature_K) ** 1.5;
}

/** log10 of the activity coefficient of an ion of charge one; of charge z it is z² times as much (Davies 1962). */
export function logGammaOfCharge1(slope: number, ionicStrength: number): number {
  const I = Math.min(ionicStrength, highestIonicStrength);
  const root = Math.sqrt(I);
  return -slope * (root / (1 + root) - 0.3 * I);
}

/** log10 of the activity coefficient of an uncharged species: 0.1 I (Parkhurst and Appelo 2013). */
export function logGammaOfNeutral(ionicStrength: number): number {
  return 0.1 * Math.min(ionicStrength, highestIonicStrength);
}

/** log10 of the activity coefficient of a species of this charge. */
export function logGamma(slope: number, ionicStrength: number, charge: number): number {
  if (charge === 0) return logGammaOfNeutral(ionicStrength);
  return charge * charge * logGammaOfCharge1(slope, ionicStrength);
}
