// Milligrams of each element in a litre: from guaranteed analyses, from formulae, and from the source water.

import { type AnalysisKey, analysisKeys } from '../../schema/sections/feed.ts';
import { ionKeys } from '../../schema/sections/water.ts';
import { massFraction, readCompound } from '../chemistry/compound.ts';
import { type ElementSymbol, elements as elementRows, isElement } from '../chemistry/tables/elements.ts';
import type { Feed, Water } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { DoseFigure } from './dose.ts';
import { assumed, type Figure, formula, given, givenOr } from './figure.ts';
import { ionAmount, ions } from './ions.ts';
import { memo } from './memo.ts';

/** The shares of a feed's mass that are elements, each a figure. */
export type ElementShares = ReadonlyMap<ElementSymbol, Figure<'fraction'>>;

/** Which element a line of an analysis guarantees, and how much of the stated substance it is. */
export const analysisRows: ReadonlyMap<AnalysisKey, { readonly element: ElementSymbol; readonly fraction: number }> =
  new Map(
    analysisKeys.flatMap(key => {
      const compound = readCompound(key);
      if (compound.kind !== 'compound') return [];
      const element = Object.keys(compound.elements).find(symbol => symbol !== 'O');
      return element !== undefined && isElement(element)
        ? [[key, { element, fraction: massFraction(compound, element) }] as const]
        : [];
    }),
  );

/** What a feed is made of: from its analysis and nitrogen forms, or from its formula. */
export const sharesOf = memo((feed: Sourced<Feed>): ElementShares => {
  const { value } = feed;
  const shares = new Map<ElementSymbol, Figure<'fraction'>>();
  for (const key of analysisKeys) {
    const stated = value.analysis?.[key];
    const row = analysisRows.get(key);
    if (stated === undefined || row === undefined || shares.has(row.element)) continue;
    const share = given(stated, placeIn(feed, 'analysis', key));
    if (row.fraction === 1) shares.set(row.element, share);
    else shares.set(row.element, elementOfOxide({ share, fraction: fractionOf(row.element, key, row.fraction) }));
  }
  if (!shares.has('N') && value.nitrogen !== undefined) {
    const forms = nitrogenForms.flatMap(form => {
      const share = value.nitrogen?.[form];
      return share === undefined ? [] : [given(share, placeIn(feed, 'nitrogen', form))];
    });
    if (forms.length > 0) shares.set('N', sumOfShares({ forms }));
  }
  const compound = value.formula === undefined ? undefined : readCompound(value.formula);
  if (compound?.kind === 'compound') {
    const purity = value.purity === undefined ? assumedPure : given(value.purity, placeIn(feed, 'purity'));
    for (const symbol of Object.keys(compound.elements)) {
      if (!isElement(symbol) || symbol === 'O' || symbol === 'H' || symbol === 'C' || shares.has(symbol)) continue;
      const fraction = fractionOf(symbol, value.formula ?? '', massFraction(compound, symbol));
      shares.set(symbol, elementOfSalt({ fraction, purity }));
    }
  }
  return shares;
});

export const nitrogenForms = ['nitrate', 'ammonium', 'urea'] as const;
export type NitrogenForm = (typeof nitrogenForms)[number];

const assumedPure = assumed({ dimension: 'fraction', value: 1 }, 'pure, where no purity is written', 'tidemark-design');

function fractionOf(symbol: ElementSymbol, compound: string, fraction: number): Figure<'fraction'> {
  const says = `${elementRows[symbol].name} in ${compound}, by atomic weights`;
  return assumed({ dimension: 'fraction', value: fraction }, says, elementRows[symbol].source);
}

function placeIn(of: Sourced<unknown>, ...keys: readonly string[]) {
  const path = [...of.path, ...keys];
  const part = { kind: 'value' } as const;
  return of.file === undefined ? { path, part } : { file: of.file, path, part };
}

/** Of what a number is, so that a sum can be told apart from its parts: `K` of `leaf`. */
interface Whose {
  readonly what: string;
  readonly of: string;
}

/** What one dose of a feed adds of an element or of one of its forms, per litre of the batch. */
export function elementFrom(
  feed: Sourced<Feed>,
  what: string,
  share: Figure<'fraction'>,
  dose: DoseFigure,
  volume: Figure<'volume'>,
): Figure<'mass-per-volume'> {
  if (dose.kind === 'unknown') return dose;
  const whose = { what, of: feed.name };
  if (dose.quantity.dimension === 'mass')
    return elementFromMass({ dose: dose as Figure<'mass'>, share, volume }, whose);
  const density = givenOr(feed.value.density, placeIn(feed, 'density'), `the density of ${feed.name}`);
  return elementFromVolume({ dose: dose as Figure<'volume'>, density, share, volume }, whose);
}

