// Runs the reference cases through our solver and compares, quantity by quantity. Used by the tests and by the accuracy
// report, so that both judge alike.

import { readFileSync } from 'node:fs';
import { standInAir } from '../../server/chemistry/air.ts';
import { anchorTo } from '../../server/chemistry/anchor.ts';
import { conductivityAsIs, conductivityAt25 } from '../../server/chemistry/conduct.ts';
import { saturationIndex } from '../../server/chemistry/saturate.ts';
import type { Solution } from '../../server/chemistry/solution.ts';
import { solve } from '../../server/chemistry/solution.ts';
import { solventAt } from '../../server/chemistry/solvent.ts';
import type { Mineral } from '../../server/chemistry/tables/minerals.ts';
import { doseTo, titrationCurve, withDose } from '../../server/chemistry/titrate.ts';
import type { Totals } from '../../server/chemistry/totals.ts';
import { addTotals, blendTotals } from '../../server/chemistry/totals.ts';
import type { ReferenceCase, ReferenceInputs, ReferenceSolution } from './chemistry-inputs.ts';
import { caseSchema, mgCaCO3PerEq, ppmTotals, reagentTotals, saltTotals, waterOf } from './chemistry-inputs.ts';

export interface Comparison {
  readonly id: string;
  readonly topic: string;
  /** What is compared, with its unit. */
  readonly what: string;
  readonly reference: number;
  readonly ours: number;
  readonly difference: number;
  readonly tolerance: number;
  readonly source: string;
  readonly pass: boolean;
}

/** Every case of the file, in order. */
export function readCases(): readonly ReferenceCase[] {
  return readFileSync(new URL('./chemistry-cases.jsonl', import.meta.url), 'utf8')
    .split('\n')
    .filter(line => line !== '')
    .map(line => caseSchema.parse(JSON.parse(line)));
}

export function compareAll(cases: readonly ReferenceCase[] = readCases()): readonly Comparison[] {
  return cases.flatMap(compareCase);
}

export function compareCase(given: ReferenceCase): readonly Comparison[] {
  const list = listFor(given);
  const { inputs, outputs } = given;
  switch (inputs.kind) {
    case 'water':
      compareWater(list, inputs, outputs);
      break;
    case 'blend':
      compareBlend(list, inputs, outputs);
      break;
    case 'standard':
      compareStandard(list, inputs, outputs, given.note);
      break;
    case 'dose':
      compareDose(list, inputs, outputs);
      break;
    case 'titration':
      compareTitration(list, inputs, outputs);
      break;
    case 'ppm':
      list.solution('', { ...solve(startOf(inputs)) }, outputs);
      break;
    case 'stock':
      compareStock(list, inputs, outputs);
      break;
    case 'nutrient': {
      const solution = solve(startOf(inputs));
      list.solution('', solution, outputs);
      if (outputs.open_to_air !== undefined) list.solution('in air: ', standInAir(solution), outputs.open_to_air);
      break;
    }
  }
  return list.rows;
}

type Outputs = ReferenceCase['outputs'];

/** What stands in the vessel before anything is dosed: water, salts, an analysis, and what brought it to its first pH. */
function startOf(inputs: ReferenceInputs): { totals: Totals; temperature_C: number; air: 'open' | 'closed' } {
  const temperature_C = inputs.temp_C;
  const air = inputs.carbonate ?? 'closed';
  let totals: Totals = {};
  if (inputs.water !== undefined) totals = waterOf(inputs.water, temperature_C).solution.totals;
  if (inputs.salts_g_L !== undefined) totals = addTotals(totals, saltTotals(inputs.salts_g_L, 'g'));
  if (inputs.ppm !== undefined) totals = ppmTotals(inputs.ppm);
  if (inputs.measured_pH !== undefined) totals = anchorTo({ totals, temperature_C, air }, inputs.measured_pH);
  if (inputs.adjust_to_pH !== undefined) {
    const reagent = reagentTotals(inputs.adjust_to_pH.with);
    const dose = doseTo({ totals, temperature_C, air }, reagent, inputs.adjust_to_pH.pH, 0.1);
    // A solution already past that pH is left where it is, as the reference does by taking some reagent out.
    const amount = dose.kind === 'dose' ? dose.amount : -negativeDose(totals, temperature_C, air, inputs);
    totals = addTotals(totals, reagent, amount);
  }
  return { totals, temperature_C, air };
}

function negativeDose(totals: Totals, temperature_C: number, air: 'open' | 'closed', inputs: ReferenceInputs): number {
  const { with: name = 'HNO3', pH = 7 } = inputs.adjust_to_pH ?? {};
  // Taking out nitric acid is adding the charge it would have balanced.
  const opposite: Totals = { imbalance: name === 'HNO3' ? 1 : -1 };
  const dose = doseTo({ totals, temperature_C, air }, opposite, pH, 0.1);
  if (dose.kind !== 'dose') throw new Error(`pH ${pH} cannot be reached with ${name}.`);
  return dose.amount;
}

