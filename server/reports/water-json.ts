// Source waters for programs: each as a solution, how well its report adds up, and the elements it brings.

import type { WaterJson } from '../../schema/plan-json.ts';
import { elementsOfWater } from '../plan/elements.ts';
import { ionGapOf } from '../plan/ion-gap.ts';
import { nitrogenOfWater } from '../plan/nitrogen.ts';
import { statedOf } from '../plan/stated-water.ts';
import { planWater, type WaterPlan } from '../plan/water.ts';
import type { Water } from '../recipe/seen.ts';
import { all, type Sourced } from '../recipe/use.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { beyondNumbers, type NameFile, tidy } from './plan-json/gaps.ts';
import { type NumberUnder, solutionJson } from './plan-json/solution.ts';

type OneWaterJson = WaterJson['waters'][string];

/** The waters that a recipe sees, or the one that is named; undefined where it has none of that name. */
export function waterJson(snapshot: Snapshot, nameFile: NameFile, name?: string): WaterJson | undefined {
  const seen = watersOf(snapshot, name);
  if (seen === undefined) return undefined;
  return {
    formatVersion: 1,
    file: nameFile(snapshot.uri),
    waters: Object.fromEntries(seen.map(water => [water.name, oneWater(water)])),
  };
}

/** The waters that a recipe sees, or the one that is named; undefined where it has none of that name. */
export function watersOf(snapshot: Snapshot, name?: string): readonly Sourced<Water>[] | undefined {
  const waters = all(snapshot.scope, 'waters');
  if (name === undefined) return waters;
  const named = waters.find(water => water.name === name);
  return named === undefined ? undefined : [named];
}

function oneWater(water: Sourced<Water>): OneWaterJson {
  const unknown: Record<string, string[]> = {};
  const number: NumberUnder = (key, figure, times = 1) => {
    const value = figure.kind === 'known' ? figure.quantity.value * times : Number.NaN;
    if (Number.isFinite(value)) return tidy(value);
    unknown[key.join('/')] = figure.kind === 'known' ? [beyondNumbers] : figure.wants.map(want => want.says);
    return null;
  };
  const plan = planWater(water);
  const { inAir, carbon, solved } = plan;
  const figures = statedOf(plan);
  const solution = solutionJson(figures, inAir, number);
  const nitrogen = nitrogenOfWater(water);
  return {
    ...solution,
    alkalinity_meq_per_L: number(['alkalinity_meq_per_L'], figures.alkalinity),
    inorganicCarbon_mmol_per_L: number(['inorganicCarbon_mmol_per_L'], carbon.total),
    CO2_mmol_per_L: number(['CO2_mmol_per_L'], carbon.CO2),
    HCO3_mmol_per_L: number(['HCO3_mmol_per_L'], carbon.HCO3),
    CO3_mmol_per_L: number(['CO3_mmol_per_L'], carbon.CO3),
    ionGap: gapJson(plan, number),
    isByDifference: solved.kind === 'solved' && solved.isByDifference,
    elements_mg_per_L: Object.fromEntries(
      [...elementsOfWater(water)].map(([element, figure]) => [element, number(['elements_mg_per_L', element], figure)]),
    ),
    nitrogen_mg_per_L: {
      nitrate: number(['nitrogen_mg_per_L', 'nitrate'], nitrogen.nitrate),
      ammonium: number(['nitrogen_mg_per_L', 'ammonium'], nitrogen.ammonium),
      urea: number(['nitrogen_mg_per_L', 'urea'], nitrogen.urea),
    },
    unknown,
  };
}

/** How far the report is from balance; null where it names one kind of ion only, which says nothing. */
function gapJson(plan: WaterPlan, number: NumberUnder): OneWaterJson['ionGap'] {
  const gap = ionGapOf(plan);
  if (gap === undefined || !gap.isWhole) return null;
  return {
    meq_per_L: number(['ionGap', 'meq_per_L'], gap.charge),
    percent: number(['ionGap', 'percent'], gap.share, 100),
    isLarge: gap.isLarge,
  };
}
