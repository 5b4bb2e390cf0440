// What `plan --format json` and `water --format json` print, version 1. It is a contract with other people's programs: keys
// carry their unit, an unknown number is null, and keys may be added but none is taken away or changes its meaning.

import * as z from 'zod/mini';
import { type FindingCode, findings } from './findings.ts';

export const planJsonVersion = 1;

/** A number, or null where it cannot be had; what stands in its way is then listed under `unknown`. */
const figure = z.nullable(z.number());
const perhaps = z.optional(figure);
const text = z.string();
const day = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/));

/** A volume or a mass: one of the two keys is there, by what the feed or adjuster is measured in. */
const amount = z
  .object({ mL: perhaps, g: perhaps })
  .check(z.refine(of => (of.mL === undefined) !== (of.g === undefined), 'an amount is in mL or in g'));

const load = z.object({ volume_L: figure, doses: z.record(text, amount) });

const dose = z.object({
  exact_mL: perhaps,
  exact_g: perhaps,
  /** Null too where no tool measures it. */
  measured_mL: perhaps,
  measured_g: perhaps,
  /** How one load's dose is measured. */
  with: z.array(z.object({ tool: text, times: z.int(), mL: perhaps, g: perhaps })),
  error_percent: figure,
});

/** Saturation indices: above 0 the mineral can fall out; hydroxyapatite nearly always could and does so over weeks only. */
const saturation = z.object({
  gypsum: figure,
  brushite: figure,
  struvite: figure,
  calcite: figure,
  hydroxyapatite: figure,
});

const solution = z.object({
  pH: figure,
  /** The pH after standing open until in balance with air. */
  pH_in_air: figure,
  /** At 25 °C. */
  EC_mS_per_cm: figure,
  ionicStrength_mol_per_L: figure,
  saturation,
});

const adjustment = z.object({
  with: text,
  from_pH: figure,
  to_pH: figure,
  exact_mL: perhaps,
  exact_g: perhaps,
  firstStep_mL: perhaps,
  firstStep_g: perhaps,
  method: z.nullable(z.enum(['composition', 'response', 'learned'])),
  low_mL: perhaps,
  high_mL: perhaps,
  low_g: perhaps,
  high_g: perhaps,
  /** What the first step should bring the pH to. */
  firstStep_pH: figure,
  /** The share of one load, where the batch is mixed in several. */
  perLoad: z.nullable(z.object({ exact_mL: perhaps, exact_g: perhaps, firstStep_mL: perhaps, firstStep_g: perhaps })),
  /** How one load is adjusted at the bench, each step with the pH that it should give. */
  steps: z.array(z.object({ mL: perhaps, g: perhaps, pH: figure })),
  /** What the batch's readings show of the adjuster; null where they show nothing. */
  learned: z.nullable(
    z.object({
      steps: z.int(),
      /** Times the strength that is written; null where none is. */
      factor: z.nullable(z.number()),
      /** The share of acid or base by which it acts, where it is of one only. */
      actsAs_percent: z.nullable(z.number()),
      written_percent: z.nullable(z.number()),
      /** Of strong acid (below zero) or base, where no composition is written. */
      meq_per_mL: perhaps,
      meq_per_g: perhaps,
      /** Relative standard error of the strength. */
      error_percent: z.number(),
    }),
  ),
  /** The titration, from none of it to half as much again as is needed; empty where there is none. */
  curve: z.array(z.object({ mL: perhaps, g: perhaps, pH: z.number() })),
  /** What to mind with the acid or base; never empty. */
  cautions: z.array(text).check(z.minLength(1)),
});

const reading = z.object({ added: z.record(text, amount), measured_pH: figure, predicted_pH: figure });

const batch = z.object({
  volume_L: figure,
  loads: z.array(load),
  doses: z.record(text, dose),
  elements_mg_per_L: z.record(text, figure),
  nitrogen_mg_per_L: z.object({ nitrate: figure, ammonium: figure, urea: figure }),
  predicted: solution,
  measured: z.nullable(z.object({ pH: figure, EC_mS_per_cm: figure })),
  /** Whether labels or the water's report leave ions open, so that the predicted pH is an estimate only; null where there is none. */
  estimated: z.nullable(z.boolean()),
  adjustment: z.nullable(adjustment),
  readings: z.array(reading),
  /** As predicted, after the adjustment. */
  final: solution,
});

const container = z.object({ brimful_L: figure, netCupLine_cm: figure, netCupLine_L: figure });

