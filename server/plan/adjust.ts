// The adjustment of a batch: how much acid or base, a cautious first step, and the range that meter and tools leave open.

import { type Place, valueAt } from '../../schema/place.ts';
import { standInAir } from '../chemistry/air.ts';
import { anchorTo } from '../chemistry/anchor.ts';
import { type Question, type Solution, solve } from '../chemistry/solution.ts';
import { titrationCurve } from '../chemistry/titrate.ts';
import { addTotals } from '../chemistry/totals.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { adjustByComposition, adjustByResponse, firstStep, type Titration, widened } from './adjust-formulas.ts';
import type { BatchPlan } from './batch.ts';
import type { DoseFigure } from './dose.ts';
import { assumed, type Figure, given, numberOf, type Unknown, unknown } from './figure.ts';
import { lazily } from './lazy.ts';
import { asIfMeasured, type Learned, learn, meterError_pH } from './learn.ts';
import { memo } from './memo.ts';
import { mixtureOf } from './mixture.ts';
import { type DosedBy, type Reagent, reagentOf } from './reagent.ts';
import { figuresOf, type SolutionFigures, unknownFigures } from './solution.ts';
import { pHAfterAdding, shiftedPH, stateOf } from './state.ts';
import { writtenStrength } from './strength.ts';
import { unreadIn } from './unread.ts';

export interface AdjustmentPlan {
  readonly adjuster: Sourced<Adjuster> | undefined;
  readonly from: Figure<'pH'>;
  readonly to: Figure<'pH'>;
  readonly method: 'composition' | 'response' | 'learned' | 'unknown';
  readonly unit: DosedBy;
  readonly does: 'acid' | 'base' | undefined;
  /** For the whole batch. */
  readonly exact: DoseFigure;
  readonly firstStep: DoseFigure;
  readonly firstStepPH: Figure<'pH'>;
  readonly low: DoseFigure;
  readonly high: DoseFigure;
  readonly learned: Learned | undefined;
  /** pH against mL or g for the whole batch; empty where no titration can be had. */
  readonly curve: readonly { readonly amount: number; readonly pH: number }[];
}

/** Where the batch ends: after its adjustment, or as it stands where none is written. */
export interface FinalState {
  readonly figures: SolutionFigures;
  readonly inAir: SolutionFigures;
}

/** The adjustment that a batch asks for; undefined where it asks for none. */
export const adjustmentOf = memo((batch: BatchPlan): AdjustmentPlan | undefined => {
  const wanted = batch.needs.batch.value.adjust;
  if (wanted === undefined) return undefined;
  const state = stateOf(batch);
  const adjuster = batch.needs.adjuster;
  const at = valueAt([...batch.needs.batch.path, 'adjust', 'with']);
  const to = aimOf(batch);
  const base = { adjuster, from: state.pH, to };
  if (adjuster === undefined) return unknownAdjustment(base, unknown([{ says: 'the adjuster', at }]));
  const reagent = reagentOf(adjuster);
  const steps = state.steps.filter(step => step.adjuster === adjuster.name);
  const learned = learn(reagent, steps);
  if (learned !== undefined) return titrated(batch, base, learned, learned, at);
  if (reagent.kind === 'unknown') return unknownAdjustment(base, reagent);
  if (reagent.kind === 'composition') return titrated(batch, base, reagent, undefined, at);
  return responded(batch, base, reagent);
});

type Base = Pick<AdjustmentPlan, 'adjuster' | 'from' | 'to'>;

