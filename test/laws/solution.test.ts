// Laws of every solution that a plan holds, over random recipes: the steps run again give the figures, the solver finds its own
// answer again, nothing is lost between bottle and batch, and more acid is needed for a lower aim.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Solution, solve } from '../../server/chemistry/solution.ts';
import { chargeOfTotals, type Totals } from '../../server/chemistry/totals.ts';
import { type Figure, numberOf, runAgain, stepsOf } from '../../server/plan/figure.ts';
import { shownMinerals } from '../../server/plan/solution.ts';
import { known, type WorkedOut, workedOut } from '../plan/worked-out.ts';
import { markedRecipe } from '../recipe.ts';

const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map(value => Number(value.toFixed(3)));

interface Drawn {
  readonly pH: number;
  readonly alkalinity: number;
  readonly temperature: number;
  readonly air: string;
  readonly grams: readonly [number, number, number];
  readonly volume: number;
  readonly aim: number;
}

const drawn: fc.Arbitrary<Drawn> = fc.record({
  pH: number(6.6, 8.2),
  alkalinity: number(5, 300),
  temperature: number(6, 39),
  air: fc.constantFrom('closed', 'open'),
  grams: fc.tuple(number(0.01, 1.2), number(0.01, 0.5), number(0.01, 0.6)),
  volume: number(1, 200),
  aim: number(5, 6.2),
});

function recipeOf({ pH, alkalinity, temperature, air, grams, volume, aim }: Drawn): WorkedOut {
  const [calcium, phosphate, sulfate] = grams;
  return workedOut(
    markedRecipe(`recipe: 1
waters:
  mains: { pH: ${pH}, alkalinity: ${alkalinity} mg/L CaCO3, temperature: ${temperature} °C, ions: { Ca: ${(alkalinity / 4).toFixed(2)} mg/L, Na: 9 mg/L, Cl: 11 mg/L } }
feeds:
  lime-nitrate: { formula: Ca(NO3)2·4H2O }
  phosphate: { formula: KH2PO4 }
  leaf: { analysis: { N: 4 %, P2O5: 2 %, K2O: 5 %, S: 1 % }, nitrogen: { nitrate: 3 %, ammonium: 1 % } }
adjusters:
  down: { acid: { phosphoric: 10 % }, density: 1.053 kg/L }
batches:
  tub:
    water: mains
    volume: ${volume} L
    air: ${air}
    feed: { lime-nitrate: ${calcium} g/L, phosphate: ${phosphate} g/L, leaf: ${sulfate} g/L }
    readings: [{ pH: 7 }, { add: { down: ${(volume / 50).toFixed(3)} mL } }]
    adjust: { with: down, to: ${aim} }
`),
  );
}

/** Every figure that a batch and its water show. */
function figuresOf({ water, mixture, state, adjustment, final }: WorkedOut): readonly Figure[] {
  const ofSolutions = [mixture('tub').predicted, mixture('tub').inAir, final('tub').figures, final('tub').inAir];
  const { figures, inAir, carbon } = water('mains');
  const { exact, firstStep, firstStepPH, low, high } = adjustment('tub');
  return [
    ...[...ofSolutions, figures, inAir].flatMap(({ pH, EC, ionicStrength, alkalinity, saturation }) => [
      ...[pH, EC, ionicStrength, alkalinity],
      ...shownMinerals.map(mineral => saturation[mineral]),
    ]),
    ...[carbon.total, carbon.CO2, carbon.HCO3, carbon.CO3],
    ...state('tub').readings.map(({ predicted }) => predicted),
    ...[exact, firstStep, firstStepPH, low, high],
  ];
}

test('every step of every figure, run again from its inputs, gives the figure', () => {
  fc.assert(
    fc.property(drawn, given => {
      for (const figure of figuresOf(recipeOf(given))) {
        for (const step of stepsOf(figure)) {
          const again = runAgain(step);
          const value = typeof again === 'number' ? again : Number.NaN;
          const first = figure.kind === 'known' && figure.by === step ? figure.quantity.value : value;
          expect(value, step.formula.id).toBe(first);
        }
      }
    }),
    { numRuns: 15 },
  );
});

test('the solver finds the pH of a figure again from what the figure was told', () => {
  fc.assert(
    fc.property(drawn, given => {
      const { mixture, final, water } = recipeOf(given);
      const shown = [mixture('tub').predicted, mixture('tub').inAir, final('tub').figures, water('mains').figures];
      for (const { pH } of shown) {
        const solution = solutionOf(pH);
        const again = solve({ totals: solution.totals, temperature_C: solution.temperature_C, air: 'closed' });
        expect(again.pH).toBeCloseTo(known(pH), 6);
      }
    }),
    { numRuns: 15 },
  );
});

test('what goes in is in the batch, and charges balance', () => {
  fc.assert(
    fc.property(drawn, given => {
      const { mixture, batch, water } = recipeOf(given);
      const solution = solutionOf(mixture('tub').predicted.pH);
      const { totals } = solution;
      const elements = batch('tub').elements;
      const molar = { Ca: 40.078, PO4: 30.974, K: 39.098 } as const;
      for (const [component, weight] of Object.entries(molar)) {
        const element = component === 'PO4' ? 'P' : (component as 'Ca' | 'K');
        const mg = known(elements.get(element));
        expect((totals[component as keyof Totals] ?? 0) * weight * 1000).toBeCloseTo(mg, 3);
      }
      // The protons that a neutral solution must hold beside its totals are bound or free in its species.
      const residual = solution.account.residual;
      expect(Math.abs(residual)).toBeLessThan(1e-9);
      expect(Number.isFinite(chargeOfTotals(totals))).toBe(true);
      // Mixing moves no carbon in a closed vessel.
      if (given.air === 'closed')
        expect(solution.inorganicCarbon * 1000).toBeCloseTo(known(water('mains').carbon.total), 9);
    }),
    { numRuns: 25 },
  );
});

test('a lower aim needs more acid', () => {
  fc.assert(
    fc.property(drawn, given => {
      const dose = (aim: number, volume = given.volume) => {
        const readings = recipeOf({ ...given, aim, volume }).adjustment('tub').exact;
        return numberOf(readings);
      };
      const near = dose(given.aim);
      const far = dose(given.aim - 0.3);
      if (near === undefined || far === undefined) return;
      expect(far).toBeGreaterThan(near);
    }),
    { numRuns: 25 },
  );
});

function solutionOf(pH: Figure): Solution {
  if (pH.kind === 'unknown' || pH.by.kind !== 'step') throw new Error('a pH that no solver gave');
  return pH.by.context as Solution;
}
