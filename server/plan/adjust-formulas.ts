// The formulas of an adjustment, each once for liquids and once for solids.

import type { Question } from '../chemistry/solution.ts';
import { type Dose, doseTo } from '../chemistry/titrate.ts';
import type { Totals } from '../chemistry/totals.ts';
import type { Tool } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { DoseFigure } from './dose.ts';
import { type Figure, formula, type Outcome } from './figure.ts';
import { finestStep } from './measure.ts';

/** What is titrated with what. */
export interface Titration {
  /** The solution as it stands, anchored to its pH. */
  readonly question: Question;
  /** Moles that one mL or g adds. */
  readonly perUnit: Totals;
  readonly does: 'acid' | 'base';
  readonly name: string;
  /** For a bound: where nothing is needed the answer is zero, not a complaint. */
  readonly floorAtZero?: boolean;
}

type Tools = readonly Sourced<Tool>[];

/** How many mL or g make the unit that the core counts in. */
const perLitre = 1000;
const perGram = 1;

const byComposition = {
  says: 'the amount that brings the batch to the pH',
  statement: 'amount where the charges balance at the aim, × volume',
  source: 'usgs-phreeqc-database',
  takes: { from: 'pH', to: 'pH', volume: 'volume', share: ['fraction'], density: ['mass-per-volume'] },
} as const;

export const adjustByComposition = {
  mL: formula({
    id: 'adjust-by-composition',
    ...byComposition,
    gives: 'volume',
    evaluate: ({ from, to, volume }, titrated: Titration) => titrate(from, to, volume, titrated, perLitre),
  }),
  g: formula({
    id: 'adjust-by-composition-in-grams',
    ...byComposition,
    gives: 'mass',
    evaluate: ({ from, to, volume }, titrated: Titration) => titrate(from, to, volume, titrated, perGram),
  }),
};

/** Closer to the aim than any meter shows. */
const there_pH = 0.005;

/** Whether an adjuster leads from one pH to the other; `there` where nothing is needed. */
export function wayTo(from: number, to: number, does: 'acid' | 'base'): 'there' | 'towards' | 'away' {
  if (Math.abs(to - from) < there_pH) return 'there';
  return (does === 'acid' ? to < from : from < to) ? 'towards' : 'away';
}

/** What brings a solution to a pH, and the solution that it makes. */
export function titration({ question, perUnit }: Pick<Titration, 'question' | 'perUnit'>, to: number): Dose {
  return doseTo(question, perUnit, to, most(perUnit));
}

function titrate(from: number, to: number, volume: number, titrated: Titration, perBase: number): Outcome {
  const { does, name, floorAtZero = false } = titrated;
  const way = wayTo(from, to, does);
  if (way === 'there') return 0;
  if (way === 'away') return floorAtZero ? 0 : { reason: wrongWay(name, does, from, to) };
  const dose = titration(titrated, to);
  if (dose.kind === 'dose') return (dose.amount * volume) / perBase;
  if (dose.why === 'wrong-direction') return { reason: wrongWay(name, does, from, to) };
  return { reason: `a stronger adjuster: ${name} cannot bring the batch to pH ${to}` };
}

function wrongWay(name: string, does: 'acid' | 'base', from: number, to: number): string {
  const move = does === 'acid' ? 'an acid lowers the pH' : 'a base raises the pH';
  return `another adjuster: ${name}, as ${move}, and ${to.toFixed(2)} is ${to > from ? 'above' : 'below'} ${from.toFixed(2)}`;
}

/** Half a mole per kilogram is far more than any nutrient solution takes. */
function most(perUnit: Totals): number {
  const largest = Object.values(perUnit).reduce((size: number, amount) => Math.max(size, Math.abs(amount ?? 0)), 0);
  return largest > 0 ? 0.5 / largest : 0;
}

const byResponse = {
  says: 'the amount that brings the batch to the pH, by the response written for the adjuster',
  statement: 'amount = (aim − pH) ÷ response × volume',
  source: 'common-practice',
  takes: { from: 'pH', to: 'pH', volume: 'volume' },
} as const;