const planting = z.object({
  fill_cm: figure,
  fill_L: figure,
  /** How many containers it has. */
  containers: figure,
  /** What is said of a planting is said of each of its containers. */
  perContainer: z.literal(true),
  days: z.array(
    z.object({
      date: day,
      stage: z.nullable(text),
      level_cm: figure,
      volume_L: figure,
      airGap_cm: figure,
      EC_mS_per_cm: figure,
    }),
  ),
  /** What the forecast recommends; of `batch` and `water` one is null. */
  topUps: z.array(
    z.object({
      date: day,
      volume_L: figure,
      level_cm: figure,
      with: z.enum(['solution', 'water']),
      batch: z.nullable(text),
      water: z.nullable(text),
      EC_mS_per_cm: figure,
    }),
  ),
  lastsCrop: z.nullable(z.boolean()),
  /** The day on which it would stand too low without top-ups; null where it never does, or where there is no forecast. */
  runsLow: z.nullable(day),
  /** What the plants of one container drink over all stages. */
  lifeUse_L: z.object({ low: figure, high: figure }),
  /** Times the written or published use, by the logged levels; null where they tell nothing. */
  learnedUse: z.nullable(z.number()),
  /** `to` is the day after the last: on it the next stage begins, or the harvest. */
  stages: z.array(z.object({ name: text, from: z.nullable(day), to: z.nullable(day), batch: z.nullable(text) })),
});

const supply = z.object({
  uses_mL: perhaps,
  uses_g: perhaps,
  packages: z.nullable(z.int()),
  /** As `54 EUR`. */
  cost: z.nullable(text),
  kind: z.enum(['feed', 'adjuster']),
  /** The day of mixing on which a first package is used up; null where it lasts, or no day is known. */
  firstPackageEnds: z.nullable(day),
  /** What to mind with an acid or base; empty for feeds. */
  cautions: z.array(text),
});

const position = z.object({ line: z.int(), character: z.int() });
const codes = Object.keys(findings) as [FindingCode, ...FindingCode[]];

const finding = z.object({
  code: z.enum(codes),
  severity: z.enum(['error', 'warning', 'information', 'hint']),
  message: text,
  file: text,
  /** Lines and characters count from 0; characters are UTF-16 units. */
  range: z.object({ start: position, end: position }),
  /** How to put it right. */
  help: text,
});

/** A number that is null above, by its keys from the top, and what is missing for it; where they lead to a list or group, for all in it. */
const key = z.array(z.union([text, z.int()]));
const gap = z.object({
  key,
  wants: z.array(text).check(z.minLength(1)),
  /** Where each of them is or would be written; lines count from 0, and null stands for a file that is not there. */
  places: z.array(z.object({ file: text, path: key, line: z.nullable(z.int()) })),
});

export const planJson = z.object({
  formatVersion: z.literal(planJsonVersion),
  file: text,
  title: z.nullable(text),
  batches: z.record(text, batch),
  containers: z.record(text, container),
  plantings: z.record(text, planting),
  tasks: z.array(
    z.object({
      date: day,
      /** The last day for it, where it may wait. */
      until: z.optional(day),
      what: text,
      about: text,
      kind: text,
      /** How much goes into each container. */
      perContainer_L: z.optional(z.number()),
    }),
  ),
  supplies: z.record(text, supply),
  findings: z.array(finding),
  unknown: z.array(gap),
});

const oneWater = z.object({
  pH: figure,
  alkalinity_meq_per_L: figure,
  inorganicCarbon_mmol_per_L: figure,
  CO2_mmol_per_L: figure,
  HCO3_mmol_per_L: figure,
  CO3_mmol_per_L: figure,
  ionicStrength_mol_per_L: figure,
  EC_mS_per_cm: figure,
  pH_in_air: figure,
  saturation,
  /** How far the ions of the report are from balance: above zero anions are missing, below zero cations. Null where it names one kind only. */
  ionGap: z.nullable(z.object({ meq_per_L: figure, percent: figure, isLarge: z.boolean() })),
  /** Whether the alkalinity is only the difference of the stated ions, and so uncertain. */
  isByDifference: z.boolean(),
  /** What it brings by itself, by element. */
  elements_mg_per_L: z.record(text, figure),
  nitrogen_mg_per_L: z.object({ nitrate: figure, ammonium: figure, urea: figure }),
  /** What is missing for each number that is null above, by its key. */
  unknown: z.record(text, z.array(text)),
});

export const waterJson = z.object({
  formatVersion: z.literal(planJsonVersion),
  file: text,
  waters: z.record(text, oneWater),
});

export type PlanJson = z.infer<typeof planJson>;
export type WaterJson = z.infer<typeof waterJson>;
