// What a reading says was added to a batch, and what that does to the solution as far as it is known.

import { type Path, valueAt } from '../../schema/place.ts';
import { addTotals, type Totals } from '../chemistry/totals.ts';
import type { Adjuster, Feed, Reading } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { BatchPlan } from './batch.ts';
import { feedTotals } from './feed-totals.ts';
import { type Figure, given, unknown, type Want } from './figure.ts';
import { amountIn, type DosedBy, reagentOf } from './reagent.ts';

export interface Addition {
  readonly name: string;
  /** For the whole batch, as it is written. */
  readonly figure: Figure<'volume'> | Figure<'mass'>;
  /** How much of an adjuster goes into a litre, in its unit; undefined for a feed. */
  readonly adjuster: { readonly unit: DosedBy; readonly amountPerLitre: number } | undefined;
  readonly effect:
    | { readonly kind: 'totals'; readonly perLitre: Totals }
    | { readonly kind: 'shift'; readonly pH: number }
    | { readonly kind: 'unknown'; readonly wants: readonly Want[] };
}

export function additionsOf(
  batch: BatchPlan,
  reading: Reading | undefined,
  volume_L: number,
  path: Path,
): readonly Addition[] {
  return [...(reading?.add ?? [])].map(([name, amount]) => {
    const at = valueAt([...path, 'add', name]);
    if (amount === undefined) {
      const effect = wanting(`an amount of ${name} that can be read`, at);
      const figure: Addition['figure'] = unknown(effect.wants);
      return { name, figure, adjuster: undefined, effect };
    }
    const figure = given<'volume' | 'mass'>(amount, at) as Addition['figure'];
    const adder = batch.needs.added.find(one => one.name === name);
    if (adder === undefined) {
      return { name, figure, adjuster: undefined, effect: wanting(`what ${name} is`, at) };
    }
    return adder.path[0] === 'feeds'
      ? addedFeed(adder as Sourced<Feed>, amount, volume_L, figure, at)
      : addedAdjuster(adder as Sourced<Adjuster>, amount, volume_L, figure, at);
  });
}

type Amount = { readonly dimension: 'volume' | 'mass'; readonly value: number };

function addedFeed(
  feed: Sourced<Feed>,
  amount: Amount,
  volume_L: number,
  figure: Addition['figure'],
  at: Want['at'],
): Addition {
  const { name } = feed;
  const density = feed.value.density?.value;
  if (amount.dimension === 'volume' && density === undefined) {
    return { name, figure, adjuster: undefined, effect: wanting(`the density of ${name}`, at) };
  }
  const { perGram, kind } = feedTotals(feed);
  if (kind === 'nothing') {
    return { name, figure, adjuster: undefined, effect: wanting(`the analysis or formula of ${name}`, at) };
  }
  const grams = amount.dimension === 'mass' ? amount.value : (amount.value * (density ?? 0)) / 1000;
  const perLitre = addTotals({}, perGram, grams / volume_L);
  return { name, figure, adjuster: undefined, effect: { kind: 'totals', perLitre } };
}

function addedAdjuster(
  adjuster: Sourced<Adjuster>,
  amount: Amount,
  volume_L: number,
  figure: Addition['figure'],
  at: Want['at'],
): Addition {
  const { name } = adjuster;
  const reagent = reagentOf(adjuster);
  const unit = reagent.kind === 'unknown' ? (amount.dimension === 'volume' ? 'mL' : 'g') : reagent.unit;
  const units = amountIn(unit, amount, adjuster);
  if (units === undefined) {
    return { name, figure, adjuster: undefined, effect: wanting(`the density of ${name}`, at) };
  }
  const amountPerLitre = units / volume_L;
  const add = (effect: Addition['effect']): Addition => ({
    name,
    figure,
    adjuster: { unit, amountPerLitre },
    effect,
  });
  if (reagent.kind === 'unknown') return add({ kind: 'unknown', wants: reagent.wants });
  if (reagent.kind === 'response') return add({ kind: 'shift', pH: reagent.pHPerUnit * amountPerLitre });
  return add({ kind: 'totals', perLitre: addTotals({}, reagent.perUnit, amountPerLitre) });
}

function wanting(says: string, at: Want['at']): Extract<Addition['effect'], { kind: 'unknown' }> {
  return { kind: 'unknown', wants: [{ says, at }] };
}
