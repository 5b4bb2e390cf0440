// What an adjuster really does, learned from a batch's own readings: each measured step is titrated backwards to the strength that
// explains it, and the strengths are averaged by how well each step can tell (least squares on the titration model).

import { anchorTo } from '../chemistry/anchor.ts';
import type { Question } from '../chemistry/solution.ts';
import { doseTo } from '../chemistry/titrate.ts';
import { addTotals, type Totals } from '../chemistry/totals.ts';
import type { DosedBy, Reagent } from './reagent.ts';
import type { Step } from './state.ts';

/** Standard error of one pH reading with a hand meter, as taken here. */
export const meterError_pH = 0.05;

/** How far a label's strength may be off, as the standard deviation of its logarithm. */
const labelSpread = 0.6;

export interface Learned {
  readonly unit: DosedBy;
  readonly does: 'acid' | 'base';
  /** Moles that one mL or g adds, as learned. */
  readonly perUnit: Totals;
  /** Times the strength that is written; undefined where none is. */
  readonly factor: number | undefined;
  /** Milliequivalents of strong acid (below zero) or base per mL or g, where no composition is written. */
  readonly meqPerUnit: number | undefined;
  /** Relative standard error of the strength. */
  readonly spread: number;
  readonly steps: number;
}

/** The strength that a batch's steps show; undefined where they show none. */
export function learn(reagent: Reagent | { readonly kind: 'unknown' }, steps: readonly Step[]): Learned | undefined {
  const [first] = steps;
  if (first === undefined) return undefined;
  const written = reagent.kind === 'composition' ? reagent.perUnit : undefined;
  const lowers = reagent.kind === 'unknown' ? first.to_pH < first.from_pH : reagent.does === 'acid';
  const perUnit = written ?? { unknownCharge: lowers ? -1e-3 : 1e-3 };
  const shown = steps.flatMap(step => strengthShownBy(step, perUnit) ?? []);
  if (shown.length === 0) return undefined;
  const prior = written === undefined ? [] : [{ log: 0, weight: 1 / labelSpread ** 2 }];
  const all = [...shown, ...prior];
  const weight = all.reduce((sum, one) => sum + one.weight, 0);
  const log = all.reduce((sum, one) => sum + one.weight * one.log, 0) / weight;
  const factor = Math.exp(log);
  return {
    unit: first.unit,
    does: lowers ? 'acid' : 'base',
    perUnit: addTotals({}, perUnit, factor),
    factor: written === undefined ? undefined : factor,
    meqPerUnit: written === undefined ? (lowers ? -factor : factor) : undefined,
    spread: Math.sqrt(1 / weight),
    steps: shown.length,
  };
}

/** The logarithm of the strength that one step shows, weighted by how much pH tells of it; undefined where it shows none. */
function strengthShownBy(step: Step, perUnit: Totals): { readonly log: number; readonly weight: number } | undefined {
  const { amountPerLitre, from_pH, to_pH } = step;
  const before = step.before();
  const amountTo = (pH: number): number => {
    const dose = doseTo(before, perUnit, pH, amountPerLitre * 50);
    return dose.kind === 'dose' ? dose.amount : 0;
  };
  const amount = amountTo(to_pH);
  const further = to_pH < from_pH ? -nearby_pH : nearby_pH;
  const amountFurther = amountTo(to_pH + further);
  if (amount <= 0 || amountFurther <= amount) return undefined;
  const pHPerLogAmount = further / Math.log(amountFurther / amount);
  // Two readings make a step, each with the meter's error.
  const weight = pHPerLogAmount ** 2 / (2 * meterError_pH ** 2);
  return { log: Math.log(amount / amountPerLitre), weight };
}

/** Small enough that the titration curve is straight over it. */
const nearby_pH = 1e-5;

/** The same solution as if its pH had been another: what a meter's error would have hidden. */
export function asIfMeasured(question: Question, pH: number): Question {
  return { ...question, totals: anchorTo(question, pH) };
}
