// A source water worked out from what is known of it: pH and alkalinity, alkalinity alone, or a lab report.

import { type Place, valueAt } from '../../schema/place.ts';
import { standInAir } from '../chemistry/air.ts';
import { conductivityAt25 } from '../chemistry/conduct.ts';
import type { Solution } from '../chemistry/solution.ts';
import type { IonGap } from '../chemistry/water.ts';
import type { Batch, Water } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { elementsOfWater } from './elements.ts';
import { assumed, type Figure, formula, given, numberOf, type Unknown, unknown, type Want } from './figure.ts';
import { lazily } from './lazy.ts';
import { memo } from './memo.ts';
import { figuresOf, type SolutionFigures, type SolutionInputs, unknownFigures } from './solution.ts';
import { unreadAny, unreadIn } from './unread.ts';
import { alkalinityOf, findWater, type Impossible, type StatedIons, statedIons } from './water-report.ts';

export interface WaterPlan {
  readonly water: Sourced<Water>;
  readonly solved: SolvedWater | Unknown;
  readonly figures: SolutionFigures;
  readonly inAir: SolutionFigures;
  readonly carbon: CarbonFigures;
  /** Why no water can be as stated, where that is so. */
  readonly impossible: Impossible | undefined;
}

export interface SolvedWater {
  readonly kind: 'solved';
  readonly solution: Solution;
  readonly inputs: SolutionInputs;
  /** How far the stated ions are from balance. */
  readonly gap: IonGap;
  readonly stated: StatedIons;
  /** True where the alkalinity follows only from the difference of the stated ions, which their errors make uncertain. */
  readonly isByDifference: boolean;
}

export interface CarbonFigures {
  readonly total: Figure<'amount-per-volume'>;
  readonly CO2: Figure<'amount-per-volume'>;
  readonly HCO3: Figure<'amount-per-volume'>;
  readonly CO3: Figure<'amount-per-volume'>;
}

/** The temperatures at which the constants hold, °C. */
export const solvedTemperatures = { low: 5, high: 40 } as const;

/** Taken where neither water nor batch gives a temperature. */
export const usualTemperature = assumed(
  { dimension: 'temperature', value: 20 },
  'where no temperature is written',
  'common-practice',
);

/** A water by itself. */
export function planWater(water: Sourced<Water>): WaterPlan {
  return planWaterAt(undefined, water);
}

/** A water as it goes into a batch: where it says no temperature of its own, it is taken to have the batch's. */
export function planWaterFor(water: Sourced<Water>, batch: Sourced<Batch>): WaterPlan {
  const isOwn = water.value.temperature !== undefined || batch.value.temperature === undefined;
  return planWaterAt(isOwn ? undefined : batch, water);
}

const planWaterAt = memo((batch: Sourced<Batch> | undefined, water: Sourced<Water>): WaterPlan => {
  const found = solveWater(water, temperatureOf(water, batch));
  if (found.solved.kind === 'unknown') {
    const none = unknownFigures(found.solved);
    const carbon = { total: found.solved, CO2: found.solved, HCO3: found.solved, CO3: found.solved };
    return { water, ...found, figures: none, inAir: none, carbon };
  }
  const { solution, inputs } = found.solved;
  const carbonOf = (form: CarbonForm) => () => carbonForm(takenBy(inputs), { solution, form });
  const makers = {
    figures: () => figuresOf(inputs, solution),
    inAir: () => figuresOf(inputs, standInAir(solution)),
    carbon: () =>
      lazily<CarbonFigures>({
        total: carbonOf('total'),
        CO2: carbonOf('CO2'),
        HCO3: carbonOf('HCO3-'),
        CO3: carbonOf('CO3-2'),
      }),
  };
  return lazily(makers, { water, ...found });
});

interface Temperature {
  readonly figure: Figure<'temperature'>;
  readonly at: Place;
}

function temperatureOf(water: Sourced<Water>, batch: Sourced<Batch> | undefined): Temperature {
  const own = water.value.temperature;
  const at = valueAt([...water.path, 'temperature'], water.file);
  if (own !== undefined) return { figure: given(own, at), at };
  const batches = batch?.value.temperature;
  if (batch === undefined || batches === undefined) return { figure: usualTemperature, at };
  const batchAt = valueAt([...batch.path, 'temperature'], batch.file);
  return { figure: given(batches, batchAt), at: batchAt };
}

