// What `plan --format json` and `water --format json` print, version 1. It is a contract with other people's programs: keys
// carry their unit, an unknown number is null, and keys may be added but none is taken away or changes its meaning.

import * as z from 'zod/mini';
import { findingJson } from './finding-json.ts';
import { day, figure, said, text } from './json-words.ts';
import { gapJson, supplyJson } from './supplies-json.ts';

const perhaps = () => z.optional(figure());

/** A volume or a mass: one of the two keys is there, by what the feed or adjuster is measured in. */
const amount = z
  .object({ mL: perhaps(), g: perhaps() })
  .check(z.refine(of => (of.mL === undefined) !== (of.g === undefined), 'an amount is in mL or in g'));

const load = z.object({ volume_L: figure(), doses: z.record(text, amount) });

const dose = z.object({
  exact_mL: perhaps(),
  exact_g: perhaps(),
  measured_mL: said(perhaps(), 'null too where no tool measures it'),
  measured_g: perhaps(),
  with: said(
    z.array(z.object({ tool: text, times: z.int(), mL: perhaps(), g: perhaps() })),
    'how one load’s dose is measured',
  ),
  error_percent: figure(),
});

const saturation = said(
  z.object({
    gypsum: figure(),
    brushite: figure(),
    struvite: figure(),
    calcite: figure(),
    hydroxyapatite: figure(),
  }),
  'saturation indices: above 0 the mineral can fall out; hydroxyapatite nearly always could and does so over weeks only',
);

const solution = {
  pH: figure(),
  pH_in_air: said(figure(), 'the pH after standing open until in balance with air'),
  EC_mS_per_cm: said(figure(), 'at 25 °C'),
  ionicStrength_mol_per_L: figure(),
  saturation,
};

const adjustment = z.object({
  with: text,
  from_pH: figure(),
  to_pH: figure(),
  exact_mL: perhaps(),
  exact_g: perhaps(),
  firstStep_mL: perhaps(),
  firstStep_g: perhaps(),
  method: z.nullable(z.enum(['composition', 'response', 'learned'])),
  low_mL: perhaps(),
  high_mL: perhaps(),
  low_g: perhaps(),
  high_g: perhaps(),
  firstStep_pH: said(figure(), 'what the first step should bring the pH to'),
  perLoad: said(
    z.nullable(z.object({ exact_mL: perhaps(), exact_g: perhaps(), firstStep_mL: perhaps(), firstStep_g: perhaps() })),
    'the share of one load, where the batch is mixed in several',
  ),
  steps: said(
    z.array(z.object({ mL: perhaps(), g: perhaps(), pH: figure() })),
    'how one load is adjusted at the bench, each step with the pH that it should give',
  ),
  /** What the batch's readings show of the adjuster; null where they show nothing. */
  learned: z.nullable(
    z.object({
      steps: z.int(),
      factor: said(z.nullable(z.number()), 'times the strength that is written; null where none is'),
      actsAs_percent: said(
        z.nullable(z.number()),
        'the share of acid or base by which it acts, where it is of one only',
      ),
      written_percent: z.nullable(z.number()),
      meq_per_mL: said(perhaps(), 'of strong acid (below zero) or base, where no composition is written'),
      meq_per_g: perhaps(),
      error_percent: said(z.number(), 'relative standard error of the strength'),
    }),
  ),
  curve: said(
    z.array(z.object({ mL: perhaps(), g: perhaps(), pH: z.number() })),
    'the titration, from none of it to half as much again as is needed; empty where there is none',
  ),
  cautions: said(z.array(text).check(z.minLength(1)), 'what to mind with the acid or base; never empty'),
});

const reading = z.object({ added: z.record(text, amount), measured_pH: figure(), predicted_pH: figure() });