function titrated(
  batch: BatchPlan,
  base: Base,
  how: Pick<Learned, 'unit' | 'does' | 'perUnit'>,
  learned: Learned | undefined,
  at: Place,
): AdjustmentPlan {
  const { question, wants } = stateOf(batch);
  const { unit, does, perUnit } = how;
  const method = learned === undefined ? 'composition' : 'learned';
  if (question === undefined) return { ...unknownAdjustment(base, unknown(wants)), method, unit, does };
  const { from, to } = base;
  const { volume } = batch;
  const { tools } = batch.needs;
  const name = base.adjuster?.name ?? '';
  const titration: Titration = { question, perUnit, does, name };
  const strength = writtenStrength(base.adjuster);
  const exact = adjustByComposition[unit]({ from, to, volume, ...strength }, titration);
  const volume_L = numberOf(volume) ?? Number.NaN;
  const sign = does === 'acid' ? -1 : 1;
  const bound = (side: 1 | -1): DoseFigure => {
    const shifted = moved(from, -side * sign * uncertaintyOf(batch));
    const start = numberOf(shifted);
    if (start === undefined || exact.kind === 'unknown') return exact;
    const aim = moved(to, side * sign * meterError_pH);
    const other = { ...titration, question: asIfMeasured(question, start), floorAtZero: true };
    return widened(adjustByComposition[unit]({ from: shifted, to: aim, volume, ...strength }, other), { tools, side });
  };
  const plan: AdjustmentPlan = lazily<AdjustmentPlan>({
    ...plainly(base),
    method: () => method,
    unit: () => unit,
    does: () => does,
    learned: () => learned,
    exact: () => exact,
    firstStep: () => firstStep(exact, batch.loads, tools),
    firstStepPH: () => {
      const step = plan.firstStep;
      const units = unitsOf(step);
      if (units === undefined) return unknown(step.kind === 'unknown' ? step.wants : [{ says: 'a first step', at }]);
      const totals = addTotals(question.totals, perUnit, units / volume_L);
      return pHAfterAdding(
        {
          from,
          volumes: unit === 'mL' ? [step as Figure<'volume'>] : [],
          masses: unit === 'g' ? [step as Figure<'mass'>] : [],
          temperature: temperatureFigure(question),
        },
        { question: { ...question, totals }, what: name },
      );
    },
    low: () => bound(-1),
    high: () => bound(1),
    curve: () => {
      const most = (unitsOf(exact) ?? 0) * 1.5;
      if (most <= 0) return [];
      const amounts = Array.from({ length: 25 }, (_, index) => (most * index) / 24);
      const perLitre = amounts.map(amount => amount / volume_L);
      const points = titrationCurve(question, perUnit, perLitre);
      return points.map(({ pH }, index) => ({ amount: amounts[index] ?? 0, pH }));
    },
  });
  return plan;
}

function plainly({ adjuster, from, to }: Base) {
  return { adjuster: () => adjuster, from: () => from, to: () => to };
}

function unknownAdjustment(base: Base, missing: Unknown): AdjustmentPlan {
  return {
    ...base,
    method: 'unknown',
    unit: 'mL',
    does: undefined,
    exact: missing,
    firstStep: missing,
    firstStepPH: missing,
    low: missing,
    high: missing,
    learned: undefined,
    curve: [],
  };
}

function responded(batch: BatchPlan, base: Base, reagent: Extract<Reagent, { kind: 'response' }>): AdjustmentPlan {
  const { from, to } = base;
  const { unit, does, pHPerUnit } = reagent;
  const { volume } = batch;
  const { tools } = batch.needs;
  const exact = adjustByResponse[unit]({ from, to, volume }, { pHPerUnit });
  const bound = (side: 1 | -1): DoseFigure => {
    if (exact.kind === 'unknown') return exact;
    const error = uncertaintyOf(batch) + meterError_pH;
    const shifted = moved(from, -side * Math.sign(pHPerUnit) * error);
    return widened(adjustByResponse[unit]({ from: shifted, to, volume }, { pHPerUnit, floorAtZero: true }), {
      tools,
      side,
    });
  };
  const step = firstStep(exact, batch.loads, tools);
  const units = unitsOf(step);
  const firstStepPH =
    units === undefined || step.kind === 'unknown'
      ? unknown(step.kind === 'unknown' ? step.wants : [])
      : shiftedPH({ from }, (pHPerUnit * units) / (numberOf(volume) ?? Number.NaN));
  return {
    ...base,
    method: 'response',
    unit,
    does,
    exact,
    firstStep: step,
    firstStepPH,
    low: bound(-1),
    high: bound(1),
    learned: undefined,
    curve: [],
  };
}

