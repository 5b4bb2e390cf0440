// One batch worked out: its volume and loads, each feed's dose exact and as measured, and what a litre then holds.

import { type Place, valueAt } from '../../schema/place.ts';
import { targetElements } from '../../schema/sections/target.ts';
import type { Dose } from '../../schema/texts/dose.ts';
import { readCompound } from '../chemistry/compound.ts';
import type { ElementSymbol } from '../chemistry/tables/elements.ts';
import type { Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type DoseFigure, doseOf, type RateFigure, rateOf } from './dose.ts';
import { elementFrom, elementsOfWater, sharesOf, sumOf } from './elements.ts';
import { type Figure, given, numberOf, unknown } from './figure.ts';
import type { BatchNeeds } from './gather.ts';
import { loadsOf, perLoadDose, perLoadVolume } from './loads.ts';
import { type Measured, measure } from './measure.ts';
import { memo } from './memo.ts';
import { composition, type Nitrogen, nitrogenFrom, nitrogenOf, unknownNitrogen } from './nitrogen.ts';
import { errorOf, measuredDose } from './pour.ts';
import { leftOver, neededVolume, type Serving } from './serving.ts';
import { unreadFeeds } from './unread.ts';

export interface BatchPlan {
  readonly needs: BatchNeeds;
  readonly volume: Figure<'volume'>;
  /** What the fills it serves take together, without spare. */
  readonly needed: Figure<'volume'>;
  /** What is left of it after the fills it serves; below zero where it falls short. */
  readonly left: Figure<'volume'>;
  readonly serves: readonly Serving[];
  readonly loads: Figure<'number'>;
  readonly loadVolume: Figure<'volume'>;
  /** In the order in which the feeds are added. */
  readonly doses: ReadonlyMap<string, DosePlan>;
  readonly elements: ReadonlyMap<ElementSymbol, Figure<'mass-per-volume'>>;
  readonly nitrogen: Nitrogen;
}

export interface DosePlan {
  readonly name: string;
  readonly feed: Sourced<Feed> | undefined;
  readonly dose: Dose;
  readonly at: Place;
  /** The rate, where the dose is written as one. */
  readonly rate: RateFigure | undefined;
  readonly exact: DoseFigure;
  readonly perLoad: DoseFigure;
  /** How one load's dose is measured. */
  readonly measured: Measured;
  /** What is poured in all: as measured where a tool measures it, else the exact dose. */
  readonly poured: DoseFigure;
  /** What measuring adds to the exact dose or takes from it. */
  readonly error: Figure<'fraction'>;
  /** What it adds to a litre, by element. */
  readonly adds: ReadonlyMap<ElementSymbol, Figure<'mass-per-volume'>>;
  /** What it adds to a litre, by form of nitrogen. */
  readonly nitrogen: Nitrogen;
}

/** Works a batch out; computed once for the same needs and servings. */
export const planBatch = memo((needs: BatchNeeds, serves: readonly Serving[]): BatchPlan => {
  const { batch } = needs;
  const at = { path: [...batch.path, 'volume'], part: { kind: 'value' } } as const;
  const needed = neededVolume(serves, at);
  const volume = volumeOf(needs, serves, at);
  const loads = loadsOf(volume, needs.vessel);
  const doses = new Map<string, DosePlan>();
  for (const { name, feed } of needs.feeds) {
    const dose = batch.value.feed?.get(name);
    if (dose !== undefined) doses.set(name, planDose(needs, name, feed, dose, volume, loads));
  }
  return {
    needs,
    volume,
    needed,
    left: leftOver({ volume, needed }),
    serves,
    loads,
    loadVolume: perLoadVolume({ volume, loads }),
    doses,
    elements: elementsOf(needs, [...doses.values()]),
    nitrogen: nitrogenOf(
      needs.water,
      [...doses.values()].map(dose => dose.nitrogen),
    ),
  };
});

function volumeOf(needs: BatchNeeds, serves: readonly Serving[], at: Place): Figure<'volume'> {
  const written = needs.batch.value.volume;
  if (written === undefined) return unknown([{ says: 'the volume of the batch', at }]);
  return written.kind === 'as-needed' ? neededVolume(serves, at, 'with spare') : given(written.volume, at);
}