const batch = z.object({
  volume_L: figure(),
  loads: z.array(load),
  doses: z.record(text, dose),
  elements_mg_per_L: z.record(text, figure()),
  nitrogen_mg_per_L: z.object({ nitrate: figure(), ammonium: figure(), urea: figure() }),
  predicted: said(z.object(solution), 'as mixed'),
  measured: z.nullable(z.object({ pH: figure(), EC_mS_per_cm: figure() })),
  estimated: said(
    z.nullable(z.boolean()),
    'whether labels or the water’s report leave ions open, so that the predicted pH is an estimate only; null where there is none',
  ),
  adjustment: z.nullable(adjustment),
  readings: z.array(reading),
  final: said(z.object(solution), 'as predicted, after readings and adjustment'),
});

const container = z.object({ brimful_L: figure(), netCupLine_cm: figure(), netCupLine_L: figure() });

const planting = z.object({
  fill_cm: figure(),
  fill_L: figure(),
  containers: said(figure(), 'how many containers it has'),
  perContainer: said(z.literal(true), 'what is said of a planting is said of each of its containers'),
  days: z.array(
    z.object({
      date: day(),
      stage: z.nullable(text),
      level_cm: figure(),
      volume_L: figure(),
      airGap_cm: figure(),
      EC_mS_per_cm: figure(),
    }),
  ),
  topUps: said(
    z.array(
      z.object({
        date: day(),
        volume_L: figure(),
        level_cm: figure(),
        with: z.enum(['solution', 'water']),
        batch: z.nullable(text),
        water: z.nullable(text),
        EC_mS_per_cm: figure(),
      }),
    ),
    'what the forecast recommends; of `batch` and `water` one is null',
  ),
  lastsCrop: z.nullable(z.boolean()),
  runsLow: said(
    z.nullable(day()),
    'the day on which it would stand too low without top-ups; null where it never does, or where there is no forecast',
  ),
  lifeUse_L: said(
    z.object({ low: figure(), high: figure() }),
    'what the plants of one container drink over all stages',
  ),
  learnedUse: said(
    z.nullable(z.number()),
    'times the written or published use, by the logged levels; null where they tell nothing',
  ),
  stages: said(
    z.array(z.object({ name: text, from: z.nullable(day()), to: z.nullable(day()), batch: z.nullable(text) })),
    '`to` is the day after the last: on it the next stage begins, or the harvest',
  ),
});

export const planJson = z.object({
  formatVersion: z.literal(1),
  file: text,
  title: z.nullable(text),
  batches: z.record(text, batch),
  containers: z.record(text, container),
  plantings: z.record(text, planting),
  tasks: z.array(
    z.object({
      date: day(),
      until: said(z.optional(day()), 'the last day for it, where it may wait'),
      what: text,
      about: text,
      kind: text,
      perContainer_L: said(z.optional(z.number()), 'how much goes into each container'),
    }),
  ),
  supplies: z.record(text, supplyJson),
  findings: z.array(findingJson),
  unknown: z.array(gapJson),
});

const oneWater = z.object({
  pH: figure(),
  alkalinity_meq_per_L: figure(),
  inorganicCarbon_mmol_per_L: figure(),
  CO2_mmol_per_L: figure(),
  HCO3_mmol_per_L: figure(),
  CO3_mmol_per_L: figure(),
  ionicStrength_mol_per_L: figure(),
  EC_mS_per_cm: figure(),
  pH_in_air: figure(),
  saturation,
  ionGap: said(
    z.nullable(z.object({ meq_per_L: figure(), percent: figure(), isLarge: z.boolean() })),
    'how far the ions of the report are from balance: above zero anions are missing, below zero cations. Null where it names one kind only',
  ),
  isByDifference: said(
    z.boolean(),
    'whether the alkalinity is only the difference of the stated ions, and so uncertain',
  ),
  elements_mg_per_L: said(z.record(text, figure()), 'what it brings by itself, by element'),
  nitrogen_mg_per_L: z.object({ nitrate: figure(), ammonium: figure(), urea: figure() }),
  unknown: said(z.record(text, z.array(text)), 'what is missing for each number that is null above, by its key'),
});

export const waterJson = z.object({
  formatVersion: z.literal(1),
  file: text,
  waters: z.record(text, oneWater),
});

export type PlanJson = z.infer<typeof planJson>;
export type WaterJson = z.infer<typeof waterJson>;
