// The solver: solutions with known answers, and laws that hold for every solution.

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standInAir } from '../../server/chemistry/air.ts';
import { anchorTo } from '../../server/chemistry/anchor.ts';
import { balanceBetween, settleAtPH } from '../../server/chemistry/charge.ts';
import { members } from '../../server/chemistry/network.ts';
import type { Solution } from '../../server/chemistry/solution.ts';
import { poolFor, solve, solveAt } from '../../server/chemistry/solution.ts';
import { logKAt, reactions } from '../../server/chemistry/tables/reactions.ts';
import type { Component } from '../../server/chemistry/tables/species.ts';
import { componentKeys, components, isSpecies, species } from '../../server/chemistry/tables/species.ts';
import type { Totals } from '../../server/chemistry/totals.ts';
import { anyAir, anySolution, anyTemperature } from './waters.ts';

const closed = (totals: Totals, temperature_C = 25) => solve({ totals, temperature_C, air: 'closed' });
const open = (totals: Totals, temperature_C = 25) => solve({ totals, temperature_C, air: 'open' });

describe('known solutions', () => {
  test('pure water is neutral, and neutrality moves with temperature', () => {
    expect(closed({}).pH).toBeCloseTo(7, 2);
    // Plummer and Busenberg 1982: log Kw -14.7322 at 5 °C and -13.6875 at 35 °C.
    expect(closed({}, 5).pH).toBeCloseTo(14.7322 / 2, 2);
    expect(closed({}, 35).pH).toBeCloseTo(13.6875 / 2, 2);
  });

  test('rain: pure water under 420 ppm CO2 stands near pH 5.6', () => {
    // From the constants of Plummer and Busenberg 1982: 5.60 at 25 °C and 420 ppm, 5.61 at 400 ppm.
    expect(open({}).pH).toBeCloseTo(5.6, 1.7);
    expect(solve({ totals: {}, temperature_C: 25, air: { CO2_atm: 400e-6 } }).pH).toBeCloseTo(5.61, 1.7);
  });

  // Buck et al. 2002, Pure Appl. Chem. 74:2169, and Staples and Bates 1969: certified pH standards at 25 °C.
  test.each([
    ['equimolal phosphate', { K: 0.025, Na: 0.05, PO4: 0.05 }, 6.865],
    ['phthalate', { K: 0.05, phthalate: 0.05 }, 4.005],
    ['borax', { Na: 0.02, B: 0.04 }, 9.18],
  ])('the %s buffer meets its certificate', (_, totals, certified) => {
    expect(Math.abs(closed(totals).pH - certified)).toBeLessThan(0.03);
  });

  test('Hoagland’s second solution holds its ions and is acid in air', () => {
    // Hoagland and Arnon 1950, Circular 347, solution 2: 1 mM NH4H2PO4, 6 KNO3, 4 Ca(NO3)2, 2 MgSO4.
    const solution = open({ NH4: 1e-3, PO4: 1e-3, K: 6e-3, NO3: 14e-3, Ca: 4e-3, Mg: 2e-3, SO4: 2e-3 });
    expect(solution.pH).toBeCloseTo(4.93, 1.7);
    expect(solution.ionicStrength).toBeCloseTo(0.0249, 3);
    // 7 % of the calcium and 15 % of the sulfate are paired with each other.
    expect((solution.species.CaSO4 ?? 0) / 4e-3).toBeCloseTo(0.072, 2);
  });

  test('gypsum dissolves to about 2.6 g/L before it is saturated', () => {
    // CRC Handbook: 2.4 to 2.6 g/L; 15 mmol/L is 2.6 g/L.
    const solution = closed({ Ca: 0.015, SO4: 0.015 });
    expect((solution.species.CaSO4 ?? 0) / 0.015).toBeGreaterThan(0.25);
  });

  test('a solution stronger than any pH scale is answered with the end of the scale and its residual', () => {
    const solution = closed({ NO3: 500 });
    expect(solution.pH).toBe(-2);
    expect(solution.account.residual).toBeLessThan(0);
  });
});

describe('what it costs', () => {
  const nutrient = { NH4: 1e-3, PO4: 1e-3, K: 6e-3, NO3: 14e-3, Ca: 4e-3, Mg: 2e-3, SO4: 2e-3, CO3: 1e-3 };

  test('a pH is found in few more sweeps than it takes to fill a pool at a pH that is known', () => {
    const known = solveAt({ totals: nutrient, temperature_C: 20, air: 'closed' }, 6).account.sweeps;
    expect(known).toBeLessThanOrEqual(9);
    expect(closed(nutrient, 20).account.sweeps).toBeLessThanOrEqual(13);
    expect(open(nutrient, 20).account.sweeps).toBeLessThanOrEqual(13);
  });
});

