// The feeds of a batch that asks `solve: to target`: amounts that best meet the target's elements within label limits and the EC
// band, what is left over for each element, and why it cannot be closer.

import { valueAt } from '../../schema/place.ts';
import type { Range } from '../../schema/range.ts';
import { type TargetElement, targetElements } from '../../schema/sections/target.ts';
import { conductivityAt25 } from '../chemistry/conduct.ts';
import { solve } from '../chemistry/solution.ts';
import { addTotals } from '../chemistry/totals.ts';
import type { Feed, Target, Water } from '../recipe/seen.ts';
import type { Scope, Sourced } from '../recipe/use.ts';
import type { BatchPlan } from './batch.ts';
import { type BlendRow, blend } from './blend.ts';
import { type Candidate, candidateOf } from './candidate.ts';
import { type DoseFigure, doseByMass, doseByVolume } from './dose.ts';
import { elementsOfWater } from './elements.ts';
import { assumed, numberOf, type Unknown, unknown, type Want } from './figure.ts';
import { gathered, gatheredAll, keptList } from './gather.ts';
import { memo } from './memo.ts';
import { planWater } from './water.ts';

export interface Formulation {
  readonly kind: 'formulation';
  readonly amounts: readonly FormulatedFeed[];
  readonly elements: readonly FormulatedElement[];
  readonly EC: { readonly value: number; readonly low: number | undefined; readonly high: number | undefined };
}

export interface FormulatedFeed {
  readonly feed: Sourced<Feed>;
  readonly unit: 'mL' | 'g';
  /** mL or g per litre. */
  readonly perLitre: number;
  /** For the whole batch. */
  readonly dose: DoseFigure;
  /** Whether the label keeps it from being more. */
  readonly atLabel: boolean;
}

export interface FormulatedElement {
  readonly element: TargetElement;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Below zero: that much short of the band; above: that much over it; zero inside. */
  readonly residual: number;
  /** Why it cannot be closer; undefined inside the band. */
  readonly why: string | undefined;
}

/** The formulation that a batch asks for; undefined where it asks for none. */
export function formulationOf(scope: Scope, batch: BatchPlan): Formulation | Unknown | undefined {
  const { value } = batch.needs.batch;
  if (value.solve === undefined) return undefined;
  const named = value.from?.flatMap(name => gathered(scope, 'feeds', name) ?? []);
  return formulate(batch, keptList(named ?? gatheredAll(scope, 'feeds')));
}

const formulate = memo((batch: BatchPlan, feeds: readonly Sourced<Feed>[]): Formulation | Unknown => {
  const { target, water } = batch.needs;
  const at = valueAt([...batch.needs.batch.path, 'solve']);
  const wants: Want[] = [];
  if (target === undefined) wants.push({ says: 'a target', at });
  if (water === undefined) wants.push({ says: 'the water', at });
  const usable = feeds.flatMap(feed => candidateOf(feed, wants));
  if (usable.length === 0) wants.push({ says: 'feeds with an analysis or a formula', at });
  const bands = bandsOf(target);
  if (target !== undefined && bands.length === 0 && target.value.EC === undefined) {
    wants.push({ says: 'bands for elements or for the EC in the target', at: valueAt(target.path, target.file) });
  }
  const solved = water === undefined ? undefined : planWater(water).solved;
  if (solved?.kind === 'unknown') wants.push(...solved.wants);
  if (wants.length > 0 || water === undefined || solved?.kind !== 'solved') return unknown(wants);
  const rows = rowsOf(bands, water, usable);
  const band = target?.value.EC;
  const ecOf = (amounts: readonly number[]): number => {
    const { totals: start } = solved.solution;
    const totals = usable.reduce((sum, one, index) => addTotals(sum, one.perUnit, amounts[index] ?? 0), start);
    return conductivityAt25(solve({ totals, temperature_C: 25, air: 'closed' }));
  };
  const amounts = withinEC(usable, rows, band, ecOf);
  return {
    kind: 'formulation',
    amounts: usable.map((one, index) => ({
      feed: one.feed,
      unit: one.unit,
      perLitre: amounts[index] ?? 0,
      dose: doseFor(one, amounts[index] ?? 0, batch),
      atLabel: isAtLabel(one, amounts[index] ?? 0),
    })),
    elements: bands.map(({ element, low, high }, index) => {
      const { base = 0, perUnit = [] } = rows[index] ?? {};
      const value = amounts.reduce((sum, amount, feed) => sum + (perUnit[feed] ?? 0) * amount, base);
      const residual = residualOf(value, low, high);
      const why = residual === 0 ? undefined : whyNot(element, residual, usable, base > high, amounts);
      return { element, value, low, high, residual, why };
    }),
    EC: { value: ecOf(amounts), low: band?.low, high: band?.high },
  };
});

