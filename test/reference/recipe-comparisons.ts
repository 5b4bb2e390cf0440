// Compares what a plan says of the reference cases, written as a recipe, with the reference. The bars are those of the solver's own
// cases.

import { adjustmentOf, finalOf } from '../../server/plan/adjust.ts';
import type { BatchPlan } from '../../server/plan/batch.ts';
import { type Figure, numberOf } from '../../server/plan/figure.ts';
import { gathered } from '../../server/plan/gather.ts';
import { mixtureOf } from '../../server/plan/mixture.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { ShownMineral, SolutionFigures } from '../../server/plan/solution.ts';
import { stateOf } from '../../server/plan/state.ts';
import { planWater } from '../../server/plan/water.ts';
import type { Comparison } from './chemistry-cases.ts';
import { expressible, mgCaCO3PerEq, type ReferenceCase, type ReferenceSolution } from './chemistry-inputs.ts';
import { batch_L } from './recipes.ts';

/** Every comparison that a plan of `recipeOf(cases)` allows. */
export function compareRecipe(cases: readonly ReferenceCase[], plan: Plan): readonly Comparison[] {
  return cases.filter(expressible).flatMap(given => compareOne(given, plan));
}

function compareOne(given: ReferenceCase, plan: Plan): readonly Comparison[] {
  const list = listOf(given);
  const { inputs, outputs, id, note } = given;
  if (inputs.kind === 'water') {
    compareWater(list, given, plan);
    return list.rows;
  }
  const batch = plan.batches.get(id);
  if (batch === undefined) throw new Error(`no batch ${id}`);
  const { predicted, inAir } = mixtureOf(batch);
  switch (inputs.kind) {
    case 'standard':
      compareStandard(list, note, predicted, outputs);
      break;
    case 'nutrient':
    case 'ppm':
      list.solution('', predicted, outputs);
      if (outputs.open_to_air !== undefined) list.solution('in air: ', inAir, outputs.open_to_air);
      break;
    case 'dose':
      compareDose(list, given, batch);
      break;
    case 'titration':
      compareTitration(list, given, batch);
      break;
    case 'stock':
      compareStock(list, given, batch);
      break;
    case 'blend':
      break;
  }
  return list.rows;
}

/** Buffers are judged by their pH, conductivity standards at 25 °C by theirs; the rain they are made with adds about 1 µS/cm. */
function compareStandard(list: List, note: string, ours: SolutionFigures, outputs: ReferenceCase['outputs']): void {
  const pH = /certified pH\(S\) ([0-9.]+)/.exec(note)?.[1];
  const certified = /certified ([0-9.]+) uS/.exec(note)?.[1];
  if (pH !== undefined) list.add('pH, certified', Number(pH), ours.pH, 0.03);
  else if (certified === undefined) list.solution('', ours, { sc25_band_uS_cm: outputs.sc25_band_uS_cm });
  else list.add('EC, µS/cm, certified', Number(certified), ours.EC, Number(certified) / 100, 1000);
}

function compareWater(list: List, { id, inputs, outputs }: ReferenceCase, plan: Plan): void {
  const water = gathered(plan.scope, 'waters', id);
  if (water === undefined) throw new Error(`no water ${id}`);
  const { figures, inAir, carbon } = planWater(water);
  list.solution('', figures, outputs);
  list.add('alkalinity, meq/L', (outputs.alkalinity_mgL_CaCO3 ?? 0) / mgCaCO3PerEq / 1e-3, figures.alkalinity, 0.01);
  const dissolved = outputs.total_inorganic_C_mmol_L ?? 0;
  list.add('inorganic carbon, mmol/L', dissolved, carbon.total, Math.max(dissolved * 0.02, 0.002));
  for (const [what, reference, ours] of [
    ['CO2', outputs.CO2aq_mmol_L, carbon.CO2],
    ['HCO3', outputs.HCO3_mmol_L, carbon.HCO3],
    ['CO3', outputs.CO3_mmol_L, carbon.CO3],
  ] as const) {
    if (reference !== undefined) list.add(`${what}, mmol/L`, reference, ours, Math.max(reference * 0.02, 0.002));
  }
  // Air of a room richer in CO2 is not in the format.
  if (outputs.open_to_air !== undefined && inputs.pCO2_atm === undefined)
    list.solution('in air: ', inAir, outputs.open_to_air);
}