export const adjustByResponse = {
  mL: formula({
    id: 'adjust-by-response',
    ...byResponse,
    gives: 'volume',
    evaluate: ({ from, to, volume }, response: Responding) => respond(from, to, volume, response, perLitre),
  }),
  g: formula({
    id: 'adjust-by-response-in-grams',
    ...byResponse,
    gives: 'mass',
    evaluate: ({ from, to, volume }, response: Responding) => respond(from, to, volume, response, perGram),
  }),
};

interface Responding {
  /** Change of pH for one mL or g per litre. */
  readonly pHPerUnit: number;
  /** As of a titration. */
  readonly floorAtZero?: boolean;
}

function respond(from: number, to: number, volume: number, response: Responding, perBase: number): Outcome {
  const { pHPerUnit, floorAtZero = false } = response;
  if (Math.abs(to - from) < there_pH) return 0;
  const amount = ((to - from) / pHPerUnit) * volume;
  if (amount < 0) return floorAtZero ? 0 : { reason: 'another adjuster: the response moves the pH the other way' };
  return amount / perBase;
}

const cautious = {
  says: 'a cautious first step: half of it, then stir and measure',
  statement: 'first step = half of a load’s amount, down to what the tools measure, × loads',
  source: 'common-practice',
} as const;

/** The curve steepens towards the aim, so half the way is taken first. */
const firstSteps = {
  mL: formula({
    id: 'first-step',
    ...cautious,
    takes: { exact: 'volume', loads: 'number' },
    gives: 'volume',
    evaluate: ({ exact, loads }, tools: Tools) => half(exact / loads, finestStep('volume', tools)) * loads,
  }),
  g: formula({
    id: 'first-step-in-grams',
    ...cautious,
    takes: { exact: 'mass', loads: 'number' },
    gives: 'mass',
    evaluate: ({ exact, loads }, tools: Tools) => half(exact / loads, finestStep('mass', tools)) * loads,
  }),
};

function half(exact: number, step: number | undefined): number {
  if (step === undefined || exact < step) return exact / 2;
  return Math.max(step, Math.floor(exact / 2 / step + 1e-9) * step);
}

const wide = {
  says: 'the end of the range that meter and tools leave open',
  statement: 'amount for a pH that much off, less or more half a step of the finest tool',
  source: 'common-practice',
} as const;

export type Side = { readonly tools: Tools; readonly side: 1 | -1 };

const ranges = {
  mL: formula({
    id: 'adjust-range',
    ...wide,
    takes: { dose: 'volume' },
    gives: 'volume',
    evaluate: ({ dose }, { tools, side }: Side) => Math.max(0, dose + (side * (finestStep('volume', tools) ?? 0)) / 2),
  }),
  g: formula({
    id: 'adjust-range-in-grams',
    ...wide,
    takes: { dose: 'mass' },
    gives: 'mass',
    evaluate: ({ dose }, { tools, side }: Side) => Math.max(0, dose + (side * (finestStep('mass', tools) ?? 0)) / 2),
  }),
};

/** A cautious first step towards a dose that is given in so many loads, each measured by itself. */
export function firstStep(exact: DoseFigure, loads: Figure<'number'>, tools: Tools): DoseFigure {
  if (exact.kind === 'unknown') return exact;
  return exact.quantity.dimension === 'volume'
    ? firstSteps.mL({ exact: exact as Figure<'volume'>, loads }, tools)
    : firstSteps.g({ exact: exact as Figure<'mass'>, loads }, tools);
}

/** A bound of a dose, moved out by half a step of the finest tool. */
export function widened(dose: DoseFigure, side: Side): DoseFigure {
  if (dose.kind === 'unknown') return dose;
  return dose.quantity.dimension === 'volume'
    ? ranges.mL({ dose: dose as Figure<'volume'> }, side)
    : ranges.g({ dose: dose as Figure<'mass'> }, side);
}

/** Every formula of this file, for the list of all formulas. */
export const adjustFormulas = [
  ...Object.values(adjustByComposition),
  ...Object.values(adjustByResponse),
  ...Object.values(firstSteps),
  ...Object.values(ranges),
];
