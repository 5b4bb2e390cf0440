// The adjustment of a batch: how much acid or base, a cautious first step, and the range that meter and tools leave open.

import { once } from '../../schema/once.ts';
import { type Place, valueAt } from '../../schema/place.ts';
import { standInAir } from '../chemistry/air.ts';
import { anchorTo } from '../chemistry/anchor.ts';
import { type Question, type Solution, solveAt } from '../chemistry/solution.ts';
import { titrationCurve } from '../chemistry/titrate.ts';
import { addTotals } from '../chemistry/totals.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import {
  adjustByComposition,
  adjustByResponse,
  firstStep,
  type Titration,
  titration,
  wayTo,
  widened,
} from './adjust-formulas.ts';
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
  /** Undefined where that is not known. */
  readonly solution: Solution | undefined;
  readonly figures: SolutionFigures;
  readonly inAir: SolutionFigures;
}

/** The adjustment that a batch asks for; undefined where it asks for none. */
export const adjustmentOf = memo((batch: BatchPlan): AdjustmentPlan | undefined => {
  const wanted = batch.needs.batch.value.adjust;
  if (wanted === undefined) return undefined;
  const adjuster = batch.needs.adjuster;
  const at = valueAt([...batch.needs.batch.path, 'adjust', 'with']);
  const base = { adjuster, from: () => stateOf(batch).pH, to: aimOf(batch) };
  if (adjuster === undefined) return unknownAdjustment(base, unknown([{ says: 'the adjuster', at }]));
  const reagent = reagentOf(adjuster);
  if (reagent.kind === 'composition') return titrated(batch, base, reagent, at);
  const learned = learnedOf(batch);
  if (learned !== undefined) return titrated(batch, base, learned, at);
  return reagent.kind === 'unknown' ? unknownAdjustment(base, reagent) : responded(batch, base, reagent);
});

interface Base {
  readonly adjuster: AdjustmentPlan['adjuster'];
  readonly from: () => Figure<'pH'>;
  readonly to: Figure<'pH'>;
}

/** What the readings of a batch show of its adjuster's strength. */
const learnedOf = memo((batch: BatchPlan): Learned | undefined => {
  const { adjuster } = batch.needs;
  const steps = stateOf(batch).steps.filter(step => step.adjuster === adjuster?.name);
  return adjuster === undefined ? undefined : learn(reagentOf(adjuster), steps);
});

