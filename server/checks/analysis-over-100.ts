// Shares that add up to more than the whole: of a feed's analysis, or of what an adjuster holds.

import type { FindingOf } from '../../schema/findings.ts';
import { type Path, valueAt } from '../../schema/place.ts';
import { analysisKeys } from '../../schema/sections/feed.ts';
import { elements } from '../chemistry/tables/elements.ts';
import { analysisRows } from '../plan/elements.ts';
import type { Feed } from '../recipe/seen.ts';
import { eachOwn, together } from './each.ts';

const feeds = eachOwn('feeds', ({ name, value, path }) => {
  const { sum, least } = sumOfAnalysis(value);
  return limit < least ? [over(name, sum, [...path, 'analysis'])] : [];
});

const adjusters = eachOwn('adjusters', ({ name, value, path }) =>
  [value.acid, value.base].flatMap((parts, index) => {
    const sum = Object.values(parts ?? {}).reduce((total, part) => total + (part?.value ?? 0), 0);
    return limit < sum ? [over(name, sum, [...path, index === 0 ? 'acid' : 'base'])] : [];
  }),
);

export const analysisOver100 = together(feeds, adjusters);

/** Labels are rounded, so that a pure salt may add up to a little more than all. */
const limit = 1.005;

function over(name: string, sum: number, path: Path): FindingOf<'analysis-over-100'> {
  return { code: 'analysis-over-100', params: { name, percent: Math.round(sum * 1000) / 10 }, at: valueAt(path) };
}

/**
 * What is stated together, and the least mass that must be in the feed for it. The two differ where chloride is: potassium
 * chloride is stated as 63 % K2O and 48 % Cl, but its potassium is bound to chloride and brings no oxygen.
 */
function sumOfAnalysis({ analysis, nitrogen }: Feed): { readonly sum: number; readonly least: number } {
  const stated = new Set<string>();
  let sum = 0;
  for (const key of analysisKeys) {
    const share = analysis?.[key];
    const element = analysisRows.get(key)?.element;
    // An element that is stated twice, as oxide and as such, is there once.
    if (share === undefined || element === undefined || stated.has(element)) continue;
    stated.add(element);
    sum += share.value;
  }
  if (!stated.has('N')) for (const form of Object.values(nitrogen ?? {})) sum += form?.value ?? 0;
  const oxygenPerChlorine = elements.O.weight / 2 / elements.Cl.weight;
  return { sum, least: sum - (analysis?.Cl?.value ?? 0) * oxygenPerChlorine };
}
