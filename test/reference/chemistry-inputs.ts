// The shape of the reference cases in chemistry-cases.jsonl, and how their inputs become totals for our solver.

import * as z from 'zod/mini';
import { readCompound } from '../../server/chemistry/compound.ts';
import { dissolve } from '../../server/chemistry/salt.ts';
import { elements } from '../../server/chemistry/tables/elements.ts';
import type { Totals } from '../../server/chemistry/totals.ts';
import { addTotals } from '../../server/chemistry/totals.ts';
import type { Water } from '../../server/chemistry/water.ts';
import { waterFrom } from '../../server/chemistry/water.ts';

const amounts = z.record(z.string(), z.number());

const waterSchema = z.object({
  air_equilibrated: z.optional(z.boolean()),
  co2_free: z.optional(z.boolean()),
  alkalinity_mgL_CaCO3: z.number(),
  pH: z.optional(z.number()),
  Ca_mgL: z.optional(z.number()),
  Mg_mgL: z.optional(z.number()),
  K_mgL: z.optional(z.number()),
  Na_mgL: z.optional(z.number()),
  Cl_mgL: z.optional(z.number()),
  SO4_mgL: z.optional(z.number()),
  NO3_N_mgL: z.optional(z.number()),
});

const reagentSchema = z.object({
  name: z.string(),
  molar_mass_g_mol: z.number(),
  wt_percent: z.optional(z.number()),
  density_g_mL: z.optional(z.number()),
});
const carbonate = z.enum(['open', 'closed']);

const inputsSchema = z.object({
  kind: z.enum(['water', 'nutrient', 'ppm', 'dose', 'titration', 'standard', 'blend', 'stock']),
  temp_C: z.number(),
  water: z.optional(waterSchema),
  water_a: z.optional(waterSchema),
  water_b: z.optional(waterSchema),
  fraction_a: z.optional(z.number()),
  pCO2_atm: z.optional(z.number()),
  salts_g_L: z.optional(amounts),
  salts_mol_kg: z.optional(amounts),
  ppm: z.optional(amounts),
  measured_pH: z.optional(z.number()),
  carbonate: z.optional(carbonate),
  adjust_to_pH: z.optional(z.object({ pH: z.number(), with: z.string() })),
  reagent: z.optional(reagentSchema),
  target_pH: z.optional(z.number()),
  steps_per_gal: z.optional(z.array(z.number())),
  steps_unit: z.optional(z.string()),
});

const solved = z.object({
  pH: z.optional(z.union([z.number(), z.array(z.number())])),
  ionic_strength_mol_kg: z.optional(z.number()),
  alkalinity_mgL_CaCO3: z.optional(z.number()),
  total_inorganic_C_mmol_L: z.optional(z.number()),
  SI_calcite: z.optional(z.number()),
  SI_gypsum: z.optional(z.number()),
  SI_brushite: z.optional(z.number()),
  SI_struvite: z.optional(z.number()),
  SI_hydroxyapatite: z.optional(z.number()),
  SI_sio2_am: z.optional(z.number()),
  sc25_band_uS_cm: z.optional(z.tuple([z.number(), z.number()])),
  sc25_uS_cm: z.optional(z.number()),
  CO2aq_mmol_L: z.optional(z.number()),
  HCO3_mmol_L: z.optional(z.number()),
  CO3_mmol_L: z.optional(z.number()),
  species_mmol_L: z.optional(amounts),
});

const outputsSchema = z.extend(solved, {
  start_pH: z.optional(z.number()),
  start: z.optional(solved),
  after: z.optional(solved),
  dose_mmol_L: z.optional(z.number()),
  dose_mL_per_L: z.optional(z.number()),
  dose_g_per_L: z.optional(z.number()),
  pH_after_degassing_to_air: z.optional(z.number()),
  open_to_air: z.optional(solved),
  forms_precipitate: z.optional(z.boolean()),
});

export const caseSchema = z.object({
  id: z.string(),
  topic: z.string(),
  inputs: inputsSchema,
  outputs: outputsSchema,
  note: z.string(),
  database: z.string(),
});

