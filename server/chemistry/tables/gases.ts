// Carbon dioxide in the air and how much of it water holds. One file of its own, as every answer "after standing open"
// rests on these two facts.

import type { SourceKey } from '../../../schema/sources.ts';
import type { LogK } from './reactions.ts';

interface GasRow {
  /** Partial pressure in outdoor air, atm. */
  readonly pressure_atm: number;
  readonly pressureSource: SourceKey;
  /** log10 of Henry's constant, mol per kg and atm. */
  readonly logHenry: LogK;
  readonly source: SourceKey;
}

export const gases = {
  CO2: {
    pressure_atm: 420e-6,
    pressureSource: 'noaa-co2',
    logHenry: { kind: 'analytic', a: 108.3865, b: 0.01985076, c: -6919.53, d: -40.45154, e: 669365 },
    source: 'plummer-busenberg-1982',
  },
} as const satisfies Record<string, GasRow>;
