// What the whole plan uses of each feed and adjuster, how many packages that is, and what it costs.

import type { Day } from '../../schema/date.ts';
import { valueAt } from '../../schema/place.ts';
import type { Money } from '../../schema/texts/money.ts';
import type { Adjuster, Feed } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { adjustmentOf } from './adjust.ts';
import type { DoseFigure } from './dose.ts';
import { type Figure, formula, given, numberOf, unknown } from './figure.ts';
import type { Mixing } from './mixing.ts';

export interface Supply {
  readonly of: Sourced<Feed> | Sourced<Adjuster>;
  readonly kind: 'feed' | 'adjuster';
  readonly uses: DoseFigure;
  readonly packages: Figure<'number'>;
  /** Where package and price are written. */
  readonly cost: Money | undefined;
  /** The day of the mixing for which the first package is not enough; undefined where it is enough for all. */
  readonly firstPackageEnds: Day | undefined;
}

/** The supplies of a plan, feeds before adjusters, in the order in which batches use them. */
export function suppliesOf(mixings: readonly Mixing[]): ReadonlyMap<string, Supply> {
  const found = new Map<string, Use[]>();
  const add = (use: Use): void => {
    found.set(use.of.name, [...(found.get(use.of.name) ?? []), use]);
  };
  for (const mixing of mixings) {
    for (const { feed, poured } of mixing.batch.doses.values())
      if (feed !== undefined) add({ of: feed, kind: 'feed', dose: poured, mixing });
  }
  for (const mixing of mixings) for (const use of additionsIn(mixing)) add(use);
  return new Map([...found].map(([name, of]) => [name, supplyOf(of)]));
}

/** What readings say was added to the batch, and what its adjustment still asks for. */
function additionsIn(mixing: Mixing): readonly Use[] {
  const { needs } = mixing.batch;
  const added = (needs.batch.value.readings ?? []).flatMap((reading, index) =>
    [...(reading?.add ?? [])].flatMap(([name, quantity]): Use[] => {
      const of = needs.added.find(one => one.name === name);
      if (of === undefined || quantity === undefined) return [];
      const kind = of.path[0] === 'feeds' ? 'feed' : 'adjuster';
      const dose = given(quantity, valueAt([...needs.batch.path, 'readings', index, 'add', name]));
      return [{ of, kind, dose: dose as DoseFigure, mixing }];
    }),
  );
  const adjustment = adjustmentOf(mixing.batch);
  if (adjustment?.adjuster === undefined) return added;
  const { adjuster, exact } = adjustment;
  // A batch that was adjusted past its aim asks for nothing more of the same.
  if (exact.kind === 'unknown' && added.some(({ of }) => of === adjuster)) return added;
  return [...added, { of: adjuster, kind: 'adjuster', dose: exact, mixing }];
}

interface Use {
  readonly of: Sourced<Feed> | Sourced<Adjuster>;
  readonly kind: Supply['kind'];
  readonly dose: DoseFigure;
  readonly mixing: Mixing;
}

function supplyOf(uses: readonly Use[]): Supply {
  const [first] = uses;
  if (first === undefined) throw new Error('a supply without a use');
  const { of, kind } = first;
  const total = totalOf(uses);
  const packages = packagesOf(of, total);
  const count = numberOf(packages);
  const { price } = of.value;
  const cost = count === undefined || price === undefined ? undefined : { ...price, amount: price.amount * count };
  const { package: pack } = of.value;
  const firstPackageEnds = packages.kind === 'unknown' || pack === undefined ? undefined : endOfFirst(uses, pack.value);
  return { of, kind, uses: total, packages, cost, firstPackageEnds };
}

/** What is dosed by volume here and by mass there does not add up. */
function totalOf(uses: readonly Use[]): DoseFigure {
  const doses = uses.map(use => use.dose);
  const times = uses.map(use => use.mixing.times);
  const known = new Set(doses.flatMap(dose => (dose.kind === 'known' ? [dose.quantity.dimension] : [])));
  const [{ of } = { of: undefined }] = uses;
  if (known.size > 1) {
    const at = valueAt(of?.path ?? [], of?.file);
    return unknown([{ says: `doses of ${of?.name ?? ''} that are all by volume or all by mass`, at }]);
  }
  return known.has('mass')
    ? usedMass({ doses: doses as Figure<'mass'>[], times })
    : usedVolume({ doses: doses as Figure<'volume'>[], times });
}

function packagesOf(of: Use['of'], uses: DoseFigure): Figure<'number'> {
  const { package: pack } = of.value;
  const at = valueAt([...of.path, 'package'], of.file);
  if (uses.kind === 'unknown') return uses;
  if (pack === undefined) return unknown([{ says: `what a package of ${of.name} holds`, at }]);
  if (pack.dimension !== uses.quantity.dimension) {
    const kind = uses.quantity.dimension === 'mass' ? 'mass' : 'volume';
    return unknown([{ says: `what a package of ${of.name} holds as a ${kind}, as it is dosed`, at }]);
  }
  return pack.dimension === 'mass'
    ? packagesByMass({ uses: uses as Figure<'mass'>, holds: given(pack, at) })
    : packagesByVolume({ uses: uses as Figure<'volume'>, holds: given(pack, at) });
}

/** The day of the mixing that needs more than the first package holds. */
function endOfFirst(uses: readonly Use[], holds: number): Day | undefined {
  const taken = uses.flatMap(({ dose, mixing }) =>
    mixing.days.map(({ date, times }) => ({ date, amount: (numberOf(dose) ?? 0) * times })),
  );
  let used = 0;
  for (const { date, amount } of taken.sort((a, b) => a.date - b.date)) {
    used += amount;
    if (used > holds * (1 + 1e-9)) return date;
  }
  return undefined;
}

/** What supplies cost together: a sum for each currency, for amounts in different ones do not add up. */
export function costsOf(supplies: Iterable<Supply>): readonly Money[] {
  const sums = new Map<string, number>();
  for (const { cost } of supplies) {
    if (cost !== undefined) sums.set(cost.currency, (sums.get(cost.currency) ?? 0) + cost.amount);
  }
  return [...sums].map(([currency, amount]) => ({ currency, amount }));
}

const uses = {
  says: 'what the plan uses',
  statement: 'uses = sum of dose × times mixed',
  source: 'tidemark-design',
} as const;

export const usedVolume = formula({
  id: 'supply-by-volume',
  ...uses,
  takes: { doses: ['volume'], times: ['number'] },
  gives: 'volume',
  evaluate: ({ doses, times }) => doses.reduce((sum, dose, index) => sum + dose * (times[index] ?? 0), 0),
});

export const usedMass = formula({
  id: 'supply-by-mass',
  ...uses,
  takes: { doses: ['mass'], times: ['number'] },
  gives: 'mass',
  evaluate: ({ doses, times }) => doses.reduce((sum, dose, index) => sum + dose * (times[index] ?? 0), 0),
});

const packs = {
  says: 'the packages to have',
  statement: 'packages = uses ÷ package, rounded up',
  source: 'tidemark-design',
  gives: 'number',
} as const;

export const packagesByVolume = formula({
  id: 'packages-by-volume',
  ...packs,
  takes: { uses: 'volume', holds: 'volume' },
  evaluate: ({ uses: used, holds }) => Math.ceil(used / holds - 1e-9),
});

export const packagesByMass = formula({
  id: 'packages-by-mass',
  ...packs,
  takes: { uses: 'mass', holds: 'mass' },
  evaluate: ({ uses: used, holds }) => Math.ceil(used / holds - 1e-9),
});
