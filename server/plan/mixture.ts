// A batch as a solution: its water, what the feeds add, solved as mixed and after standing in air. Worked out when it is asked for,
// once for each batch.

import { type Place, valueAt } from '../../schema/place.ts';
import { standInAir } from '../chemistry/air.ts';
import { mediumAt } from '../chemistry/network.ts';
import { type Air, type Question, type Solution, solve } from '../chemistry/solution.ts';
import { addTotals, type Totals } from '../chemistry/totals.ts';
import type { Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { BatchPlan, DosePlan } from './batch.ts';
import { feedTotals } from './feed-totals.ts';
import { type Figure, given, numberOf, type Unknown, unknown, type Want } from './figure.ts';
import { lazily } from './lazy.ts';
import { memo } from './memo.ts';
import { figuresOf, type SolutionFigures, type SolutionInputs, unknownFigures } from './solution.ts';
import { unreadFeeds, unreadIn } from './unread.ts';
import { outsideConstants, planWaterFor, usualTemperature } from './water.ts';

export interface Mixture {
  /** As mixed: closed to air, or in balance with it where the batch says `air: open`. */
  readonly predicted: SolutionFigures;
  readonly inAir: SolutionFigures;
  readonly solved: SolvedMixture | Unknown;
}

export interface SolvedMixture {
  readonly kind: 'solved';
  readonly question: Question;
  readonly solution: Solution;
  readonly inputs: SolutionInputs;
  readonly volume_L: number;
  /** True where labels or the water's report leave ions open, so that the predicted pH is an estimate only. */
  readonly estimated: boolean;
}

export const mixtureOf = memo((batch: BatchPlan): Mixture => {
  const solved = solveMixture(batch);
  if (solved.kind === 'unknown') {
    const none = unknownFigures(solved);
    return { predicted: none, inAir: none, solved };
  }
  const { inputs, question } = solved;
  const inAir = () => (question.air === 'open' ? solved.solution : standInAir(solved.solution));
  return lazily(
    { predicted: () => figuresOf(inputs, solved.solution), inAir: () => figuresOf(inputs, inAir()) },
    { solved },
  );
});

function solveMixture(batch: BatchPlan): SolvedMixture | Unknown {
  const { needs, volume } = batch;
  const { path } = needs.batch;
  const unread = unreadOf(batch);
  if (unread.length > 0) return unknown(unread);
  if (needs.water === undefined) return unknown([{ says: 'the water', at: valueAt([...path, 'water']) }]);
  const water = planWaterFor(needs.water, needs.batch).solved;
  if (water.kind === 'unknown') return water;
  const volume_L = numberOf(volume);
  if (volume_L === undefined || volume_L <= 0) {
    return volume.kind === 'unknown'
      ? volume
      : unknown([{ says: 'a volume above zero', at: valueAt([...path, 'volume']) }]);
  }
  const temperature = temperatureOf(batch);
  const outside = outsideConstants(temperature.figure, temperature.at);
  if (outside !== undefined) return outside;
  const added = addedByFeeds(batch, volume_L);
  if ('wants' in added) return unknown(added.wants);
  const temperature_C = numberOf(temperature.figure) ?? 20;
  const air: Air = needs.batch.value.air ?? 'closed';
  const question = {
    totals: addTotals(water.solution.totals, added.totals),
    temperature_C,
    air,
    medium: water.solution.temperature_C === temperature_C ? water.solution.medium : mediumAt(temperature_C),
  };
  const inputs = {
    pH: water.inputs.pH,
    alkalinity: water.inputs.alkalinity,
    dissolved: [...batch.elements.values()].filter(figure => figure.kind === 'known'),
    temperature: temperature.figure,
    unlisted: water.inputs.unlisted,
  };
  return lazily({ solution: () => solve({ ...question, near: water.solution.pH }) }, {
    kind: 'solved',
    question,
    inputs,
    volume_L,
    estimated: added.estimated || water.isByDifference,
  } as const);
}

/** What of a batch and its feeds is written and cannot be read: without it the mixture would be another one. */
function unreadOf({ needs }: BatchPlan): readonly Want[] {
  const { value, path } = needs.batch;
  return [...unreadIn(value, ['water', 'volume', 'temperature', 'air', 'feed'], path), ...unreadFeeds(needs)];
}

function temperatureOf({ needs }: BatchPlan): { readonly figure: Figure<'temperature'>; readonly at: Place } {
  const own = needs.batch.value.temperature;
  const ownAt = valueAt([...needs.batch.path, 'temperature']);
  if (own !== undefined) return { figure: given(own, ownAt), at: ownAt };
  const { water } = needs;
  const waters = water?.value.temperature;
  if (water === undefined || waters === undefined) return { figure: usualTemperature, at: ownAt };
  const at = valueAt([...water.path, 'temperature'], water.file);
  return { figure: given(waters, at), at };
}

type Added = { readonly totals: Totals; readonly estimated: boolean } | { readonly wants: readonly Want[] };

function addedByFeeds(batch: BatchPlan, volume_L: number): Added {
  let totals: Totals = {};
  let estimated = false;
  const wants: Want[] = [];
  for (const dose of batch.doses.values()) {
    const grams = gramsOf(dose);
    if ('wants' in grams) {
      wants.push(...grams.wants);
      continue;
    }
    const { feed } = dose;
    if (feed === undefined) continue;
    const { perGram, kind } = feedTotals(feed);
    totals = addTotals(totals, perGram, grams.amount / volume_L);
    estimated ||= kind !== 'whole';
  }
  return wants.length > 0 ? { wants } : { totals, estimated };
}

/** What would tell the content of a feed: its analysis, or a formula that is one. */
function contentOf({ name, path, value, file }: Sourced<Feed>): Want {
  const key = value.formula === undefined ? 'analysis' : 'formula';
  return { says: `the analysis or formula of ${name}`, at: valueAt([...path, key], file) };
}

/** The mass of what is poured of a feed, g. */
function gramsOf({
  poured,
  feed,
  name,
  at,
}: DosePlan): { readonly amount: number } | { readonly wants: readonly Want[] } {
  if (poured.kind === 'unknown') return { wants: poured.wants };
  if (feed === undefined) return { wants: [{ says: `the feed ${name}`, at }] };
  if (feedTotals(feed).kind === 'nothing') {
    return {
      wants: [contentOf(feed)],
    };
  }
  if (poured.quantity.dimension === 'mass') return { amount: poured.quantity.value };
  const density = feed.value.density;
  if (density === undefined) {
    return { wants: [{ says: `the density of ${name}`, at: valueAt([...feed.path, 'density'], feed.file) }] };
  }
  // Litres times mg per litre are mg.
  return { amount: (poured.quantity.value * density.value) / 1000 };
}