/** Whether the adjuster leads away from the aim; false where that is not known. */
export function isWrongWay({ does, from, to }: AdjustmentPlan): boolean {
  const start = numberOf(from);
  const aim = numberOf(to);
  if (does === undefined || start === undefined || aim === undefined) return false;
  return does === 'acid' ? start < aim : aim < start;
}

/** How far the pH at the start may be off: the meter's error, or the model's where nothing was measured. */
export function uncertaintyOf(batch: BatchPlan): number {
  if (stateOf(batch).isMeasured) return meterError_pH;
  const { solved } = mixtureOf(batch);
  return solved.kind === 'solved' && solved.estimated ? 0.3 : 0.1;
}

function moved(figure: Figure<'pH'>, by: number): Figure<'pH'> {
  if (figure.kind === 'unknown') return figure;
  const value = figure.quantity.value + by;
  return assumed({ dimension: 'pH', value }, 'within the error of meter and model', 'common-practice');
}

function temperatureFigure(question: Question): Figure<'temperature'> {
  return assumed({ dimension: 'temperature', value: question.temperature_C }, 'of the batch', 'tidemark-design');
}

/** mL or g of a dose. */
function unitsOf(dose: DoseFigure): number | undefined {
  if (dose.kind === 'unknown') return undefined;
  return dose.quantity.dimension === 'volume' ? dose.quantity.value * 1000 : dose.quantity.value;
}

/** The pH to reach: as written, the target's aim, or the middle of its band. */
export function aimOf(batch: BatchPlan): Figure<'pH'> {
  const { needs } = batch;
  const written = needs.batch.value.adjust?.to;
  const pH = (value: number) => ({ dimension: 'pH', value }) as const;
  const at = valueAt([...needs.batch.path, 'adjust', 'to']);
  if (written !== undefined) return given(pH(written), at);
  const { target } = needs;
  const unread = [
    ...unreadIn(needs.batch.value.adjust, ['to'], [...needs.batch.path, 'adjust']),
    ...unreadIn(target?.value, ['pH-aim'], target?.path ?? [], target?.file),
  ];
  if (unread.length > 0) return unknown(unread);
  if (target?.value['pH-aim'] !== undefined) {
    return given(pH(target.value['pH-aim']), valueAt([...target.path, 'pH-aim'], target.file));
  }
  const band = target?.value.pH;
  if (target === undefined || band === undefined) return unknown([{ says: 'the pH to reach', at }]);
  return given(pH((band.low + band.high) / 2), valueAt([...target.path, 'pH'], target.file));
}

/** The solution that a batch ends as. */
export const finalOf = memo((batch: BatchPlan): FinalState => {
  const { solved } = mixtureOf(batch);
  const { question, wants } = stateOf(batch);
  if (solved.kind === 'unknown' || question === undefined) {
    const none = unknownFigures(unknown(wants));
    return { figures: none, inAir: none };
  }
  const adjustment = adjustmentOf(batch);
  const end =
    adjustment === undefined ? solve(question) : adjusted(question, adjustment, numberOf(batch.volume) ?? Number.NaN);
  if (end === undefined) {
    const none = unknownFigures(adjustment?.exact.kind === 'unknown' ? adjustment.exact : unknown([]));
    return { figures: none, inAir: none };
  }
  return lazily<FinalState>({
    figures: () => figuresOf(solved.inputs, end),
    inAir: () => figuresOf(solved.inputs, question.air === 'open' ? end : standInAir(end)),
  });
});

function adjusted(question: Question, adjustment: AdjustmentPlan, volume_L: number): Solution | undefined {
  const units = unitsOf(adjustment.exact);
  const to = numberOf(adjustment.to);
  if (units === undefined || to === undefined) return undefined;
  if (adjustment.method === 'response' || adjustment.adjuster === undefined) {
    return solve({ ...question, totals: anchorTo(question, to), near: to });
  }
  const reagent = reagentOf(adjustment.adjuster);
  const perUnit = adjustment.learned?.perUnit ?? (reagent.kind === 'composition' ? reagent.perUnit : {});
  return solve({ ...question, totals: addTotals(question.totals, perUnit, units / volume_L), near: to });
}
