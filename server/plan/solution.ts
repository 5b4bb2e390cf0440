// A solved solution as figures: pH, EC, ionic strength, alkalinity, saturation. The solver's own account is each step's detail.

import { conductivityAt25 } from '../chemistry/conduct.ts';
import { saturationIndex } from '../chemistry/saturate.ts';
import type { Solution } from '../chemistry/solution.ts';
import type { Mineral } from '../chemistry/tables/minerals.ts';
import { isSpecies, species } from '../chemistry/tables/species.ts';
import { type AccountLine, type Figure, formula, type Unknown, unknown } from './figure.ts';
import { lazily } from './lazy.ts';

/** What a solution rests on: the written and computed figures that went into it. */
export interface SolutionInputs {
  readonly pH: readonly Figure<'pH'>[];
  readonly alkalinity: readonly Figure<'charge-per-volume'>[];
  readonly dissolved: readonly Figure<'mass-per-volume'>[];
  readonly temperature: Figure<'temperature'>;
  /** The EC of ions that the water holds but does not list, as its measured EC shows. */
  readonly unlisted: readonly Figure<'conductivity'>[];
}

export interface SolutionFigures {
  readonly pH: Figure<'pH'>;
  readonly EC: Figure<'conductivity'>;
  readonly ionicStrength: Figure<'amount-per-volume'>;
  readonly alkalinity: Figure<'charge-per-volume'>;
  readonly saturation: Readonly<Record<ShownMineral, Figure<'number'>>>;
}

export const shownMinerals = [
  'gypsum',
  'brushite',
  'struvite',
  'calcite',
  'hydroxyapatite',
] as const satisfies Mineral[];
export type ShownMineral = (typeof shownMinerals)[number];

/** The figures of a solution; each computed when it is first asked for. */
export function figuresOf({ unlisted, ...from }: SolutionInputs, solution: Solution): SolutionFigures {
  return lazily<SolutionFigures>({
    pH: () => solutionPH(from, solution),
    EC: () => solutionEC({ ...from, unlisted }, solution),
    ionicStrength: () => solutionIonicStrength(from, solution),
    alkalinity: () => solutionAlkalinity(from, solution),
    saturation: () => {
      const makers = shownMinerals.map(mineral => [mineral, () => solutionSaturation(from, { solution, mineral })]);
      return lazily(Object.fromEntries(makers) as Record<ShownMineral, () => Figure<'number'>>);
    },
  });
}

/** Every figure unknown for the same reasons. */
export function unknownFigures({ wants }: Unknown): SolutionFigures {
  const none = unknown(wants);
  const saturation = Object.fromEntries(shownMinerals.map(mineral => [mineral, none]));
  return {
    pH: none,
    EC: none,
    ionicStrength: none,
    alkalinity: none,
    saturation: saturation as SolutionFigures['saturation'],
  };
}

const takes = {
  pH: ['pH'],
  alkalinity: ['charge-per-volume'],
  dissolved: ['mass-per-volume'],
  temperature: 'temperature',
} as const;

export const solutionPH = formula({
  id: 'solution-pH',
  says: 'the pH at which all charges balance',
  statement: 'pH where cations = anions, over all dissolved forms and ion pairs',
  source: 'usgs-phreeqc-database',
  takes,
  gives: 'pH',
  evaluate: (_, solution: Solution) => solution.pH,
  account: (_, solution) => formsOf(solution),
});

export const solutionEC = formula({
  id: 'solution-EC',
  says: 'the EC at 25 °C',
  statement: 'EC = sum of λ × charge × concentration over free ions, slowed by their neighbours',
  source: 'robinson-stokes-1959',
  takes: { ...takes, unlisted: ['conductivity'] },
  gives: 'conductivity',
  evaluate: ({ unlisted }, solution: Solution) =>
    unlisted.reduce((sum, more) => sum + more, conductivityAt25(solution)),
});

export const solutionIonicStrength = formula({
  id: 'solution-ionic-strength',
  says: 'the ionic strength',
  statement: 'I = half the sum of concentration × charge²',
  source: 'davies-1962',
  takes,
  gives: 'amount-per-volume',
  evaluate: (_, solution: Solution) => solution.ionicStrength * 1000,
});

export const solutionAlkalinity = formula({
  id: 'solution-alkalinity',
  says: 'the alkalinity',
  statement: 'alkalinity = acid it takes to bring the solution to about pH 4.5',
  source: 'standard-methods-2320',
  takes,
  gives: 'charge-per-volume',
  evaluate: (_, solution: Solution) => solution.alkalinity * 1000,
});

export const solutionSaturation = formula({
  id: 'saturation-index',
  says: 'how near the solution is to dropping the solid',
  statement: 'index = log10(ion product ÷ solubility product)',
  source: 'usgs-phreeqc-database',
  takes,
  gives: 'number',
  evaluate: (_, { solution, mineral }: { readonly solution: Solution; readonly mineral: Mineral }) =>
    saturationIndex(solution, mineral) ?? { reason: `the ions of ${mineral} in the solution` },
});

/** The forms that make up most of the solution, and how the balance was reached. */
function formsOf(solution: Solution): readonly AccountLine[] {
  const forms = Object.entries(solution.species)
    .filter(([key, amount]) => isSpecies(key) && amount >= 1e-5)
    .sort(([, a], [, b]) => b - a)
    .slice(0, 12)
    .map(([key, amount]) => ({
      what: isSpecies(key) ? species[key].formula : key,
      value: amount * 1000,
      unit: 'mmol/L',
    }));
  const { unknownCharge = 0, imbalance = 0 } = solution.totals;
  const line = (what: string, eq: number): AccountLine[] =>
    Math.abs(eq) < 1e-6 ? [] : [{ what, value: eq * 1000, unit: 'meq/L' }];
  return [
    ...forms,
    ...line('ions that the labels do not name, by their charge', unknownCharge),
    ...line('charge that the stated figures leave open', imbalance),
    { what: 'charge left over', value: solution.account.residual * 1000, unit: 'meq/L' },
  ];
}
