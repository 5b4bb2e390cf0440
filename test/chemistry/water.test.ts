// Source waters from what a grower knows of them, and reports that cannot be true.

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Totals } from '../../server/chemistry/totals.ts';
import type { WaterReport } from '../../server/chemistry/water.ts';
import { waterFrom } from '../../server/chemistry/water.ts';

function water(report: WaterReport, ions: Totals = {}, temperature_C = 20) {
  const answer = waterFrom(report, ions, temperature_C);
  if (answer.kind !== 'water') throw new Error(answer.why);
  return answer;
}

const hard: Totals = { Ca: 1.15e-3, Mg: 0.29e-3, Na: 0.6e-3, Cl: 0.5e-3, SO4: 0.23e-3 };

describe('a source water', () => {
  test('from pH and alkalinity has both, and carbonate to match', () => {
    const { solution } = water({ kind: 'pH-and-alkalinity', pH: 7.8, alkalinity: 2.8e-3 }, hard);
    expect(solution.pH).toBe(7.8);
    expect(solution.alkalinity).toBeCloseTo(2.8e-3, 9);
    // Nearly all of the alkalinity of such a water is bicarbonate (Bailey, NC State HIL 558: more than 90 %).
    expect((solution.species['HCO3-'] ?? 0) / 2.8e-3).toBeGreaterThan(0.9);
  });

  test('from alkalinity alone stands where air puts it', () => {
    const { solution } = water({ kind: 'alkalinity-in-air', alkalinity: 2.8e-3 }, hard);
    expect(solution.pH).toBeGreaterThan(8.3);
    expect(solution.alkalinity).toBeCloseTo(2.8e-3, 9);
  });

  test('rain needs no report at all', () => {
    expect(water({ kind: 'alkalinity-in-air', alkalinity: 0 }).solution.pH).toBeCloseTo(5.58, 2);
    expect(water({ kind: 'ions-in-air' }).solution.pH).toBeCloseTo(5.58, 2);
  });

  test('from a lab report keeps its pH and shows what is missing', () => {
    const { solution, gap } = water({ kind: 'pH-in-air', pH: 6.9 }, { NO3: 10e-3, PO4: 1e-3, K: 5e-3, Ca: 2e-3 });
    expect(solution.pH).toBe(6.9);
    // Ten of nitrate and about 1.5 of phosphate against nine of potassium and calcium.
    expect(gap.charge * 1000).toBeCloseTo(-2.5, 0);
    expect(gap.percent).toBeLessThan(-5);
  });

  test('a gap is carried along as imbalance, so the water keeps its pH when it is solved again', () => {
    const { solution, gap } = water({ kind: 'pH-and-alkalinity', pH: 7.8, alkalinity: 2.8e-3 }, hard);
    expect(solution.totals.imbalance).toBeCloseTo(-gap.charge, 12);
    expect(solution.totals.unknownCharge).toBeUndefined();
  });

  test('whose pH and alkalinity contradict each other is refused, with what could be', () => {
    expect(waterFrom({ kind: 'pH-and-alkalinity', pH: 3.2, alkalinity: 2e-3 }, {}, 20)).toMatchObject({
      kind: 'impossible-water',
      why: 'alkalinity-too-high',
    });
    expect(waterFrom({ kind: 'pH-and-alkalinity', pH: 11, alkalinity: 0 }, {}, 20)).toMatchObject({
      kind: 'impossible-water',
      why: 'alkalinity-too-low',
    });
    expect(waterFrom({ kind: 'pH-and-alkalinity', pH: 4.4, alkalinity: 2e-3 }, {}, 20).kind).toBe('impossible-water');
  });

  test('any pH and alkalinity is answered: by a water that has them, or by a refusal', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 14, noNaN: true }),
        fc.double({ min: -0.01, max: 0.02, noNaN: true }),
        fc.double({ min: 5, max: 40, noNaN: true }),
        (pH, alkalinity, temperature_C) => {
          const answer = waterFrom({ kind: 'pH-and-alkalinity', pH, alkalinity }, hard, temperature_C);
          if (answer.kind === 'water') {
            expect(Math.abs(answer.solution.alkalinity - alkalinity)).toBeLessThan(2e-5);
            expect(answer.solution.pH).toBe(pH);
          } else expect(Number.isFinite(answer.reachable)).toBe(true);
        },
      ),
    );
  });
});
