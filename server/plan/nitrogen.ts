// The forms in which nitrogen is there: nitrate, ammonium, urea. Apart from the elements, because plants and pH answer to the
// form, and because a label may state the total without saying in which forms it comes.

import { keyAt, valueAt } from '../../schema/place.ts';
import type { IonKey } from '../../schema/sections/water.ts';
import { readCompound } from '../chemistry/compound.ts';
import { dissolve } from '../chemistry/salt.ts';
import { elements } from '../chemistry/tables/elements.ts';
import { components } from '../chemistry/tables/species.ts';
import type { Feed, Water } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { DoseFigure } from './dose.ts';
import { elementFrom, elementOfIon, elementOfSalt, type NitrogenForm, nitrogenForms } from './elements.ts';
import { assumed, type Figure, formula, given, numberOf, type Unknown, unknown } from './figure.ts';
import { ionAmount } from './ions.ts';
import { memo } from './memo.ts';

/** Nitrogen by its form, mg/L of the element. A form that is not there is zero; one that is not stated is unknown. */
export type Nitrogen = Readonly<Record<NitrogenForm, Figure<'mass-per-volume'>>>;

/** What one dose adds, per litre of the batch. */
export function nitrogenFrom(feed: Sourced<Feed>, dose: DoseFigure, volume: Figure<'volume'>): Nitrogen {
  const shares = formsOf(feed);
  // What has none of a form adds none of it, however much is given and whatever its density.
  return byForm(form =>
    shares[form] === noneStated ? noneAdded : elementFrom(feed, called[form], shares[form], dose, volume),
  );
}

/** What a batch holds: its water's and its feeds' together. */
export function nitrogenOf(water: Sourced<Water> | undefined, feeds: readonly Nitrogen[]): Nitrogen {
  const brought = water === undefined ? undefined : nitrogenOfWater(water);
  return byForm(form => {
    const parts = feeds.map(feed => feed[form]);
    return nitrogenTotal({ parts: brought === undefined ? parts : [brought[form], ...parts] }, form);
  });
}

/** The nitrogen of a feed of which nothing is known. */
export function unknownNitrogen(gap: Unknown): Nitrogen {
  return byForm(() => gap);
}

/** The share of a feed's mass that is nitrogen of each form. */
export const formsOf = memo((feed: Sourced<Feed>): Readonly<Record<NitrogenForm, Figure<'fraction'>>> => {
  const { nitrogen, analysis, formula: written } = feed.value;
  if (nitrogen !== undefined) return statedForms(feed);
  if (written !== undefined) return formsOfSalt(feed, written);
  if (analysis === undefined) return byForm(() => unknown([composition(feed)]));
  const total = analysis.N;
  if (total === undefined || total.value === 0) return byForm(() => noneStated);
  return byForm(() => unknown([splitOf(feed)]));
});

/** What is missing where a feed says nothing of what it is made of. */
export function composition(feed: Sourced<Feed>) {
  return {
    says: `the analysis or formula of ${feed.name}`,
    at: keyAt([...feed.path, 'analysis'], feed.file),
  };
}

function splitOf(feed: Sourced<Feed>) {
  return {
    says: `how the nitrogen of ${feed.name} splits into forms`,
    at: keyAt([...feed.path, 'nitrogen'], feed.file),
  };
}

/** A label lists the forms it has; what it leaves out is none only if those it lists make up the whole nitrogen. */
function statedForms(feed: Sourced<Feed>): Readonly<Record<NitrogenForm, Figure<'fraction'>>> {
  const { nitrogen, analysis } = feed.value;
  const listed = nitrogenForms.reduce((sum, form) => sum + (nitrogen?.[form]?.value ?? 0), 0);
  const isWhole = analysis?.N === undefined || analysis.N.value - listed < labelRounding;
  return byForm(form => {
    const share = nitrogen?.[form];
    if (share !== undefined) return given(share, valueAt([...feed.path, 'nitrogen', form], feed.file));
    return isWhole ? noneStated : unknown([splitOf(feed)]);
  });
}

