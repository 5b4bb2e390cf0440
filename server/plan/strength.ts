// How strong an adjuster is: how much acid or base a litre holds, and how much of it counts where nutrient solutions are kept.

import { valueAt } from '../../schema/place.ts';
import { anchorTo } from '../chemistry/anchor.ts';
import { reagentMolarMass } from '../chemistry/reagent.ts';
import { isReagent, type ReagentKey, reagents } from '../chemistry/tables/acids.ts';
import type { Totals } from '../chemistry/totals.ts';
import type { Adjuster } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { type Figure, formula, given, type Unknown } from './figure.ts';
import { memo } from './memo.ts';
import { type DosedBy, reagentOf } from './reagent.ts';

export interface Strength {
  readonly kind: 'strength';
  readonly unit: DosedBy;
  readonly does: 'acid' | 'base';
  /** What it is made of, each with its share; of a liquid also in a litre. */
  readonly parts: readonly Part[];
  /** What a mL or g of it does at the pH of a nutrient solution, in meq. */
  readonly perUnit: Figure<'number'>;
}

export interface Part {
  readonly title: string;
  readonly share: Figure<'fraction'>;
  readonly molar: Figure<'amount-per-volume'> | undefined;
}

/** The strength by composition; undefined where the adjuster is given by its response. */
export const strengthOf = memo((adjuster: Sourced<Adjuster>): Strength | Unknown | undefined => {
  const reagent = reagentOf(adjuster);
  if (reagent.kind === 'unknown') return reagent;
  if (reagent.kind === 'response') return undefined;
  const { acid, base, density } = adjuster.value;
  const written = { acid: Object.entries(acid ?? {}), base: Object.entries(base ?? {}) };
  const at = (...keys: readonly string[]) => valueAt([...adjuster.path, ...keys], adjuster.file);
  const liquid = density === undefined ? undefined : given(density, at('density'));
  const parts = (['acid', 'base'] as const).flatMap(section =>
    written[section].flatMap(([key, amount]): Part[] => {
      if (!isReagent(key) || amount === undefined) return [];
      const share = given(amount, at(section, key));
      const molar = liquid === undefined ? undefined : reagentMolarity({ share, density: liquid }, key);
      return [{ title: reagents[key].title, share, molar }];
    }),
  );
  const shares = parts.map(part => part.share);
  const densities = liquid === undefined ? [] : [liquid];
  return {
    kind: 'strength',
    unit: reagent.unit,
    does: reagent.does,
    parts,
    perUnit: strengthPerUnit({ shares, densities }, reagent.perUnit),
  };
});

/** What is written of its strength: the shares by mass of what it is made of, and the density of a liquid. */
export function writtenStrength(adjuster: Sourced<Adjuster> | undefined): WrittenStrength {
  if (adjuster === undefined) return { share: [], density: [] };
  const { acid, base, density } = adjuster.value;
  const at = (...keys: readonly string[]) => valueAt([...adjuster.path, ...keys], adjuster.file);
  const share = (['acid', 'base'] as const).flatMap(section =>
    Object.entries((section === 'acid' ? acid : base) ?? {}).flatMap(([key, amount]) =>
      amount === undefined ? [] : [given(amount, at(section, key))],
    ),
  );
  return { share, density: density === undefined ? [] : [given(density, at('density'))] };
}

export interface WrittenStrength {
  readonly share: readonly Figure<'fraction'>[];
  readonly density: readonly Figure<'mass-per-volume'>[];
}

export const reagentMolarity = formula({
  id: 'molarity-of-adjuster',
  says: 'the acid or base in a litre',
  statement: 'amount = share × density ÷ molar mass',
  source: 'ciaaw-2021',
  takes: { share: 'fraction', density: 'mass-per-volume' },
  gives: 'amount-per-volume',
  evaluate: ({ share, density }, key: ReagentKey) => (share * density) / reagentMolarMass(key),
  account: (_, key) => [{ what: 'molar mass', value: reagentMolarMass(key), unit: 'g/mol' }],
});

/** Where nutrient solutions are kept: weak acids give some of their protons only. */
const usual_pH = 5.8;
const usual_C = 25;

/**
 * Equivalents that one mL or g gives or takes up in a litre of pure water by the time it stands at the usual pH, less what the
 * water takes by itself.
 */
function equivalentsOf(perUnit: Totals): number {
  const needed = (totals: Totals): number =>
    anchorTo({ totals, temperature_C: usual_C, air: 'closed' }, usual_pH).imbalance ?? 0;
  return Math.abs(needed(perUnit) - needed({}));
}

export const strengthPerUnit = formula({
  id: 'strength-of-adjuster',
  says: 'the acid or base that a mL or g of it counts for at pH 5.8, in meq',
  statement: 'strength = charge that brings a litre with 1 unit of it to pH 5.8',
  source: 'usgs-phreeqc-database',
  takes: { shares: ['fraction'], densities: ['mass-per-volume'] },
  gives: 'number',
  evaluate: (_, perUnit: Totals) => equivalentsOf(perUnit) * 1000,
});

/** The share by which an adjuster acts, of what is written of it. */
export const learnedShare = formula({
  id: 'learned-share',
  says: 'the strength by which it acts, as the readings show',
  statement: 'acts as = written share × strength that explains the readings',
  source: 'tidemark-design',
  takes: { share: 'fraction' },
  gives: 'fraction',
  evaluate: ({ share }, factor: number) => share * factor,
  account: (_, factor) => [{ what: 'strength that explains the readings', value: factor, unit: '1' }],
});