function compareDose(list: List, { inputs, outputs }: ReferenceCase, batch: BatchPlan): void {
  const { predicted } = mixtureOf(batch);
  const start = inputs.adjust_to_pH === undefined ? predicted.pH : stateOf(batch).pH;
  if (outputs.start_pH !== undefined) list.add('pH at the start', outputs.start_pH, start, 0.02);
  const adjustment = adjustmentOf(batch);
  const exact = adjustment?.exact ?? none;
  const isLiquid = inputs.reagent?.density_g_mL !== undefined;
  const perLitre = isLiquid ? outputs.dose_mL_per_L : outputs.dose_g_per_L;
  const { molar_mass_g_mol = 1, wt_percent = 100, density_g_mL = 1 } = inputs.reagent ?? {};
  const mmolPerUnit = (1000 * density_g_mL * (wt_percent / 100)) / molar_mass_g_mol;
  const unit = isLiquid ? 'mL' : 'g';
  const tolerance = Math.max((perLitre ?? 0) * 0.015, 0.005 / mmolPerUnit) * batch_L;
  list.add(`dose for ${batch_L} L, ${unit}`, (perLitre ?? 0) * batch_L, exact, tolerance, isLiquid ? 1000 : 1);
  const { figures, inAir } = finalOf(batch);
  if (inputs.target_pH !== undefined) list.add('pH, after', inputs.target_pH, figures.pH, 0.001);
  if (outputs.after !== undefined) list.solution('after: ', figures, { ...outputs.after, pH: undefined });
  if (outputs.pH_after_degassing_to_air !== undefined)
    list.add('pH in air, after', outputs.pH_after_degassing_to_air, inAir.pH, 0.02);
}

function compareTitration(list: List, { inputs, outputs }: ReferenceCase, batch: BatchPlan): void {
  if (!Array.isArray(outputs.pH)) return;
  if (outputs.start !== undefined && inputs.adjust_to_pH === undefined)
    list.solution('start: ', mixtureOf(batch).predicted, outputs.start);
  const readings = stateOf(batch).readings.filter(({ reading }) => reading?.add !== undefined);
  const steps = (inputs.steps_per_gal ?? []).map((step, index) => ({ step, pH: outputs.pH, index }));
  for (const [at, { step, pH, index }] of steps.filter(({ step: size }) => size > 0).entries()) {
    const reference = Array.isArray(pH) ? pH[index] : undefined;
    if (reference === undefined) continue;
    const tolerance = 5.4 <= reference && reference <= 6.8 ? 0.03 : 0.15;
    list.add(`pH at ${step} ${inputs.steps_unit ?? ''}`, reference, readings[at]?.predicted ?? none, tolerance);
  }
}

/** Beyond an ionic strength of about 0.5 only whether a solid forms can be compared. */
function compareStock(list: List, { outputs }: ReferenceCase, batch: BatchPlan): void {
  const { predicted } = mixtureOf(batch);
  const index = (mineral: ShownMineral): number => numberOf(predicted.saturation[mineral]) ?? -9;
  const forms = index('gypsum') > 0 || index('brushite') > 0 ? 1 : 0;
  list.add('forms a solid, 1 = yes', outputs.forms_precipitate === true ? 1 : 0, forms, 0);
  if ((outputs.ionic_strength_mol_kg ?? 0) <= 0.5)
    list.solution('', predicted, { ...outputs, ionic_strength_mol_kg: undefined });
}

const none: Figure = { kind: 'unknown', wants: [] };

const indices: readonly (readonly [keyof ReferenceSolution, ShownMineral, number])[] = [
  ['SI_calcite', 'calcite', 0.05],
  ['SI_gypsum', 'gypsum', 0.05],
  ['SI_brushite', 'brushite', 0.05],
  ['SI_struvite', 'struvite', 0.05],
  ['SI_hydroxyapatite', 'hydroxyapatite', 0.15],
];

interface List {
  readonly rows: readonly Comparison[];
  add(what: string, reference: number, ours: Figure | number, tolerance: number, times?: number): void;
  solution(where: string, ours: SolutionFigures, reference: ReferenceSolution): void;
}

function listOf({ id, topic, database: source }: ReferenceCase): List {
  const rows: Comparison[] = [];
  const list: List = {
    rows,
    add(what, reference, figure, tolerance, times = 1) {
      const ours = (typeof figure === 'number' ? figure : (numberOf(figure) ?? Number.NaN)) * times;
      const difference = ours - reference;
      const pass = Math.abs(difference) <= tolerance + 1e-9;
      rows.push({ id, topic, what, reference, ours, difference, tolerance, source, pass });
    },
    solution(where, ours, reference) {
      if (typeof reference.pH === 'number') list.add(`${where}pH`, reference.pH, ours.pH, 0.02);
      for (const [key, mineral, tolerance] of indices) {
        const index = reference[key];
        if (typeof index === 'number') list.add(`${where}SI ${mineral}`, index, ours.saturation[mineral], tolerance);
      }
      const strength = reference.ionic_strength_mol_kg;
      if (strength !== undefined)
        list.add(`${where}ionic strength, mol/L`, strength, ours.ionicStrength, strength * 0.02, 1e-3);
      const band = reference.sc25_band_uS_cm;
      if (band === undefined) return;
      const [low, high] = band;
      list.add(`${where}EC, µS/cm, band`, (low + high) / 2, ours.EC, (high - low) / 2, 1000);
    },
  };
  return list;
}