interface Band {
  readonly element: TargetElement;
  readonly low: number;
  readonly high: number;
}

function bandsOf(target: Sourced<Target> | undefined): readonly Band[] {
  return targetElements.flatMap(element => {
    const band = target?.value[element];
    return band === undefined ? [] : [{ element, low: band.low, high: band.high }];
  });
}

function rowsOf(bands: readonly Band[], water: Sourced<Water>, usable: readonly Candidate[]): readonly BlendRow[] {
  const brought = elementsOfWater(water);
  return bands.map(({ element, low, high }) => {
    const base = numberOf(brought.get(element)) ?? 0;
    // A miss counts by its share of the band's middle, so that iron counts as much as nitrogen.
    const weight = 1 / Math.max((low + high) / 2, 1e-3) ** 2;
    return { base, perUnit: usable.map(one => one.elements.get(element) ?? 0), low, high, weight };
  });
}

/** How much more a miss of the EC counts than one of an element: the EC is what the plant feels first. */
const weightOfEC = 100;

/** The best amounts, with the EC as one more sum: nearly straight in the amounts, so a few straightenings are enough. */
function withinEC(
  usable: readonly Candidate[],
  rows: readonly BlendRow[],
  band: Range | undefined,
  ecOf: (amounts: readonly number[]) => number,
): readonly number[] {
  const limits = usable.map(one => one.limit);
  let amounts = blend(rows, limits);
  for (let round = 0; band !== undefined && round < 5; round++) {
    const now = amounts;
    const EC = ecOf(now);
    const perUnit = usable.map((one, index) => {
      const step = Math.max((now[index] ?? 0) * 0.05, one.trial);
      return (ecOf(now.map((amount, other) => (other === index ? amount + step : amount))) - EC) / step;
    });
    const base = perUnit.reduce((sum, slope, index) => sum - slope * (now[index] ?? 0), EC);
    const weight = weightOfEC / ((band.low + band.high) / 2) ** 2;
    amounts = blend([...rows, { base, perUnit, low: band.low, high: band.high, weight }], limits);
    if (amounts.every((amount, index) => Math.abs(amount - (now[index] ?? 0)) <= 1e-6 * amount)) break;
  }
  return amounts;
}

function doseFor({ unit }: Candidate, perLitre: number, { volume }: BatchPlan): DoseFigure {
  const says = 'what meets the target best';
  // A rate by mass counts mg per litre.
  return unit === 'mL'
    ? doseByVolume({
        rate: assumed({ dimension: 'volume-per-volume', value: perLitre }, says, 'tidemark-design'),
        volume,
      })
    : doseByMass({
        rate: assumed({ dimension: 'mass-per-volume', value: perLitre * 1000 }, says, 'tidemark-design'),
        volume,
      });
}

function isAtLabel({ limit }: Candidate, amount: number): boolean {
  return Number.isFinite(limit) && amount >= limit * (1 - 1e-6);
}

/** Within a thousandth of a band's end counts as inside: no scale shows less. */
function residualOf(value: number, low: number, high: number): number {
  if (value < low * 0.999) return value - low;
  return value > high * 1.001 ? value - high : 0;
}

/** Why an element stays off its band: nothing brings it, labels stop it, or what brings it brings too much of something else. */
function whyNot(
  element: TargetElement,
  residual: number,
  usable: readonly Candidate[],
  waterIsOver: boolean,
  amounts: readonly number[],
): string {
  const bringers = usable.filter(one => (one.elements.get(element) ?? 0) > 0);
  if (residual < 0) {
    if (bringers.length === 0) return `none of these feeds brings ${element}`;
    const stopped = bringers.filter(one => isAtLabel(one, amounts[usable.indexOf(one)] ?? 0));
    if (stopped.length === bringers.length)
      return `the label of ${stopped.map(one => one.feed.name).join(' and ')} allows no more`;
    return `more of ${bringers.map(one => one.feed.name).join(' or ')} would bring too much of something else`;
  }
  if (waterIsOver) return `the water alone brings more ${element} than the band allows`;
  return `it comes along with what else is needed of ${bringers.map(one => one.feed.name).join(' and ')}`;
}
