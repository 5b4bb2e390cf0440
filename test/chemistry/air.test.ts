// Standing in air: what is told without a search is what the search finds.

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { endsAbove, losesCO2, pressureOver, standInAir } from '../../server/chemistry/air.ts';
import { solve } from '../../server/chemistry/solution.ts';
import { gases } from '../../server/chemistry/tables/gases.ts';
import { anySolution, anyTemperature } from './waters.ts';

test('a solution ends above every pH that is below its pH in air, and above no other', () => {
  fc.assert(
    fc.property(
      anySolution,
      anyTemperature,
      fc.double({ min: 0.01, max: 2, noNaN: true }),
      (totals, temperature_C, further) => {
        const solution = solve({ totals, temperature_C, air: 'closed' });
        const { pH } = standInAir(solution);
        expect(endsAbove(solution, pH - further)).toBe(true);
        expect(endsAbove(solution, pH + further)).toBe(false);
      },
    ),
  );
});

test('CO2 leaves where the pH in air is higher', () => {
  fc.assert(
    fc.property(anySolution, anyTemperature, (totals, temperature_C) => {
      const solution = solve({ totals, temperature_C, air: 'closed' });
      const climb = standInAir(solution).pH - solution.pH;
      if (Math.abs(climb) > 1e-6) expect(losesCO2(solution)).toBe(climb > 0);
    }),
  );
});

test('a solution in balance with air has the pressure of air over it', () => {
  const { pressure_atm } = gases.CO2;
  const aired = solve({ totals: { Ca: 2e-3, Cl: 1e-3, K: 1e-3 }, temperature_C: 18, air: 'open' });
  expect(pressureOver(aired)).toBeCloseTo(pressure_atm, 9);
  expect(pressureOver(solve({ totals: { K: 1e-3, Cl: 1e-3 }, temperature_C: 18, air: 'closed' }))).toBe(0);
});