export type ReferenceCase = z.infer<typeof caseSchema>;
export type ReferenceInputs = z.infer<typeof inputsSchema>;
export type ReferenceSolution = z.infer<typeof solved>;
export type ReferenceWater = z.infer<typeof waterSchema>;

/** Whether a recipe can say it: two blended waters and conductivity off 25 °C are not in the format. */
export function expressible({ inputs, note }: ReferenceCase): boolean {
  if (inputs.kind === 'blend') return false;
  return inputs.kind !== 'standard' || note.includes('certified pH') || inputs.temp_C === 25;
}

/** Alkalinity of one equivalent, mg of CaCO3. */
export const mgCaCO3PerEq = 50043.5;

export function waterOf(water: ReferenceWater, temperature_C: number): Water {
  if (water.co2_free === true)
    return expectWater({ kind: 'pH-in-air', pH: 7, air: { CO2_atm: 1e-30 } }, {}, temperature_C);
  const eq = water.alkalinity_mgL_CaCO3 / mgCaCO3PerEq;
  if (water.air_equilibrated === true)
    return expectWater({ kind: 'alkalinity-in-air', alkalinity: eq }, {}, temperature_C);
  const ions: Totals = {
    Ca: mol(water.Ca_mgL, elements.Ca.weight),
    Mg: mol(water.Mg_mgL, elements.Mg.weight),
    K: mol(water.K_mgL, elements.K.weight),
    Na: mol(water.Na_mgL, elements.Na.weight),
    Cl: mol(water.Cl_mgL, elements.Cl.weight),
    SO4: mol(water.SO4_mgL, elements.S.weight + 4 * elements.O.weight),
    NO3: mol(water.NO3_N_mgL, elements.N.weight),
  };
  return expectWater({ kind: 'pH-and-alkalinity', pH: water.pH ?? 7, alkalinity: eq }, ions, temperature_C);
}

function expectWater(report: Parameters<typeof waterFrom>[0], ions: Totals, temperature_C: number): Water {
  const water = waterFrom(report, ions, temperature_C);
  if (water.kind !== 'water') throw new Error('The reference holds a water we call impossible.');
  return water;
}

function mol(mg: number | undefined, weight: number): number {
  return (mg ?? 0) / 1000 / weight;
}

/** Totals of weighed salts, g per litre (or mol, when `unit` is mol). */
export function saltTotals(salts: Readonly<Record<string, number>>, unit: 'g' | 'mol'): Totals {
  return Object.entries(salts).reduce<Totals>((sum, [name, amount]) => {
    const compound = readCompound(name === 'KH phthalate' ? 'KHC8H4O4' : name);
    if (compound.kind !== 'compound') throw new Error(`${name} does not parse.`);
    return addTotals(sum, dissolve(compound).totals, unit === 'g' ? amount / compound.molarMass_g_per_mol : amount);
  }, {});
}

/** Totals of a list in mg/L of the element. */
export function ppmTotals(ppm: Readonly<Record<string, number>>): Totals {
  return {
    NO3: mol(ppm.N_NO3, elements.N.weight),
    NH4: mol(ppm.N_NH4, elements.N.weight),
    PO4: mol(ppm.P, elements.P.weight),
    K: mol(ppm.K, elements.K.weight),
    Ca: mol(ppm.Ca, elements.Ca.weight),
    Mg: mol(ppm.Mg, elements.Mg.weight),
    Na: mol(ppm.Na, elements.Na.weight),
    Cl: mol(ppm.Cl, elements.Cl.weight),
    SO4: mol(ppm.S, elements.S.weight),
    B: mol(ppm.B, elements.B.weight),
    Si: mol(ppm.Si, elements.Si.weight),
  };
}

/** One mole of a reagent, by its formula or by "citric acid". */
export function reagentTotals(name: string): Totals {
  return saltTotals({ [name === 'citric acid' ? 'C6H8O7' : name]: 1 }, 'mol');
}