function compareWater(list: List, inputs: ReferenceInputs, outputs: Outputs): void {
  if (inputs.water === undefined) return;
  const { solution } = waterOf(inputs.water, inputs.temp_C);
  list.solution('', solution, outputs);
  const aired = standInAir(solution, inputs.pCO2_atm === undefined ? 'open' : { CO2_atm: inputs.pCO2_atm });
  if (outputs.open_to_air !== undefined) list.solution('in air: ', aired, outputs.open_to_air);
}

function compareBlend(list: List, inputs: ReferenceInputs, outputs: Outputs): void {
  const { water_a, water_b, fraction_a = 0.5, temp_C } = inputs;
  if (water_a === undefined || water_b === undefined) return;
  const totals = blendTotals([
    { totals: waterOf(water_a, temp_C).solution.totals, share: fraction_a },
    { totals: waterOf(water_b, temp_C).solution.totals, share: 1 - fraction_a },
  ]);
  const solution = solve({ totals, temperature_C: temp_C, air: 'closed' });
  list.solution('', solution, outputs);
  if (outputs.open_to_air !== undefined) list.solution('in air: ', standInAir(solution), outputs.open_to_air);
}

/** Buffers and KCl are judged by their certificates; other standards by the reference's own numbers. */
function compareStandard(list: List, inputs: ReferenceInputs, outputs: Outputs, note: string): void {
  const molal = saltTotals(inputs.salts_mol_kg ?? {}, 'mol');
  const certifiedPH = /certified pH\(S\) ([0-9.]+)/.exec(note)?.[1];
  if (certifiedPH !== undefined) {
    const solution = solve({ totals: molal, temperature_C: inputs.temp_C, air: 'closed' });
    list.add('pH, certified', Number(certifiedPH), solution.pH, 0.03);
    return;
  }
  // The certificates count per kilogram of water, conductivity per litre.
  const density = solventAt(inputs.temp_C).density_kg_per_L;
  const solution = solve({ totals: addTotals({}, molal, density), temperature_C: inputs.temp_C, air: 'closed' });
  const certified = /certified ([0-9.]+) uS/.exec(note)?.[1];
  if (certified === undefined) list.conductivity('', solution, outputs);
  else
    list.add(
      'EC as is, µS/cm, certified',
      Number(certified),
      conductivityAsIs(solution) * 1000,
      Number(certified) / 100,
    );
}

function compareDose(list: List, inputs: ReferenceInputs, outputs: Outputs): void {
  const { reagent, target_pH: target } = inputs;
  if (reagent === undefined || target === undefined) return;
  const question = startOf(inputs);
  const adds = reagentTotals(reagent.name);
  if (outputs.start_pH !== undefined) list.add('pH at the start', outputs.start_pH, solve(question).pH, 0.02);
  const dose = doseTo(question, adds, target, 0.1);
  if (dose.kind !== 'dose') throw new Error(`${list.given.id}: ${reagent.name} does not reach ${target}.`);
  const wanted = outputs.dose_mmol_L ?? 0;
  list.add('dose, mmol/L', wanted, dose.amount * 1000, Math.max(wanted * 0.015, 0.005));
  const after = withDose(question, adds, dose.amount, target);
  // pH is the target by construction, so the rest of the solution is what is compared.
  if (outputs.after !== undefined) list.solution('after: ', after, { ...outputs.after, pH: undefined });
  if (outputs.pH_after_degassing_to_air !== undefined)
    list.add('pH in air, after', outputs.pH_after_degassing_to_air, standInAir(after).pH, 0.02);
}

function compareTitration(list: List, inputs: ReferenceInputs, outputs: Outputs): void {
  const { reagent, steps_per_gal: steps = [], steps_unit: unit = '' } = inputs;
  if (reagent === undefined || !Array.isArray(outputs.pH)) return;
  const question = startOf(inputs);
  const perUnit = molesPerStep(list.given, unit);
  const curve = titrationCurve(
    question,
    reagentTotals(reagent.name),
    steps.map(step => step * perUnit),
  );
  if (outputs.start !== undefined) list.solution('start: ', solve(question), outputs.start);
  curve.forEach((point, i) => {
    const reference = Array.isArray(outputs.pH) ? outputs.pH[i] : undefined;
    if (reference === undefined) return;
    // Outside the range where growers work the reference's own databases part by more than a tenth.
    const tolerance = 5.4 <= reference && reference <= 6.8 ? 0.03 : 0.15;
    list.add(`pH at ${steps[i] ?? 0} ${unit}`, reference, point.pH, tolerance);
  });
}

const litresPerGallon = 3.785411784;