/** Labels are rounded to tenths of a per cent. */
const labelRounding = 0.0005;

function formsOfSalt(feed: Sourced<Feed>, written: string): Readonly<Record<NitrogenForm, Figure<'fraction'>>> {
  const compound = readCompound(written);
  if (compound.kind !== 'compound') {
    return byForm(() =>
      unknown([{ says: `a formula that can be read`, at: valueAt([...feed.path, 'formula'], feed.file) }]),
    );
  }
  const { totals } = dissolve(compound);
  const purity =
    feed.value.purity === undefined
      ? assumed({ dimension: 'fraction', value: 1 }, 'pure, where no purity is written', 'tidemark-design')
      : given(feed.value.purity, valueAt([...feed.path, 'purity'], feed.file));
  return byForm(form => {
    const component = componentOf[form];
    const moles = (totals[component] ?? 0) * components[component].elements.N;
    if (moles === 0) return noneStated;
    const value = (moles * elements.N.weight) / compound.molarMass_g_per_mol;
    const says = `${form} nitrogen in ${written}, by atomic weights`;
    const fraction = assumed({ dimension: 'fraction', value }, says, elements.N.source);
    return elementOfSalt({ fraction, purity });
  });
}

const called = { nitrate: 'N as nitrate', ammonium: 'N as ammonium', urea: 'N as urea' } as const;

const componentOf = { nitrate: 'NO3', ammonium: 'NH4', urea: 'urea' } as const;

const noneStated = assumed({ dimension: 'fraction', value: 0 }, 'none of this form', 'tidemark-design');
const noneAdded = assumed({ dimension: 'mass-per-volume', value: 0 }, 'none of this form', 'tidemark-design');

/** The nitrate and ammonium of a source water; one that its report leaves out is taken for none, as its elements are. */
export const nitrogenOfWater = memo((water: Sourced<Water>): Nitrogen => {
  const first = (what: string, ...keys: readonly IonKey[]): Figure<'mass-per-volume'> => {
    for (const key of keys) {
      const written = water.value.ions?.[key];
      if (written === undefined) continue;
      const amount = ionAmount(key, written, valueAt([...water.path, 'ions', key], water.file));
      return elementOfIon({ amount, weight: nitrogenWeight }, { what, of: water.name });
    }
    return noneInWater;
  };
  return {
    nitrate: first(called.nitrate, 'NO3', 'NO3-N'),
    ammonium: first(called.ammonium, 'NH4', 'NH4-N'),
    urea: noneInWater,
  };
});

const nitrogenWeight = assumed(
  { dimension: 'mass-per-amount', value: elements.N.weight },
  'atomic weight of nitrogen',
  elements.N.source,
);

const noneInWater = assumed(
  { dimension: 'mass-per-volume', value: 0 },
  'none, where the water’s report has none',
  'tidemark-design',
);

function byForm<T>(make: (form: NitrogenForm) => T): Readonly<Record<NitrogenForm, T>> {
  return { nitrate: make('nitrate'), ammonium: make('ammonium'), urea: make('urea') };
}

/** Whether the forms add up to something: then they are worth showing. */
export function hasNitrogen(nitrogen: Nitrogen): boolean {
  return nitrogenForms.some(form => (numberOf(nitrogen[form]) ?? 1) > 0);
}

export const nitrogenTotal = formula({
  id: 'nitrogen-form-total',
  says: 'the nitrogen of this form in the batch',
  saysOf: (form: NitrogenForm) => `${called[form]} in the batch`,
  statement: 'total = sum of the parts',
  source: 'tidemark-design',
  takes: { parts: ['mass-per-volume'] },
  gives: 'mass-per-volume',
  evaluate: ({ parts }) => parts.reduce((total, part) => total + part, 0),
});
