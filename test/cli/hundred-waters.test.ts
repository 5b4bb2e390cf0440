// The reference cases as one recipe of a hundred waters and batches, through the real commands: what the JSON prints are the very
// numbers of the plan, and they are as near to the reference as the solver's own cases are held to.

import { beforeAll, expect, test } from 'vitest';
import { type PlanJson, planJson, type WaterJson, waterJson } from '../../schema/plan-json.ts';
import { adjustmentOf, finalOf } from '../../server/plan/adjust.ts';
import type { Figure } from '../../server/plan/figure.ts';
import { mixtureOf } from '../../server/plan/mixture.ts';
import type { SolutionFigures } from '../../server/plan/solution.ts';
import { stateOf } from '../../server/plan/state.ts';
import { planWater } from '../../server/plan/water.ts';
import { all } from '../../server/recipe/use.ts';
import { markedRecipe } from '../recipe.ts';
import { readCases } from '../reference/chemistry-cases.ts';
import { expressible, mgCaCO3PerEq, type ReferenceSolution } from '../reference/chemistry-inputs.ts';
import { batch_L, recipeOf } from '../reference/recipes.ts';
import { runCli } from './run-cli.ts';

const cases = readCases().filter(expressible);
const text = recipeOf(cases);
const { plan, scope } = markedRecipe(text).snapshot();
let printed: PlanJson;
let waters: WaterJson['waters'];

beforeAll(async () => {
  const flags = ['--format', 'json', '--fail-on', 'never'];
  printed = planJson.parse(
    JSON.parse((await runCli(['plan', '-', ...flags], { stdin: text, folder: import.meta.dirname })).out),
  );
  waters = waterJson.parse(
    JSON.parse((await runCli(['water', '-', ...flags], { stdin: text, folder: import.meta.dirname })).out),
  ).waters;
}, 60_000);

test('there are a hundred of them', () => {
  expect(Object.keys(waters).length).toBeGreaterThanOrEqual(100);
  expect(Object.keys(printed.batches).length).toBeGreaterThanOrEqual(80);
});

test('the JSON of every batch carries the figures of the plan', () => {
  for (const [name, batch] of plan.batches) {
    const json = printed.batches[name];
    const { predicted, inAir } = mixtureOf(batch);
    const final = finalOf(batch);
    expect(json?.predicted, name).toEqual(solutionOf(predicted, inAir));
    expect(json?.final, name).toEqual(solutionOf(final.figures, final.inAir));
    const { readings } = stateOf(batch);
    expect(json?.readings.map(one => one.predicted_pH)).toEqual(readings.map(one => numberOf(one.predicted)));
    const adjustment = adjustmentOf(batch);
    const { unit = 'mL' } = adjustment ?? {};
    const times = unit === 'mL' ? 1000 : 1;
    for (const of of ['exact', 'firstStep', 'low', 'high'] as const) {
      const number = adjustment === undefined ? undefined : numberOf(adjustment[of], times);
      expect(json?.adjustment?.[`${of}_${unit}`], `${name} ${of}`).toEqual(number);
    }
  }
});

test('the JSON of every water carries the figures of the plan', () => {
  for (const water of all(scope, 'waters')) {
    const { figures, inAir, carbon } = planWater(water);
    const { alkalinity } = figures;
    expect(waters[water.name], water.name).toMatchObject({
      ...solutionOf(figures, inAir),
      alkalinity_meq_per_L: numberOf(alkalinity),
      inorganicCarbon_mmol_per_L: numberOf(carbon.total),
      CO2_mmol_per_L: numberOf(carbon.CO2),
      HCO3_mmol_per_L: numberOf(carbon.HCO3),
      CO3_mmol_per_L: numberOf(carbon.CO3),
    });
  }
});

test('nothing in it is no number', () => {
  const wrong = [printed, waters].flatMap(json => JSON.stringify(json).match(/NaN|Infinity/gu) ?? []);
  expect(wrong).toEqual([]);
  expect(printed.unknown.every(({ wants }) => wants.length > 0)).toBe(true);
});

