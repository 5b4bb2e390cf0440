// What crops drink, as published: used only where a stage gives no use rate, and to tell when a container is too small for a crop.
// A row per crop, each with its source.

import type { SourceKey } from '../../schema/sources.ts';

export interface CropRow {
  /** Words in a planting's `crop` that mean this row. */
  readonly named: readonly string[];
  /** Litres a plant drinks from transplanting to the end of its harvest: least and most that is published. */
  readonly life_L: readonly [number, number];
  /** Litres it drinks where nothing tells more. */
  readonly usual_L: number;
  /** How the row comes by its litres. */
  readonly because: string;
  /** The daily light at which they were measured, mol/m2/d. */
  readonly light: number;
  /** The shortest such life, in days: a planting that ends sooner is harvested before it is grown. */
  readonly grown_d: number;
  /** The power of its age that daily use follows (common practice: a rosette doubles in every way, a vine gets longer). */
  readonly growth: number;
  /** Days from sowing to the beginning and end of harvest, where they are published. */
  readonly harvest_d?: readonly [number, number];
  readonly source: SourceKey;
}

export const crops = {
  lettuce: {
    named: ['lettuce', 'lettuces', 'romaine', 'butterhead', 'batavia'],
    life_L: [3, 6],
    // Heads of 150 to 250 g at 11 to 20 L/kg drink 1.65 to 5 L; what is filled counts what is left over, so it is more.
    usual_L: 3.1,
    because: '3 to 6 L are given to a plant; a head of 200 g at 15.5 L/kg, between 11 and 20, drinks 3.1 L',
    light: 14,
    grown_d: 28,
    growth: 2,
    harvest_d: [42, 49],
    source: 'kratky-2010',
  },
  tomato: {
    named: ['tomato', 'tomatoes'],
    life_L: [41.7, 107],
    usual_L: 74,
    because: '41.7 L in the lesser season in deep water; 2.68 kg of fruit at 40 L/kg at most',
    light: 20,
    grown_d: 100,
    growth: 1,
    source: 'dwc-tomato-2021',
  },
} as const satisfies Record<string, CropRow>;

export type CropKey = keyof typeof crops;

/** The row of a crop by its written name; undefined where no use of it is published here. */
export function cropNamed(written: string | undefined): CropKey | undefined {
  const words = new Set(written?.toLowerCase().match(/\p{L}+/gu));
  return cropKeys.find(key => crops[key].named.some(name => words.has(name)));
}

const cropKeys = Object.keys(crops) as readonly CropKey[];

export function cropRow(key: CropKey): CropRow {
  return crops[key];
}

/**
 * The share of its life's use that a plant drinks between two days of it, each as a part of the life from 0 to 1. Daily use
 * follows a power of age, so what is drunk up to a day follows the next power.
 */
export function shareOfLife({ growth }: CropRow, from: number, to: number): number {
  return Math.min(1, to) ** (growth + 1) - Math.min(1, from) ** (growth + 1);
}