function solveWater(water: Sourced<Water>, temperature: Temperature): Pick<WaterPlan, 'solved' | 'impossible'> {
  const unread = unreadOf(water);
  if (unread.length > 0) return { solved: unknown(unread), impossible: undefined };
  const outside = outsideConstants(temperature.figure, temperature.at);
  if (outside !== undefined) return { solved: outside, impossible: undefined };
  const { found, stated, alkalinity, dissolved, unlisted } = foundAt(water, numberOf(temperature.figure) ?? 20);
  if (found.kind === 'none') return { solved: found.missing, impossible: found.impossible };
  const { pH } = water.value;
  const at = valueAt([...water.path, 'pH'], water.file);
  const { solution, gap } = found.water;
  const inputs: SolutionInputs = {
    pH: pH === undefined ? [] : [given({ dimension: 'pH', value: pH } as const, at)],
    alkalinity: alkalinity === undefined ? [] : [alkalinity],
    dissolved,
    temperature: temperature.figure,
    unlisted,
  };
  const { isByDifference } = found;
  return {
    solved: { kind: 'solved', solution, inputs, gap, stated, isByDifference },
    impossible: undefined,
  };
}

/** What is found at a temperature, whoever states it: batches of one temperature share it. */
const foundAt = memo((water: Sourced<Water>, temperature_C: number) => {
  const report = readReport(water);
  const found = findWater(water, report.stated, report.alkalinity, temperature_C);
  const unlisted = found.kind === 'found' ? unlistedEC(water, report.stated, found.water.solution) : [];
  return { ...report, found, unlisted };
});

const readReport = memo((water: Sourced<Water>) => ({
  stated: statedIons(water),
  alkalinity: alkalinityOf(water),
  dissolved: [...elementsOfWater(water).values()].filter(figure => figure.kind === 'known'),
}));

function unreadOf({ value, path, file }: Sourced<Water>): readonly Want[] {
  return [
    ...unreadIn(value, ['pH', 'alkalinity', 'temperature', 'air', 'ions'], path, file),
    ...unreadAny(value.ions, [...path, 'ions'], file),
  ];
}

/** What a measured EC says of ions that no report lists: nothing where cations and anions are listed. */
function unlistedEC(
  water: Sourced<Water>,
  { cations, anions }: StatedIons,
  solution: Solution,
): readonly Figure<'conductivity'>[] {
  const measured = water.value.EC;
  if (measured === undefined || (cations > 0 && anions > 0)) return [];
  const figure = given(measured, valueAt([...water.path, 'EC'], water.file));
  return [unlistedConductivity({ measured: figure }, solution)];
}

/** Why nothing is solved outside the temperatures of the constants; undefined inside them. */
export function outsideConstants(temperature: Figure<'temperature'>, at: Place): Unknown | undefined {
  const value = numberOf(temperature);
  if (value === undefined) return unknown([{ says: 'the temperature', at }]);
  const { low, high } = solvedTemperatures;
  if (low <= value && value <= high) return undefined;
  return unknown([{ says: `a temperature from ${low} to ${high} °C`, at }]);
}

type CarbonForm = 'total' | 'CO2' | 'HCO3-' | 'CO3-2';

function takenBy({ pH, alkalinity, dissolved, temperature }: SolutionInputs) {
  return { pH, alkalinity, dissolved, temperature };
}

export const carbonForm = formula({
  id: 'dissolved-carbon',
  says: 'dissolved inorganic carbon, all of it or in one form',
  statement: 'carbon that gives this alkalinity at this pH, split by pK1 and pK2',
  source: 'plummer-busenberg-1982',
  takes: {
    pH: ['pH'],
    alkalinity: ['charge-per-volume'],
    dissolved: ['mass-per-volume'],
    temperature: 'temperature',
  },
  gives: 'amount-per-volume',
  evaluate: (_, { solution, form }: { readonly solution: Solution; readonly form: CarbonForm }) =>
    1000 * (form === 'total' ? solution.inorganicCarbon : (solution.species[form] ?? 0)),
});

export const unlistedConductivity = formula({
  id: 'unlisted-EC',
  says: 'the EC of the ions that nothing is said of',
  statement: 'EC of unlisted ions = measured EC − EC of the ions that are known, or nothing',
  source: 'tidemark-design',
  takes: { measured: 'conductivity' },
  gives: 'conductivity',
  evaluate: ({ measured }, solution: Solution) => Math.max(0, measured - conductivityAt25(solution)),
});