/** The elements that a source water brings. */
export const elementsOfWater = memo((water: Sourced<Water>): ReadonlyMap<ElementSymbol, Figure<'mass-per-volume'>> => {
  const found = new Map<ElementSymbol, Figure<'mass-per-volume'>[]>();
  for (const key of ionKeys) {
    const written = water.value.ions?.[key];
    const row = ions[key];
    if (written === undefined || row.brings === undefined) continue;
    // Of an ion stated twice, the first spelling of the table counts; a finding says so.
    if (row.sameAs !== undefined && water.value.ions?.[row.sameAs] !== undefined && key.includes('-')) continue;
    const at = placeIn(water, 'ions', key);
    const amount = ionAmount(key, written, at);
    const figure = elementOfIon({ amount, weight: weightOf(row.brings) }, { what: row.brings, of: water.name });
    found.set(row.brings, [...(found.get(row.brings) ?? []), figure]);
  }
  return new Map(
    [...found].map(([element, parts]) => [
      element,
      parts.length === 1 && parts[0] ? parts[0] : sumOf({ parts }, { what: element, of: water.name }),
    ]),
  );
});

function weightOf(symbol: ElementSymbol): Figure<'mass-per-amount'> {
  const row = elementRows[symbol];
  return assumed({ dimension: 'mass-per-amount', value: row.weight }, `atomic weight of ${row.name}`, row.source);
}

export const elementOfOxide = formula({
  id: 'element-of-oxide',
  says: 'the share of the element in what the label states',
  statement: 'element = share × fraction',
  source: 'aapfco-labels',
  takes: { share: 'fraction', fraction: 'fraction' },
  gives: 'fraction',
  evaluate: ({ share, fraction }) => share * fraction,
});

export const elementOfSalt = formula({
  id: 'element-of-salt',
  says: 'the share of the element in the salt',
  statement: 'element = fraction × purity',
  source: 'ciaaw-2021',
  takes: { fraction: 'fraction', purity: 'fraction' },
  gives: 'fraction',
  evaluate: ({ fraction, purity }) => fraction * purity,
});

export const sumOfShares = formula({
  id: 'sum-of-forms',
  says: 'total nitrogen from its forms',
  statement: 'total = sum of the forms',
  source: 'aapfco-labels',
  takes: { forms: ['fraction'] },
  gives: 'fraction',
  evaluate: ({ forms }) => forms.reduce((total, form) => total + form, 0),
});

function fromFeed({ what, of }: Whose): string {
  return `${what} from ${of}`;
}

function within({ what, of }: Whose): string {
  return `${what} in ${of}`;
}

export const elementFromVolume = formula({
  id: 'element-from-liquid',
  says: 'what the feed adds of the element',
  saysOf: fromFeed,
  statement: 'added = dose × density × share ÷ volume',
  source: 'aapfco-labels',
  takes: { dose: 'volume', density: 'mass-per-volume', share: 'fraction', volume: 'volume' },
  gives: 'mass-per-volume',
  evaluate: ({ dose, density, share, volume }, _: Whose) =>
    volume > 0 ? (dose * density * share) / volume : { reason: 'a volume above zero' },
});

export const elementFromMass = formula({
  id: 'element-from-solid',
  says: 'what the feed adds of the element',
  saysOf: fromFeed,
  statement: 'added = dose × share ÷ volume',
  source: 'aapfco-labels',
  takes: { dose: 'mass', share: 'fraction', volume: 'volume' },
  gives: 'mass-per-volume',
  // A mass counts grams, a concentration milligrams.
  evaluate: ({ dose, share, volume }, _: Whose) =>
    volume > 0 ? (dose * 1000 * share) / volume : { reason: 'a volume above zero' },
});

export const elementOfIon = formula({
  id: 'element-of-ion',
  says: 'the element in the water',
  saysOf: within,
  statement: 'element = amount × weight',
  source: 'ciaaw-2021',
  takes: { amount: 'amount-per-volume', weight: 'mass-per-amount' },
  gives: 'mass-per-volume',
  evaluate: ({ amount, weight }, _: Whose) => amount * weight,
});

export const sumOf = formula({
  id: 'element-total',
  says: 'the element in the batch',
  saysOf: within,
  statement: 'total = sum of the parts',
  source: 'tidemark-design',
  takes: { parts: ['mass-per-volume'] },
  gives: 'mass-per-volume',
  evaluate: ({ parts }, _: Whose) => parts.reduce((total, part) => total + part, 0),
});
