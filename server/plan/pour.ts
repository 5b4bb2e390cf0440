// What is poured in all when each load's dose is measured with the tools on the bench.

import type { Tool } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { DoseFigure } from './dose.ts';
import { type AccountLine, type Figure, formula, type Outcome } from './figure.ts';
import { measure } from './measure.ts';

type Tools = readonly Sourced<Tool>[];

export function measuredDose(perLoad: DoseFigure, loads: Figure<'number'>, tools: Tools): DoseFigure {
  if (perLoad.kind === 'unknown') return perLoad;
  return perLoad.quantity.dimension === 'volume'
    ? measuredVolume({ dose: perLoad as Figure<'volume'>, loads }, tools)
    : measuredMass({ dose: perLoad as Figure<'mass'>, loads }, tools);
}

export const measuredVolume = formula({
  id: 'measured-dose-by-volume',
  says: 'the dose as the tools measure it',
  statement: 'poured = nearest measurable dose of a load × loads',
  source: 'tidemark-design',
  takes: { dose: 'volume', loads: 'number' },
  gives: 'volume',
  evaluate: ({ dose, loads }, tools: Tools) => poured(dose, loads, 'volume', tools),
  account: ({ dose }, tools) => nearest(dose, 'volume', tools),
});

export const measuredMass = formula({
  id: 'measured-dose-by-mass',
  says: 'the dose as the tools measure it',
  statement: 'poured = nearest measurable dose of a load × loads',
  source: 'tidemark-design',
  takes: { dose: 'mass', loads: 'number' },
  gives: 'mass',
  evaluate: ({ dose, loads }, tools: Tools) => poured(dose, loads, 'mass', tools),
  account: ({ dose }, tools) => nearest(dose, 'mass', tools),
});

/** How far what is poured is from the exact dose, as a share of it; above zero for too much. */
export function errorOf(measured: DoseFigure, exact: DoseFigure): Figure<'fraction'> {
  if (exact.kind === 'unknown') return exact;
  return exact.quantity.dimension === 'volume'
    ? errorOfVolume({ poured: measured as Figure<'volume'>, exact: exact as Figure<'volume'> })
    : errorOfMass({ poured: measured as Figure<'mass'>, exact: exact as Figure<'mass'> });
}

export const errorOfVolume = formula({
  id: 'measuring-error-by-volume',
  says: 'what measuring adds to the dose or takes from it',
  statement: 'error = poured ÷ exact − 1',
  source: 'tidemark-design',
  takes: { poured: 'volume', exact: 'volume' },
  gives: 'fraction',
  evaluate: ({ poured: measured, exact }) => relative(measured, exact),
});

export const errorOfMass = formula({
  id: 'measuring-error-by-mass',
  says: 'what measuring adds to the dose or takes from it',
  statement: 'error = poured ÷ exact − 1',
  source: 'tidemark-design',
  takes: { poured: 'mass', exact: 'mass' },
  gives: 'fraction',
  evaluate: ({ poured: measured, exact }) => relative(measured, exact),
});

function relative(measured: number, exact: number): Outcome {
  return exact > 0 ? measured / exact - 1 : { reason: 'a dose above zero' };
}

function poured(dose: number, loads: number, dimension: 'volume' | 'mass', tools: Tools): Outcome {
  const measured = measure(dose, dimension, tools);
  return measured.kind === 'measured' ? measured.amount * loads : { reason: 'a tool that measures so little' };
}

function nearest(dose: number, dimension: 'volume' | 'mass', tools: Tools): readonly AccountLine[] {
  const measured = measure(dose, dimension, tools);
  if (measured.kind !== 'measured') return [];
  return [
    { what: 'nearest measurable dose of a load', value: measured.amount, unit: dimension === 'volume' ? 'L' : 'g' },
  ];
}
