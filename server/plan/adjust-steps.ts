// An adjustment as it is worked at the bench: half of what is left at a time, down to what the tools measure, with the pH to
// expect after each step. Of one load, since each load is adjusted by itself.

import { addTotals } from '../chemistry/totals.ts';
import { adjustmentOf } from './adjust.ts';
import { firstStep } from './adjust-formulas.ts';
import { loadAdjustmentOf } from './adjust-loads.ts';
import type { BatchPlan } from './batch.ts';
import type { DoseFigure } from './dose.ts';
import { assumed, type Figure, formula, numberOf, unknown } from './figure.ts';
import { measuredOnce } from './loads.ts';
import { finestStep, type Measured, measure } from './measure.ts';
import { memo } from './memo.ts';
import { reagentOf } from './reagent.ts';
import { pHAfterAdding, shiftedPH, stateOf } from './state.ts';

export interface AdjustStep {
  readonly add: DoseFigure;
  /** How it is measured. */
  readonly measured: Measured;
  /** After it is stirred in. */
  readonly pH: Figure<'pH'>;
}

/** Halves that are taken before the rest: after three of them an eighth is left, which no curve is steep enough to make dangerous. */
const halves = 3;

/** The steps for one load; none where nothing is to be added or the amount is not known. */
export const adjustStepsOf = memo((batch: BatchPlan): readonly AdjustStep[] => {
  const exact = loadAdjustmentOf(batch)?.exact ?? adjustmentOf(batch)?.exact;
  if (exact === undefined || exact.kind === 'unknown' || exact.quantity.value <= 0) return [];
  const { tools } = batch.needs;
  const added: DoseFigure[] = [];
  const steps: AdjustStep[] = [];
  const { dimension } = exact.quantity;
  const finest = finestStep(dimension, tools) ?? 0;
  const take = (add: DoseFigure): void => {
    added.push(add);
    steps.push({ add, measured: measure(numberOf(add) ?? 0, dimension, tools), pH: expectedPH(batch, added) });
  };
  let rest: DoseFigure = exact;
  while (steps.length < halves && (numberOf(rest) ?? 0) > finest * (1 + slack)) {
    take(firstStep(rest, measuredOnce, tools));
    rest = restAfter(exact, added);
  }
  // What is left and can be measured; less than half of the finest step is nothing at the bench.
  const last = lastStep(rest, finest);
  if ((numberOf(last) ?? 0) > 0) take(last);
  return steps;
});

const slack = 1e-9;

function expectedPH(batch: BatchPlan, added: readonly DoseFigure[]): Figure<'pH'> {
  const adjustment = adjustmentOf(batch);
  const { question, wants } = stateOf(batch);
  const load_L = numberOf(batch.loadVolume);
  if (adjustment?.adjuster === undefined || load_L === undefined) return unknown(wants);
  const reagent = reagentOf(adjustment.adjuster);
  const { from, unit, learned } = adjustment;
  const perLitre = added.reduce((sum, dose) => sum + (numberOf(dose) ?? 0) * (unit === 'mL' ? 1000 : 1), 0) / load_L;
  if (learned === undefined && reagent.kind === 'response') return shiftedPH({ from }, reagent.pHPerUnit * perLitre);
  const perUnit = learned?.perUnit ?? (reagent.kind === 'composition' ? reagent.perUnit : undefined);
  if (question === undefined || perUnit === undefined) return unknown(wants);
  return pHAfterAdding(
    {
      from,
      volumes: unit === 'mL' ? (added as readonly Figure<'volume'>[]) : [],
      masses: unit === 'g' ? (added as readonly Figure<'mass'>[]) : [],
      temperature: assumed(
        { dimension: 'temperature', value: question.temperature_C },
        'of the batch',
        'tidemark-design',
      ),
    },
    {
      question: { ...question, totals: addTotals(question.totals, perUnit, perLitre) },
      what: adjustment.adjuster.name,
    },
  );
}

function restAfter(exact: DoseFigure, added: readonly DoseFigure[]): DoseFigure {
  if (exact.kind === 'unknown') return exact;
  return exact.quantity.dimension === 'volume'
    ? restOfVolume({ exact: exact as Figure<'volume'>, added: added as readonly Figure<'volume'>[] })
    : restOfMass({ exact: exact as Figure<'mass'>, added: added as readonly Figure<'mass'>[] });
}

function lastStep(rest: DoseFigure, finest: number): DoseFigure {
  if (rest.kind === 'unknown') return rest;
  return rest.quantity.dimension === 'volume'
    ? lastVolume({ rest: rest as Figure<'volume'> }, finest)
    : lastMass({ rest: rest as Figure<'mass'> }, finest);
}

const remaining = {
  says: 'what is left of the adjustment',
  statement: 'rest = amount − what was added',
  source: 'tidemark-design',
} as const;

export const restOfVolume = formula({
  id: 'rest-of-adjustment',
  ...remaining,
  takes: { exact: 'volume', added: ['volume'] },
  gives: 'volume',
  evaluate: ({ exact, added }) => left(exact, added),
});

export const restOfMass = formula({
  id: 'rest-of-adjustment-in-grams',
  ...remaining,
  takes: { exact: 'mass', added: ['mass'] },
  gives: 'mass',
  evaluate: ({ exact, added }) => left(exact, added),
});

function left(exact: number, added: readonly number[]): number {
  return Math.max(
    0,
    added.reduce((rest, one) => rest - one, exact),
  );
}

const final = {
  says: 'the last step of the adjustment, as the tools measure it',
  statement: 'last step = rest, to the nearest step of the finest tool',
  source: 'tidemark-design',
} as const;

export const lastVolume = formula({
  id: 'last-step',
  ...final,
  takes: { rest: 'volume' },
  gives: 'volume',
  evaluate: ({ rest }, finest: number) => toStep(rest, finest),
});

export const lastMass = formula({
  id: 'last-step-in-grams',
  ...final,
  takes: { rest: 'mass' },
  gives: 'mass',
  evaluate: ({ rest }, finest: number) => toStep(rest, finest),
});

function toStep(rest: number, finest: number): number {
  return finest > 0 ? Math.round(rest / finest) * finest : rest;
}