describe('laws', () => {
  test('the charges of every solution balance, and the mass balance comes to rest', () => {
    fc.assert(
      fc.property(anySolution, anyTemperature, anyAir, (totals, temperature_C, air) => {
        const solution = solve({ totals, temperature_C, air });
        expect(solution.account.settled).toBe(true);
        expect(Math.abs(chargeOf(solution))).toBeLessThan(1e-8);
        expect(solution.account.sweeps).toBeLessThan(100);
      }),
    );
  });

  test('the quick steps towards a pH and the search that cannot fail agree', () => {
    fc.assert(
      fc.property(anySolution, anyTemperature, anyAir, (totals, temperature_C, air) => {
        const question = { totals, temperature_C, air };
        const quick = poolFor(question);
        const safe = poolFor(question);
        balanceBetween(safe, 7);
        if (settleAtPH(quick, 7, () => quick.charge)) expect(quick.pH).toBeCloseTo(safe.pH, 7);
        expect(solve(question).pH).toBeCloseTo(safe.pH, 7);
      }),
    );
  });

  test('nothing is lost: the forms of each component add up to its total', () => {
    fc.assert(
      fc.property(
        anySolution,
        anyTemperature,
        fc.double({ min: 2, max: 11, noNaN: true }),
        (totals, temperature_C, pH) => {
          const solution = solveAt({ totals, temperature_C, air: 'closed' }, pH);
          for (const key of componentKeys) expect(amountOf(solution, key)).toBeCloseTo(totals[key] ?? 0, 9);
        },
      ),
    );
  });

  test('net charge falls as pH rises, so the bracket is sound', () => {
    fc.assert(
      fc.property(anySolution, anyAir, fc.double({ min: 0, max: 13, noNaN: true }), (totals, air, pH) => {
        const question = { totals, temperature_C: 20, air };
        const here = solveAt(question, pH).account.residual;
        expect(solveAt(question, pH + 0.2).account.residual).toBeLessThan(here);
      }),
    );
  });

  test('a solution in balance with air stays as it is in air', () => {
    fc.assert(
      fc.property(anySolution, anyTemperature, (totals, temperature_C) => {
        const aired = solve({ totals, temperature_C, air: 'open' });
        expect(solve({ totals: aired.totals, temperature_C, air: 'closed' }).pH).toBeCloseTo(aired.pH, 5);
        expect(standInAir(aired).pH).toBeCloseTo(aired.pH, 6);
      }),
    );
  });

  test('losing CO2 raises pH, taking it up lowers it, and alkalinity does not change', () => {
    fc.assert(
      fc.property(anySolution, totals => {
        const fresh = solve({ totals, temperature_C: 20, air: 'closed' });
        const aired = standInAir(fresh);
        if (fresh.pH < 3 || fresh.pH > 10 || aired.pH < 3) return;
        if (aired.inorganicCarbon < fresh.inorganicCarbon) expect(aired.pH).toBeGreaterThanOrEqual(fresh.pH - 1e-6);
        else expect(aired.pH).toBeLessThanOrEqual(fresh.pH + 1e-6);
        expect(aired.alkalinity).toBeCloseTo(fresh.alkalinity, 7);
      }),
    );
  });

  test('a measured pH is reproduced exactly once the solution is anchored to it', () => {
    fc.assert(
      fc.property(anySolution, anyAir, fc.double({ min: 3.5, max: 9, noNaN: true }), (totals, air, pH) => {
        const question = { totals, temperature_C: 20, air };
        const anchored = anchorTo(question, pH);
        expect(solve({ ...question, totals: anchored }).pH).toBeCloseTo(pH, 5);
      }),
    );
  });

  test('every reaction row balances in charge, and its constant is a number from 5 to 40 °C', () => {
    for (const { makes, of, logK } of reactions) {
      const charge = Object.entries(of).reduce(
        (sum, [key, n = 0]) => sum + (isSpecies(key) ? species[key].charge * n : 0),
        0,
      );
      expect(charge, makes).toBe(species[makes].charge);
      for (const temperature of [278.15, 298.15, 313.15])
        expect(Number.isFinite(logKAt(logK, temperature)), makes).toBe(true);
    }
  });
});

/** Net charge of a solution, counted anew from its species. */
function chargeOf(solution: Solution): number {
  const extra = (solution.totals.unknownCharge ?? 0) + (solution.totals.imbalance ?? 0);
  return Object.entries(solution.species).reduce(
    (sum, [key, amount]) => sum + (isSpecies(key) ? species[key].charge * amount : 0),
    extra,
  );
}

/** All that is there of a component, counted anew from its species. */
function amountOf(solution: Solution, key: Component): number {
  const own = components[key].species;
  const paired = members.filter(member => {
    const { cation, ligand } = member;
    return componentName(cation, 'cation') === key || componentName(ligand, 'ligand') === key;
  });
  const names = new Set<string>([own, ...paired.map(member => member.key)]);
  return Object.entries(solution.species).reduce((sum, [name, amount]) => sum + (names.has(name) ? amount : 0), 0);
}

function componentName(place: number, role: 'cation' | 'ligand'): Component | undefined {
  return componentKeys.filter(key => components[key].role === role)[place];
}