function titrated(
  batch: BatchPlan,
  base: Base,
  { unit, does, perUnit: written }: Pick<Learned, 'unit' | 'does' | 'perUnit'>,
  at: Place,
): AdjustmentPlan {
  const { question, wants } = stateOf(batch);
  if (question === undefined) {
    return { ...unknownAdjustment(base, unknown(wants)), method: 'composition', unit, does };
  }
  const { to } = base;
  const { volume } = batch;
  const { tools } = batch.needs;
  const strength = once(() => writtenStrength(base.adjuster));
  const bench = (): Titration => {
    const perUnit = learnedOf(batch)?.perUnit ?? written;
    return { question, perUnit, does, name: base.adjuster?.name ?? '' };
  };
  const volume_L = numberOf(volume) ?? Number.NaN;
  const sign = does === 'acid' ? -1 : 1;
  const bound = (side: 1 | -1): DoseFigure => {
    const { from, exact } = plan;
    const shifted = moved(from, -side * sign * uncertaintyOf(batch));
    const start = numberOf(shifted);
    if (start === undefined || exact.kind === 'unknown') return exact;
    const aim = moved(to, side * sign * meterError_pH);
    const other = { ...bench(), question: asIfMeasured(question, start), floorAtZero: true };
    return widened(adjustByComposition[unit]({ from: shifted, to: aim, volume, ...strength() }, other), {
      tools,
      side,
    });
  };
  const makers: Makers = {
    from: base.from,
    method: () => (learnedOf(batch) === undefined ? 'composition' : 'learned'),
    learned: () => learnedOf(batch),
    exact: () => adjustByComposition[unit]({ from: plan.from, to, volume, ...strength() }, bench()),
    firstStep: () => firstStep(plan.exact, batch.loads, tools),
    firstStepPH: () => {
      const step = plan.firstStep;
      const units = unitsOf(step);
      if (units === undefined) return unknown(step.kind === 'unknown' ? step.wants : [{ says: 'a first step', at }]);
      const totals = addTotals(question.totals, bench().perUnit, units / volume_L);
      return pHAfterAdding(
        {
          from: plan.from,
          volumes: unit === 'mL' ? [step as Figure<'volume'>] : [],
          masses: unit === 'g' ? [step as Figure<'mass'>] : [],
          temperature: temperatureFigure(question),
        },
        { question: { ...question, totals }, what: base.adjuster?.name ?? '' },
      );
    },
    low: () => bound(-1),
    high: () => bound(1),
    curve: () => {
      const most = (unitsOf(plan.exact) ?? 0) * 1.5;
      if (most <= 0) return [];
      const amounts = Array.from({ length: 25 }, (_, index) => (most * index) / 24);
      const perLitre = amounts.map(amount => amount / volume_L);
      const points = titrationCurve(question, bench().perUnit, perLitre);
      return points.map(({ pH }, index) => ({ amount: amounts[index] ?? 0, pH }));
    },
  };
  const plan: AdjustmentPlan = lazily(makers, { adjuster: base.adjuster, to, unit, does });
  return plan;
}

/** What is known of an adjustment without working anything out. */
type Stated = 'adjuster' | 'to' | 'unit' | 'does';
type Makers = { readonly [K in Exclude<keyof AdjustmentPlan, Stated>]: () => AdjustmentPlan[K] };

function unknownAdjustment({ adjuster, from, to }: Base, missing: Unknown): AdjustmentPlan {
  return {
    adjuster,
    from: from(),
    to,
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
  const { adjuster, to } = base;
  const from = base.from();
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
    adjuster,
    from,
    to,
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
  if (solved.kind === 'unknown' || question === undefined) return unknownEnd(unknown(wants));
  const adjustment = adjustmentOf(batch);
  const solution = adjustment === undefined ? stateOf(batch).solution : adjusted(batch, question, adjustment);
  if (solution === undefined) return unknownEnd(adjustment?.exact.kind === 'unknown' ? adjustment.exact : unknown([]));
  const inAir = () => (question.air === 'open' ? solution : standInAir(solution));
  return lazily(
    { figures: () => figuresOf(solved.inputs, solution), inAir: () => figuresOf(solved.inputs, inAir()) },
    { solution },
  );
});

function unknownEnd(why: Unknown): FinalState {
  const none = unknownFigures(why);
  return { solution: undefined, figures: none, inAir: none };
}

/** Undefined where the amount is not known. */
function adjusted(batch: BatchPlan, question: Question, adjustment: AdjustmentPlan): Solution | undefined {
  const { adjuster, does } = adjustment;
  const from = numberOf(adjustment.from);
  const to = numberOf(adjustment.to);
  if (adjuster === undefined || does === undefined || from === undefined || to === undefined) return undefined;
  const reagent = reagentOf(adjuster);
  // What a batch ends as does not hang on how strong the adjuster is, so a strength is learned only where none is written.
  const perUnit = reagent.kind === 'composition' ? reagent.perUnit : learnedOf(batch)?.perUnit;
  if (perUnit === undefined) {
    if (adjustment.exact.kind === 'unknown') return undefined;
    return solveAt({ ...question, totals: anchorTo(question, to) }, to);
  }
  const way = wayTo(from, to, does);
  if (way === 'there') return stateOf(batch).solution;
  const dose = way === 'towards' ? titration({ question, perUnit }, to) : undefined;
  return dose?.kind === 'dose' ? dose.solution() : undefined;
}
