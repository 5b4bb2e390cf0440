// A batch through its readings: after each addition and measurement, what the pH should be and what it was. A measured pH
// re-anchors the batch: what follows starts from it. What is not asked for is not solved.

import { once } from '../../schema/once.ts';
import { type Path, valueAt } from '../../schema/place.ts';
import { anchorTo } from '../chemistry/anchor.ts';
import { type Question, type Solution, solve, solveAt } from '../chemistry/solution.ts';
import { addTotals, type Totals } from '../chemistry/totals.ts';
import type { Reading } from '../recipe/seen.ts';
import { type Addition, additionsOf } from './addition.ts';
import type { BatchPlan } from './batch.ts';
import { type Figure, formula, given, type Known, numberOf, unknown, type Want } from './figure.ts';
import { lazily } from './lazy.ts';
import { memo } from './memo.ts';
import { type Mixture, mixtureOf, type SolvedMixture } from './mixture.ts';
import type { DosedBy } from './reagent.ts';

/** One reading with what it should have shown. */
export interface ReadingPlan {
  readonly reading: Reading | undefined;
  /** The pH from the last measured one before it and the additions since. */
  readonly predicted: Figure<'pH'>;
  readonly measured: Figure<'pH'> | undefined;
}

/** Where a batch stands after its last reading. */
export interface BatchState {
  readonly readings: readonly ReadingPlan[];
  /** Undefined where nothing can be solved, with the reasons in `wants`. */
  readonly question: Question | undefined;
  /** The same, solved. */
  readonly solution: Solution | undefined;
  readonly wants: readonly Want[];
  /** The pH now: measured, or predicted where nothing was measured or something was added since. */
  readonly pH: Figure<'pH'>;
  readonly isMeasured: boolean;
  /** Steps of one adjuster between two measurements, from which its strength can be learned. */
  readonly steps: readonly Step[];
}

export interface Step {
  readonly adjuster: string;
  /** The solution before, anchored to its measured pH. */
  readonly before: () => Question;
  readonly unit: DosedBy;
  /** In that unit. */
  readonly amountPerLitre: number;
  readonly from_pH: number;
  readonly to_pH: number;
}

export const stateOf = memo((batch: BatchPlan): BatchState => {
  const mixture = mixtureOf(batch);
  const { solved } = mixture;
  if (solved.kind === 'unknown') return unsolved(batch, solved.wants);
  const readings: ReadingPlan[] = [];
  const steps: Step[] = [];
  let now = asMixed(mixture, solved);
  for (const [index, reading] of (batch.needs.batch.value.readings ?? []).entries()) {
    const path = [...batch.needs.batch.path, 'readings', index];
    const measured = measuredPH(reading, path);
    const before = afterAdding(now, additionsOf(batch, reading, solved.volume_L, path), solved.inputs.temperature);
    readings.push(lazily({ predicted: () => before.pH() }, { reading, measured }));
    now = measured === undefined ? before : asMeasured(before, measured);
    if (measured !== undefined) steps.push(...stepTo(before, measured.quantity.value));
  }
  const { question, solution, pH, wants, anchor, since } = now;
  const isMeasured = anchor !== undefined && since.length === 0;
  return lazily({ question, solution, pH }, { readings, steps, wants, isMeasured });
});

/** A batch between two readings. */
interface Now {
  readonly question: () => Question;
  readonly solution: () => Solution;
  readonly pH: () => Figure<'pH'>;
  /** Why the pH is not known. */
  readonly wants: readonly Want[];
  /** What is in it, whatever was measured: a measurement outranks those before it. */
  readonly mixed: Question;
  /** What was added since it was measured, or mixed. */
  readonly since: readonly Addition[];
  /** The last time it was measured. */
  readonly anchor: { readonly pH: number; readonly question: () => Question } | undefined;
}

function asMixed(mixture: Mixture, solved: SolvedMixture): Now {
  const { question } = solved;
  return {
    question: () => question,
    solution: () => solved.solution,
    pH: () => mixture.predicted.pH,
    wants: [],
    mixed: question,
    since: [],
    anchor: undefined,
  };
}

function asMeasured({ mixed }: Now, measured: Known<'pH'>): Now {
  const pH = measured.quantity.value;
  const question = once(() => ({ ...mixed, totals: anchorTo(mixed, pH) }));
  return {
    question,
    solution: once(() => solveAt(question(), pH)),
    pH: () => measured,
    wants: [],
    mixed,
    since: [],
    anchor: { pH, question },
  };
}