function planDose(
  needs: BatchNeeds,
  name: string,
  feed: Sourced<Feed> | undefined,
  dose: Dose,
  volume: Figure<'volume'>,
  loads: Figure<'number'>,
): DosePlan {
  const at: Place = { path: [...needs.batch.path, 'feed', name], part: { kind: 'value' } };
  const labelPath = [...(feed?.path ?? at.path), 'label'];
  const labelAt: Place = { path: labelPath, part: at.part, ...(feed?.file === undefined ? {} : { file: feed.file }) };
  const rate = rateOf(dose, at, feed?.value, labelAt);
  const exact = doseOf(dose, at, rate, volume);
  const perLoad = loadDose(exact, loads);
  const amount = numberOf(perLoad);
  const measured: Measured =
    amount === undefined || perLoad.kind === 'unknown'
      ? { kind: 'no-tool' }
      : measure(amount, perLoad.quantity.dimension, needs.tools);
  const poured = measured.kind === 'measured' ? measuredDose(perLoad, loads, needs.tools) : exact;
  const adds = new Map<ElementSymbol, Figure<'mass-per-volume'>>();
  if (feed !== undefined) {
    for (const [element, share] of sharesOf(feed)) adds.set(element, elementFrom(feed, element, share, poured, volume));
  }
  const nitrogen =
    feed === undefined
      ? unknownNitrogen(unknown([{ says: `the feed ${name}`, at }]))
      : nitrogenFrom(feed, poured, volume);
  return {
    name,
    feed,
    dose,
    at,
    rate,
    exact,
    perLoad,
    measured,
    poured,
    error: errorOf(poured, exact),
    adds,
    nitrogen,
  };
}

function loadDose(exact: DoseFigure, loads: Figure<'number'>): DoseFigure {
  if (exact.kind === 'unknown') return exact;
  return exact.quantity.dimension === 'volume'
    ? perLoadDose.volume({ dose: exact as Figure<'volume'>, loads })
    : perLoadDose.mass({ dose: exact as Figure<'mass'>, loads });
}

/** The elements in the order in which a label lists them, those of the water included. */
function elementsOf(needs: BatchNeeds, doses: readonly DosePlan[]): BatchPlan['elements'] {
  const parts = new Map<ElementSymbol, Figure<'mass-per-volume'>[]>();
  const add = (element: ElementSymbol, figure: Figure<'mass-per-volume'>): void => {
    const others = parts.get(element);
    if (others === undefined) parts.set(element, [figure]);
    else others.push(figure);
  };
  if (needs.water !== undefined) for (const [element, figure] of elementsOfWater(needs.water)) add(element, figure);
  for (const dose of doses) for (const [element, figure] of dose.adds) add(element, figure);
  // A feed that says nothing of what is in it may bring any element, so no total is known beside it.
  const unread = unreadFeeds(needs);
  const gaps = [...doses.flatMap(unknownContent), ...(unread.length > 0 ? [unknown(unread)] : [])];
  const rank = (element: ElementSymbol): number => {
    const place = labelOrder.indexOf(element);
    return place === -1 ? labelOrder.length : place;
  };
  return new Map(
    [...parts]
      .sort(([a], [b]) => rank(a) - rank(b))
      .map(([element, figures]) => [
        element,
        sumOf({ parts: [...figures, ...gaps] }, { what: element, of: 'the batch' }),
      ]),
  );
}

/** A gap for a feed whose content is not stated, or that nothing has the name of. */
export function unknownContent({ name, feed, at }: DosePlan): readonly Figure<'mass-per-volume'>[] {
  if (feed === undefined) return [unknown([{ says: `the feed ${name}`, at }])];
  const { analysis, nitrogen, formula } = feed.value;
  if (formula !== undefined && readCompound(formula).kind !== 'compound') {
    return [unknown([{ says: 'a formula that can be read', at: valueAt([...feed.path, 'formula'], feed.file) }])];
  }
  if (analysis !== undefined || nitrogen !== undefined || formula !== undefined) return [];
  return [unknown([composition(feed)])];
}

/** The order in which a label lists elements is that in which a target gives bands. */
const labelOrder: readonly ElementSymbol[] = targetElements;
