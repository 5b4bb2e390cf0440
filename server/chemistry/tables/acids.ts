// The acids and bases growers shift pH with: what a mole of each adds to the solution, and how it hurts. Separate so
// that a dose and its caution come from the same row. Concentration limits under `clp-annex-vi` were not re-read in print.

import type { SourceKey } from '../../../schema/sources.ts';
import type { Totals } from '../totals.ts';

/** Hazard statements of the Globally Harmonized System, by code. */
export const hazards = {
  H272: 'May intensify fire; oxidiser.',
  H290: 'May be corrosive to metals.',
  H302: 'Harmful if swallowed.',
  H314: 'Causes severe skin burns and eye damage.',
  H315: 'Causes skin irritation.',
  H318: 'Causes serious eye damage.',
  H319: 'Causes serious eye irritation.',
  H331: 'Toxic if inhaled.',
  H335: 'May cause respiratory irritation.',
  EUH071: 'Corrosive to the respiratory tract.',
} as const satisfies Record<string, string>;

export type Hazard = keyof typeof hazards;

/** What applies from this share by mass upward, until the next row takes over. */
interface HazardBand {
  readonly from: number;
  readonly hazards: readonly Hazard[];
}

interface ReagentRow {
  readonly title: string;
  readonly formula: string;
  readonly does: 'acid' | 'base';
  /** Strong: gives all its protons or hydroxide at once. Weak: some of them stay, by the pH. */
  readonly strength: 'strong' | 'weak';
  /** Protons it can give, or take, a mole. */
  readonly equivalents: number;
  /** Moles of each component a mole of it adds; the protons follow from the charge balance. */
  readonly adds: Totals;
  /** From the mildest; below the first row no statement is required. The last that is reached holds. */
  readonly bands: readonly HazardBand[];
  readonly source: SourceKey;
}

export const reagents = {
  phosphoric: {
    title: 'phosphoric acid',
    formula: 'H3PO4',
    does: 'acid',
    strength: 'weak',
    equivalents: 3,
    adds: { PO4: 1 },
    bands: [
      { from: 0.1, hazards: ['H315', 'H319'] },
      { from: 0.25, hazards: ['H290', 'H302', 'H314'] },
    ],
    source: 'clp-annex-vi',
  },
  nitric: {
    title: 'nitric acid',
    formula: 'HNO3',
    does: 'acid',
    strength: 'strong',
    equivalents: 1,
    adds: { NO3: 1 },
    bands: [
      { from: 0.01, hazards: ['H290', 'H315', 'H319'] },
      { from: 0.05, hazards: ['H290', 'H314'] },
      { from: 0.265, hazards: ['H290', 'H314', 'H331', 'EUH071'] },
      { from: 0.65, hazards: ['H272', 'H290', 'H314', 'H331', 'EUH071'] },
    ],
    source: 'clp-annex-vi',
  },
  sulfuric: {
    title: 'sulfuric acid',
    formula: 'H2SO4',
    does: 'acid',
    strength: 'strong',
    equivalents: 2,
    adds: { SO4: 1 },
    bands: [
      { from: 0.05, hazards: ['H290', 'H315', 'H319'] },
      { from: 0.15, hazards: ['H290', 'H314'] },
    ],
    source: 'clp-annex-vi',
  },
  hydrochloric: {
    title: 'hydrochloric acid',
    formula: 'HCl',
    does: 'acid',
    strength: 'strong',
    equivalents: 1,
    adds: { Cl: 1 },
    bands: [
      { from: 0.01, hazards: ['H290'] },
      { from: 0.1, hazards: ['H290', 'H315', 'H319', 'H335'] },
      { from: 0.25, hazards: ['H290', 'H314', 'H335'] },
    ],
    source: 'clp-annex-vi',
  },
  citric: {
    title: 'citric acid',
    formula: 'C6H8O7',
    does: 'acid',
    strength: 'weak',
    equivalents: 3,
    adds: { citrate: 1 },
    bands: [
      { from: 0.1, hazards: ['H319'] },
      { from: 0.2, hazards: ['H319', 'H335'] },
    ],
    source: 'clp-annex-vi',
  },
  acetic: {
    title: 'acetic acid',
    formula: 'CH3COOH',
    does: 'acid',
    strength: 'weak',
    equivalents: 1,
    adds: { acetate: 1 },
    bands: [
      { from: 0.1, hazards: ['H315', 'H319'] },
      { from: 0.25, hazards: ['H314'] },
    ],
    source: 'clp-annex-vi',
  },
  KOH: {
    title: 'potassium hydroxide',
    formula: 'KOH',
    does: 'base',
    strength: 'strong',
    equivalents: 1,
    adds: { K: 1 },
    bands: [
      { from: 0.005, hazards: ['H290', 'H315', 'H319'] },
      { from: 0.02, hazards: ['H290', 'H314'] },
      { from: 0.25, hazards: ['H290', 'H302', 'H314'] },
    ],
    source: 'clp-annex-vi',
  },
  NaOH: {
    title: 'sodium hydroxide',
    formula: 'NaOH',
    does: 'base',
    strength: 'strong',
    equivalents: 1,
    adds: { Na: 1 },
    bands: [
      { from: 0.005, hazards: ['H290', 'H315', 'H319'] },
      { from: 0.02, hazards: ['H290', 'H314'] },
    ],
    source: 'clp-annex-vi',
  },
  K2CO3: {
    title: 'potassium carbonate',
    formula: 'K2CO3',
    does: 'base',
    strength: 'weak',
    equivalents: 2,
    adds: { K: 2, CO3: 1 },
    bands: [{ from: 0.2, hazards: ['H315', 'H319', 'H335'] }],
    source: 'from-memory',
  },
  KHCO3: {
    title: 'potassium hydrogen carbonate',
    formula: 'KHCO3',
    does: 'base',
    strength: 'weak',
    equivalents: 1,
    adds: { K: 1, CO3: 1 },
    bands: [],
    source: 'from-memory',
  },
  NaHCO3: {
    title: 'sodium hydrogen carbonate',
    formula: 'NaHCO3',
    does: 'base',
    strength: 'weak',
    equivalents: 1,
    adds: { Na: 1, CO3: 1 },
    bands: [],
    source: 'from-memory',
  },
  K2SiO3: {
    title: 'potassium silicate',
    formula: 'K2SiO3',
    does: 'base',
    strength: 'weak',
    equivalents: 2,
    adds: { K: 2, Si: 1 },
    bands: [
      { from: 0.05, hazards: ['H315', 'H319'] },
      { from: 0.25, hazards: ['H290', 'H314'] },
    ],
    source: 'from-memory',
  },
} as const satisfies Record<string, ReagentRow>;

export type ReagentKey = keyof typeof reagents;

export const reagentKeys = Object.keys(reagents).filter(isReagent);

export function isReagent(key: string): key is ReagentKey {
  return Object.hasOwn(reagents, key);
}
