// What must be said wherever an amount of acid or base is shown. Every hover, hint, sheet and report takes its cautions here, so
// that none of them can be milder than the others.

import { acidKeys, baseKeys } from '../../schema/sections/adjuster.ts';
import { type Hazard, hazards, type ReagentKey, reagents } from '../chemistry/tables/acids.ts';
import type { Adjuster } from '../recipe/seen.ts';

export interface Cautions {
  readonly about: 'acid' | 'base' | 'acid-or-base';
  /** The hazard statements for its strength, the gravest first; empty where the strength is too low for any, or not known. */
  readonly hazards: readonly { readonly code: Hazard; readonly says: string }[];
  /** Whether it burns skin or eyes at its strength. What is not known is taken to burn. */
  readonly burns: boolean;
  /** What to do and what never to do, a sentence each. */
  readonly sentences: readonly string[];
}

/** The cautions for an adjuster; of one whose composition is not written, those for an acid and for a base. */
export function cautionsFor(adjuster: Adjuster | undefined): Cautions {
  const parts = partsOf(adjuster);
  const about = kindOf(adjuster);
  const codes = new Set(parts.flatMap(({ reagent, share }) => statementsAt(reagent, share)));
  const ordered = gravestFirst.filter(code => codes.has(code));
  return {
    about,
    hazards: ordered.map(code => ({ code, says: hazards[code] })),
    burns: parts.length === 0 || ordered.some(code => code === 'H314' || code === 'H318'),
    sentences: [...protect, ...pour[about], ...always],
  };
}

/** The cautions as one paragraph, hazards first. */
export function cautionText({ hazards: stated, sentences }: Cautions): string {
  return [...stated.map(({ says }) => says), ...sentences].join(' ');
}

interface Part {
  readonly reagent: ReagentKey;
  readonly share: number;
}

function partsOf(adjuster: Adjuster | undefined): readonly Part[] {
  const acids = acidKeys.map(reagent => ({ reagent, share: adjuster?.acid?.[reagent]?.value }));
  const bases = baseKeys.map(reagent => ({ reagent, share: adjuster?.base?.[reagent]?.value }));
  return [...acids, ...bases].flatMap(({ reagent, share }) => (share === undefined ? [] : [{ reagent, share }]));
}

function kindOf(adjuster: Adjuster | undefined): Cautions['about'] {
  const lowers = adjuster?.acid !== undefined || (adjuster?.response?.pH ?? 0) < 0;
  const raises = adjuster?.base !== undefined || (adjuster?.response?.pH ?? 0) > 0;
  return lowers === raises ? 'acid-or-base' : lowers ? 'acid' : 'base';
}

/** The statements of the last band that a share reaches. */
function statementsAt(reagent: ReagentKey, share: number): readonly Hazard[] {
  const bands: readonly { readonly from: number; readonly hazards: readonly Hazard[] }[] = reagents[reagent].bands;
  return bands.findLast(band => band.from <= share)?.hazards ?? [];
}

const gravestFirst: readonly Hazard[] = [
  'H331',
  'H314',
  'H318',
  'EUH071',
  'H302',
  'H272',
  'H319',
  'H315',
  'H335',
  'H290',
];

const protect = ['Wear gloves and eye protection.'] as const;

const acidPour = 'Pour acid into water, never water into acid.';
const basePour = 'Pour the base into water, never water onto the base: it heats up.';

const pour: Readonly<Record<Cautions['about'], readonly string[]>> = {
  acid: [acidPour],
  base: [basePour],
  'acid-or-base': [acidPour, basePour],
};

const always = [
  'Add a little, stir, and measure again before adding more.',
  'Never mix an acid with a chlorine product, such as bleach: poisonous gas forms.',
  'Keep it away from children and food.',
  'Follow the label and the safety data sheet; they overrule the recipe.',
  'Dispose of it by your local rules.',
  'The amounts are estimates; the meter decides.',
] as const;