const withPH = cases.filter(({ inputs, outputs }) => inputs.kind === 'nutrient' && typeof outputs.pH === 'number');
test.each(withPH)('the printed solution of $id is near the reference', ({ id, outputs }) => {
  const json = printed.batches[id]?.predicted;
  isWithin(json?.pH, outputs.pH, 0.02);
  for (const [key, mineral] of indices) isWithin(json?.saturation[mineral], outputs[key], 0.05);
  const strength = outputs.ionic_strength_mol_kg;
  isWithin(json?.ionicStrength_mol_per_L, strength, 0.02 * (strength ?? 0));
  const [low, high] = outputs.sc25_band_uS_cm ?? [0, Number.POSITIVE_INFINITY];
  expect(json?.EC_mS_per_cm).toBeGreaterThanOrEqual(low / 1000);
  expect(json?.EC_mS_per_cm).toBeLessThanOrEqual(high / 1000);
});

const poured = cases.filter(({ inputs, outputs }) => inputs.kind === 'dose' && outputs.dose_mL_per_L !== undefined);
test.each(poured)('the printed adjustment of $id is near the reference', ({ id, outputs }) => {
  const dose = Number(outputs.dose_mL_per_L) * batch_L;
  // 1.5 %, or a hundredth of a millilitre in a litre where the dose is next to nothing.
  isWithin(printed.batches[id]?.adjustment?.exact_mL, dose, Math.max(0.015 * dose, 0.01 * batch_L));
  isWithin(printed.batches[id]?.final.pH_in_air, outputs.pH_after_degassing_to_air, 0.02);
});

const drawn = cases.filter(({ inputs, outputs }) => inputs.kind === 'water' && outputs.CO2aq_mmol_L !== undefined);
test.each(drawn)('the printed water of $id is near the reference', ({ id, outputs }) => {
  const json = waters[id];
  isWithin(json?.pH, outputs.pH, 0.02);
  const bars = (reference = 0) => Math.max(0.02 * reference, 0.002);
  isWithin(json?.CO2_mmol_per_L, outputs.CO2aq_mmol_L, bars(outputs.CO2aq_mmol_L));
  isWithin(json?.HCO3_mmol_per_L, outputs.HCO3_mmol_L, bars(outputs.HCO3_mmol_L));
  const alkalinity = (outputs.alkalinity_mgL_CaCO3 ?? 0) / mgCaCO3PerEq / 1e-3;
  isWithin(json?.alkalinity_meq_per_L, alkalinity, 0.01);
});

const indices = [
  ['SI_calcite', 'calcite'],
  ['SI_gypsum', 'gypsum'],
  ['SI_brushite', 'brushite'],
  ['SI_struvite', 'struvite'],
] as const satisfies (readonly [keyof ReferenceSolution, string])[];

function isWithin(ours: number | null | undefined, reference: unknown, tolerance: number): void {
  if (typeof reference !== 'number') return;
  expect(Math.abs((ours ?? Number.NaN) - reference)).toBeLessThanOrEqual(tolerance + 1e-9);
}

function solutionOf(figures: SolutionFigures, inAir: SolutionFigures) {
  const { gypsum, brushite, struvite, calcite, hydroxyapatite } = figures.saturation;
  return {
    pH: numberOf(figures.pH),
    pH_in_air: numberOf(inAir.pH),
    EC_mS_per_cm: numberOf(figures.EC),
    ionicStrength_mol_per_L: numberOf(figures.ionicStrength, 1e-3),
    saturation: {
      gypsum: numberOf(gypsum),
      brushite: numberOf(brushite),
      struvite: numberOf(struvite),
      calcite: numberOf(calcite),
      hydroxyapatite: numberOf(hydroxyapatite),
    },
  };
}

/** As the JSON prints it: twelve digits, or null where it is not known. */
function numberOf(figure: Figure, times = 1): number | null {
  return figure.kind === 'known' ? Number((figure.quantity.value * times).toPrecision(12)) : null;
}
