// What plants take up with the water they drink, and how low the solution may fall.

import type { SourceKey } from '../../schema/sources.ts';

/**
 * Nutrients taken up with a litre that is drunk, as the EC that they make, mS/cm. By the mass balance of Langenfeld et al. 2022:
 * about 12 % of dry mass is mineral nutrient, 2.5 to 5 g of dry mass grow on a litre (both from memory), and a full nutrient
 * solution holds about 375 mg/L for each mS/cm (Hoagland and Arnon's solution 2: 749 mg/L at 2.0 mS/cm). A container under a lid
 * loses next to nothing to the air, so all that is used counts as drunk.
 */
export const uptakeEC = { low: 0.8, mid: 1.2, high: 1.6, source: 'langenfeld-2022' } as const satisfies {
  low: number;
  mid: number;
  high: number;
  source: SourceKey;
};

/** The level left at harvest in the published trial of Kratky 2005; below it roots lose the solution, cm. */
export const lowestLevel_cm = 1.3;

/**
 * The air gap that is kept where none is written, cm: the 1 in that UF/IFAS leaves over static solution for young plants. Older
 * ones are given 2 to 3 in, which a recipe writes as `keep-air-gap`.
 */
export const usualAirGap_cm = 2.54;