function molesPerStep(given: ReferenceCase, unit: string): number {
  const liquid = reagentLiquid(given);
  const perUnit = unit.startsWith('g') ? 1 / liquid.molarMass : (liquid.share * liquid.density) / liquid.molarMass;
  return perUnit / litresPerGallon;
}

function reagentLiquid(given: ReferenceCase): { share: number; density: number; molarMass: number } {
  const { wt_percent = 100, density_g_mL = 1, molar_mass_g_mol = 1 } = given.inputs.reagent ?? {};
  return { share: wt_percent / 100, density: density_g_mL, molarMass: molar_mass_g_mol };
}

/** Beyond an ionic strength of about 0.5 only the sign of an index, and whether a solid forms, can be compared. */
function compareStock(list: List, inputs: ReferenceInputs, outputs: Outputs): void {
  const solution = solve(startOf(inputs));
  const isStrong = (outputs.ionic_strength_mol_kg ?? 0) > 0.5;
  const forms = (['gypsum', 'brushite'] as const).some(mineral => (saturationIndex(solution, mineral) ?? -9) > 0);
  list.add('forms a solid, 1 = yes', outputs.forms_precipitate === true ? 1 : 0, forms ? 1 : 0, 0);
  if (!isStrong) list.solution('', solution, { ...outputs, ionic_strength_mol_kg: undefined });
  else if (outputs.SI_struvite !== undefined)
    list.add(
      'sign of SI struvite',
      Math.sign(outputs.SI_struvite),
      Math.sign(saturationIndex(solution, 'struvite') ?? 0),
      0,
    );
}

const indices: readonly (readonly [keyof ReferenceSolution, Mineral, number])[] = [
  ['SI_calcite', 'calcite', 0.05],
  ['SI_gypsum', 'gypsum', 0.05],
  ['SI_brushite', 'brushite', 0.05],
  ['SI_struvite', 'struvite', 0.05],
  ['SI_hydroxyapatite', 'hydroxyapatite', 0.15],
  ['SI_sio2_am', 'silica', 0.05],
];

/** Collects the comparisons of one case. */
interface List {
  readonly rows: readonly Comparison[];
  readonly given: ReferenceCase;
  add(what: string, reference: number, ours: number, tolerance: number): void;
  /** EC against the band between the reference's two conductivity models. */
  conductivity(where: string, solution: Solution, reference: ReferenceSolution): void;
  /** Everything the reference says of a solved solution. */
  solution(where: string, solution: Solution, reference: ReferenceSolution): void;
}

function listFor(given: ReferenceCase): List {
  const rows: Comparison[] = [];
  const { id, topic, database: source } = given;

  function add(what: string, reference: number, ours: number, tolerance: number): void {
    const difference = ours - reference;
    const pass = Math.abs(difference) <= tolerance + 1e-9;
    rows.push({ id, topic, what, reference, ours, difference, tolerance, source, pass });
  }

  function conductivity(where: string, solution: Solution, reference: ReferenceSolution): void {
    const band = reference.sc25_band_uS_cm;
    if (band === undefined) return;
    const [low, high] = band;
    add(`${where}EC at 25 °C, µS/cm, band`, (low + high) / 2, conductivityAt25(solution) * 1000, (high - low) / 2);
  }

  function compareSolution(where: string, solution: Solution, reference: ReferenceSolution): void {
    if (typeof reference.pH === 'number') add(`${where}pH`, reference.pH, solution.pH, 0.02);
    for (const [key, mineral, tolerance] of indices) {
      const index = reference[key];
      const ours = saturationIndex(solution, mineral);
      if (typeof index === 'number' && ours !== undefined) add(`${where}SI ${mineral}`, index, ours, tolerance);
    }
    const carbon = reference.total_inorganic_C_mmol_L;
    const ours = solution.inorganicCarbon * 1000;
    if (carbon !== undefined && carbon > 1e-6)
      add(`${where}inorganic carbon, mmol/L`, carbon, ours, Math.max(carbon * 0.02, 0.002));
    const strength = reference.ionic_strength_mol_kg;
    if (strength !== undefined)
      add(`${where}ionic strength, mol/kg`, strength, solution.ionicStrength, strength * 0.02);
    const alkalinity = reference.alkalinity_mgL_CaCO3;
    // With citrate the reference counts from Cit3-, we from the form that prevails at pH 4.5, as a titration does.
    const isSameZero = solution.totals.citrate === undefined;
    if (alkalinity !== undefined && isSameZero && carbon !== undefined) {
      const tolerance = Math.max(Math.abs(alkalinity) * 0.02, 0.5);
      add(`${where}alkalinity, mg/L CaCO3`, alkalinity, solution.alkalinity * mgCaCO3PerEq, tolerance);
    }
    conductivity(where, solution, reference);
  }

  return { rows, given, add, conductivity, solution: compareSolution };
}
