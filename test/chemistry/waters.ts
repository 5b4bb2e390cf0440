// Random waters and nutrient solutions for the laws: anything a grower could have in a bucket, and a good deal more.

import * as fc from 'fast-check';
import type { Totals } from '../../server/chemistry/totals.ts';

/** Amounts in mol/kg; each component is absent, dilute or strong. */
const amount = (most: number) =>
  fc.oneof(
    fc.constant(0),
    fc.double({ min: 1e-7, max: most, noNaN: true }),
    fc.double({ min: 1e-7, max: most / 100, noNaN: true }),
  );

export const anySolution: fc.Arbitrary<Totals> = fc.record({
  Ca: amount(0.02),
  Mg: amount(0.01),
  K: amount(0.03),
  Na: amount(0.03),
  NH4: amount(0.01),
  CO3: amount(0.01),
  PO4: amount(0.01),
  SO4: amount(0.02),
  B: amount(0.001),
  Si: amount(0.002),
  citrate: amount(0.005),
  acetate: amount(0.005),
  Cl: amount(0.03),
  NO3: amount(0.04),
  unknownCharge: fc.double({ min: -0.01, max: 0.01, noNaN: true }),
});

export const anyTemperature = fc.double({ min: 5, max: 40, noNaN: true });
export const anyAir = fc.constantFrom('closed' as const, 'open' as const);