function afterAdding(before: Now, additions: readonly Addition[], temperature: Figure<'temperature'>): Now {
  return additions.reduce((now, addition) => afterOne(now, addition, temperature), before);
}

function afterOne(before: Now, addition: Addition, temperature: Figure<'temperature'>): Now {
  const { effect } = addition;
  const since = [...before.since, addition];
  switch (effect.kind) {
    case 'unknown':
      return { ...before, since, wants: effect.wants, pH: () => unknown(effect.wants) };
    case 'shift': {
      const pH = once(() => shiftedPH({ from: before.pH() }, effect.pH));
      const question = once(() => {
        const shifted = numberOf(pH());
        const old = before.question();
        return shifted === undefined ? old : { ...old, totals: anchorTo(old, shifted) };
      });
      return { ...before, since, pH, question, solution: solutionAt(question, pH) };
    }
    case 'totals': {
      const question = once(() => withMore(before.question(), effect.perLitre));
      const pH = once(() => afterMore(before.pH(), addition, question(), temperature));
      const mixed = withMore(before.mixed, effect.perLitre);
      return { ...before, since, mixed, pH, question, solution: solutionAt(question, pH) };
    }
  }
}

function solutionAt(question: () => Question, pH: () => Figure<'pH'>): () => Solution {
  return once(() => {
    const known = numberOf(pH());
    return known === undefined ? solve(question()) : solveAt(question(), known);
  });
}

function afterMore(
  from: Figure<'pH'>,
  { name, figure }: Addition,
  question: Question,
  temperature: Figure<'temperature'>,
): Figure<'pH'> {
  const isMass = figure.kind === 'known' && figure.quantity.dimension === 'mass';
  const masses = isMass ? [figure as Figure<'mass'>] : [];
  const volumes = isMass ? [] : [figure as Figure<'volume'>];
  return pHAfterAdding({ from, volumes, masses, temperature }, { question, what: name });
}

function withMore(question: Question, perLitre: Totals): Question {
  return { ...question, totals: addTotals(question.totals, perLitre) };
}

function measuredPH(reading: Reading | undefined, path: Path): Known<'pH'> | undefined {
  if (reading?.pH === undefined) return undefined;
  return given({ dimension: 'pH', value: reading.pH } as const, valueAt([...path, 'pH']));
}

/** A step to learn from: one adjuster, however often it was added, between two measurements. */
function stepTo({ anchor, since }: Now, to_pH: number): readonly Step[] {
  const [first] = since;
  if (anchor === undefined || first?.adjuster === undefined) return [];
  const { name: adjuster } = first;
  const { unit } = first.adjuster;
  if (since.some(other => other.name !== adjuster || other.adjuster === undefined)) return [];
  const amountPerLitre = since.reduce((sum, one) => sum + (one.adjuster?.amountPerLitre ?? 0), 0);
  if (amountPerLitre <= 0) return [];
  return [{ adjuster, unit, before: anchor.question, amountPerLitre, from_pH: anchor.pH, to_pH }];
}

function unsolved(batch: BatchPlan, wants: readonly Want[]): BatchState {
  const { path, value } = batch.needs.batch;
  const readings = (value.readings ?? []).map(
    (reading, index): ReadingPlan => ({
      reading,
      predicted: unknown(wants),
      measured: measuredPH(reading, [...path, 'readings', index]),
    }),
  );
  const last = readings.at(-1)?.measured;
  return {
    readings,
    question: undefined,
    solution: undefined,
    wants,
    pH: last ?? unknown(wants),
    isMeasured: last !== undefined,
    steps: [],
  };
}

export const pHAfterAdding = formula({
  id: 'pH-after-adding',
  says: 'the pH after what was added',
  statement: 'pH where charges balance again, with what was added',
  source: 'usgs-phreeqc-database',
  takes: { from: 'pH', volumes: ['volume'], masses: ['mass'], temperature: 'temperature' },
  gives: 'pH',
  evaluate: ({ from }, { question }: { readonly question: Question; readonly what: string }) =>
    solve({ ...question, near: from }).pH,
});

export const shiftedPH = formula({
  id: 'pH-by-response',
  says: 'the pH by the response that is written for the adjuster',
  statement: 'pH = pH before + response × amount',
  source: 'common-practice',
  takes: { from: 'pH' },
  gives: 'pH',
  evaluate: ({ from }, change: number) => from + change,
});
