// The reference cases written as a grower would write them: one recipe with a water and a batch for each, so that the whole way
// from text to figure is compared and not the solver alone.

import { readCompound } from '../../server/chemistry/compound.ts';
import { solventAt } from '../../server/chemistry/solvent.ts';
import { expressible, type ReferenceCase, type ReferenceInputs, type ReferenceWater } from './chemistry-inputs.ts';

/** Every case that the format can express, as one recipe. */
export function recipeOf(cases: readonly ReferenceCase[]): string {
  const parts = cases.filter(expressible).map(partsOf);
  const section = (name: string, lines: readonly string[]): string =>
    lines.length === 0 ? '' : `${name}:\n${lines.map(line => `  ${line}\n`).join('')}`;
  return [
    'recipe: 1\ntitle: The reference cases\n',
    section(
      'waters',
      parts.flatMap(part => part.water),
    ),
    section('feeds', [...new Set(parts.flatMap(part => part.feeds))]),
    section('adjusters', [...new Set(parts.flatMap(part => part.adjusters))]),
    section(
      'batches',
      parts.flatMap(part => part.batch),
    ),
  ].join('');
}

interface Parts {
  readonly water: readonly string[];
  readonly feeds: readonly string[];
  readonly adjusters: readonly string[];
  readonly batch: readonly string[];
}

/** Batches of doses hold this much, so that a dose has digits enough; titrations are of one gallon, as their steps are. */
export const batch_L = 100;

function partsOf(given: ReferenceCase): Parts {
  const { id, inputs } = given;
  const water = waterText(inputs);
  const feeds = saltsOf(inputs);
  const adjuster = adjusterOf(inputs);
  const lines = [
    `water: ${id}`,
    `volume: ${inputs.kind === 'titration' ? '1 gal' : `${batch_L} L`}`,
    `temperature: ${inputs.temp_C} °C`,
    ...(inputs.carbonate === undefined ? [] : [`air: ${inputs.carbonate}`]),
    ...(feeds.length === 0 ? [] : [`feed: { ${feeds.map(feed => `${feed.name}: ${feed.dose}`).join(', ')} }`]),
    ...(adjuster === undefined || inputs.target_pH === undefined
      ? []
      : [`adjust: { with: ${adjuster.name}, to: ${inputs.target_pH} }`]),
    ...readingsOf(inputs, adjuster?.name),
  ];
  return {
    water: [`${id}: ${water}`],
    feeds: feeds.map(feed => `${feed.name}: { formula: "${feed.formula}" }`),
    adjusters: adjuster === undefined ? [] : [`${adjuster.name}: ${adjuster.text}`],
    batch: inputs.kind === 'water' ? [] : [`${id}:`, ...lines.map(line => `  ${line}`)],
  };
}

function waterText(inputs: ReferenceInputs): string {
  const { water, ppm, measured_pH, temp_C } = inputs;
  const temperature = `temperature: ${temp_C} °C`;
  if (ppm !== undefined) {
    const ions = Object.entries(ppm).map(([key, mg]) => `${ionNames[key] ?? key}: ${mg} mg/L`);
    return `{ pH: ${measured_pH}, air: open, ${temperature}, ions: { ${ions.join(', ')} } }`;
  }
  if (water === undefined || water.pH === undefined) return `{ alkalinity: 0 mg/L CaCO3, ${temperature} }`;
  return `{ pH: ${water.pH}, alkalinity: ${water.alkalinity_mgL_CaCO3} mg/L CaCO3, ${temperature}, ions: { ${ionsOf(water)} } }`;
}

const ionNames: Readonly<Record<string, string>> = { N_NO3: 'NO3-N', N_NH4: 'NH4-N', P: 'PO4-P', S: 'SO4-S' };

function ionsOf(water: ReferenceWater): string {
  return (
    [
      ['Ca', water.Ca_mgL],
      ['Mg', water.Mg_mgL],
      ['K', water.K_mgL],
      ['Na', water.Na_mgL],
      ['Cl', water.Cl_mgL],
      ['SO4', water.SO4_mgL],
      ['NO3-N', water.NO3_N_mgL],
    ] as const
  )
    .flatMap(([key, mg]) => (mg === undefined ? [] : [`${key}: ${mg} mg/L`]))
    .join(', ');
}

interface SaltText {
  readonly name: string;
  readonly formula: string;
  readonly dose: string;
}

/** The certificates of the standards count per kilogram of water. */
function saltsOf(inputs: ReferenceInputs): readonly SaltText[] {
  const weighed = Object.entries(inputs.salts_g_L ?? {}).map(([formula, grams]) => salt(formula, `${grams} g/L`));
  const molal = Object.entries(inputs.salts_mol_kg ?? {}).map(([name, mol]) => {
    const formula = name === 'KH phthalate' ? 'KHC8H4O4' : name;
    return salt(formula, `${mol * molarMassOf(formula) * solventAt(inputs.temp_C).density_kg_per_L} g/L`);
  });
  return [...weighed, ...molal];
}

function salt(formula: string, dose: string): SaltText {
  return { name: `salt-${formula.toLowerCase().replace(/[^a-z0-9]+/gu, '-')}`.replace(/-$/u, ''), formula, dose };
}

function molarMassOf(formula: string): number {
  const compound = readCompound(formula);
  if (compound.kind !== 'compound') throw new Error(`${formula} does not parse`);
  return compound.molarMass_g_per_mol;
}

interface AdjusterText {
  readonly name: string;
  readonly text: string;
}

const substances: Readonly<Record<string, string>> = {
  H3PO4: 'acid: { phosphoric',
  HNO3: 'acid: { nitric',
  H2SO4: 'acid: { sulfuric',
  HCl: 'acid: { hydrochloric',
  'citric acid': 'acid: { citric',
  KOH: 'base: { KOH',
  NaOH: 'base: { NaOH',
  K2CO3: 'base: { K2CO3',
  KHCO3: 'base: { KHCO3',
  NaHCO3: 'base: { NaHCO3',
  K2SiO3: 'base: { K2SiO3',
};

function adjusterOf({ reagent }: ReferenceInputs): AdjusterText | undefined {
  if (reagent === undefined) return undefined;
  const { name, wt_percent = 100, density_g_mL } = reagent;
  const substance = substances[name];
  if (substance === undefined) throw new Error(`no adjuster is made of ${name}`);
  const density = density_g_mL === undefined ? '' : `, density: ${density_g_mL} kg/L`;
  const called = `${name.toLowerCase().replaceAll(' ', '-')}-${String(wt_percent).replace('.', '-')}`;
  return { name: called, text: `{ ${substance}: ${wt_percent} % }${density} }` };
}

/** What was brought to a pH beforehand was measured there; the steps of a titration follow one another. */
function readingsOf(inputs: ReferenceInputs, adjuster: string | undefined): readonly string[] {
  const { adjust_to_pH: before, steps_per_gal: steps = [], steps_unit = '' } = inputs;
  const unit = steps_unit.startsWith('g') ? 'g' : 'mL';
  const readings = before === undefined ? [] : [`- { pH: ${before.pH} }`];
  steps.forEach((step, index) => {
    const more = step - (steps[index - 1] ?? 0);
    if (more > 0) readings.push(`- { add: { ${adjuster}: ${Number(more.toFixed(6))} ${unit} } }`);
  });
  return readings.length === 0 ? [] : ['readings:', ...readings.map(line => `  ${line}`)];
}
