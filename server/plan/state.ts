// A batch through its readings: after each addition and measurement, what the pH should be and what it was. A measured pH
// re-anchors the batch: what follows starts from it.

import { type Path, valueAt } from '../../schema/place.ts';
import { anchorTo } from '../chemistry/anchor.ts';
import { type Question, solve } from '../chemistry/solution.ts';
import { addTotals } from '../chemistry/totals.ts';
import type { Reading } from '../recipe/seen.ts';
import { type Addition, additionsOf } from './addition.ts';
import type { BatchPlan } from './batch.ts';
import { type Figure, formula, given, numberOf, unknown, type Want } from './figure.ts';
import { memo } from './memo.ts';
import { mixtureOf } from './mixture.ts';
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
  readonly before: Question;
  readonly unit: DosedBy;
  /** In that unit. */
  readonly amountPerLitre: number;
  readonly from_pH: number;
  readonly to_pH: number;
}

export const stateOf = memo((batch: BatchPlan): BatchState => {
  const { predicted, solved } = mixtureOf(batch);
  if (solved.kind === 'unknown') return unsolved(batch, solved.wants);
  const readings: ReadingPlan[] = [];
  const steps: Step[] = [];
  let now: Now = { question: solved.question, pH: predicted.pH, anchored: false, since: [] };
  for (const [index, reading] of (batch.needs.batch.value.readings ?? []).entries()) {
    const path = [...batch.needs.batch.path, 'readings', index];
    now = afterAdding(now, additionsOf(batch, reading, solved.volume_L, path), solved.inputs.temperature);
    const measured = measuredPH(reading, path);
    readings.push({ reading, predicted: now.pH, measured });
    if (measured === undefined) continue;
    const to_pH = measured.quantity.value;
    steps.push(...stepTo(now.anchor, now.since, to_pH));
    const totals = anchorTo(now.question, to_pH);
    now = { question: { ...now.question, totals }, pH: measured, anchored: true, since: [] };
    now = { ...now, anchor: now };
  }
  const wants = now.pH.kind === 'unknown' ? now.pH.wants : [];
  return { readings, question: now.question, wants, pH: now.pH, isMeasured: now.anchored, steps };
});

interface Now {
  readonly question: Question;
  readonly pH: Figure<'pH'>;
  /** Whether `pH` was measured and nothing was added since. */
  readonly anchored: boolean;
  readonly since: readonly Addition[];
  /** The last state that was measured. */
  readonly anchor?: Now;
}

function afterAdding(now: Now, additions: readonly Addition[], temperature: Figure<'temperature'>): Now {
  if (additions.length === 0) return now;
  const since = [...now.since, ...additions];
  let { question } = now;
  let pH: Figure<'pH'> = now.pH;
  for (const { name, figure, effect } of additions) {
    if (effect.kind === 'unknown') {
      pH = unknown(effect.wants);
    } else if (effect.kind === 'shift') {
      pH = shiftedPH({ from: pH }, effect.pH);
      const shifted = numberOf(pH);
      if (shifted !== undefined) question = { ...question, totals: anchorTo(question, shifted) };
    } else {
      question = { ...question, totals: addTotals(question.totals, effect.perLitre) };
      const isMass = figure.kind === 'known' && figure.quantity.dimension === 'mass';
      const masses = isMass ? [figure as Figure<'mass'>] : [];
      const volumes = isMass ? [] : [figure as Figure<'volume'>];
      pH = pHAfterAdding({ from: pH, volumes, masses, temperature }, { question, what: name });
    }
  }
  return { question, pH, anchored: false, since, ...(now.anchor === undefined ? {} : { anchor: now.anchor }) };
}

function measuredPH(reading: Reading | undefined, path: Path) {
  if (reading?.pH === undefined) return undefined;
  return given({ dimension: 'pH', value: reading.pH } as const, valueAt([...path, 'pH']));
}

/** A step to learn from: one adjuster, however often it was added, between two measurements. */
function stepTo(anchor: Now | undefined, since: readonly Addition[], to_pH: number): readonly Step[] {
  const from_pH = numberOf(anchor?.pH);
  const [first] = since;
  if (anchor === undefined || from_pH === undefined || first?.adjuster === undefined) return [];
  const { name: adjuster } = first;
  const { unit } = first.adjuster;
  if (since.some(other => other.name !== adjuster || other.adjuster === undefined)) return [];
  const amountPerLitre = since.reduce((sum, one) => sum + (one.adjuster?.amountPerLitre ?? 0), 0);
  if (amountPerLitre <= 0) return [];
  return [{ adjuster, unit, before: anchor.question, amountPerLitre, from_pH, to_pH }];
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
