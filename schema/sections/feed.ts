// A feed: a labelled concentrate or powder by its guaranteed analysis, or a salt by its formula.

import * as z from 'zod/mini';
import { byKey, group, listOf, parsed, plainText, quantity, reference } from '../field.ts';
import { parseMoney } from '../texts/money.ts';

/** What a label may guarantee: elements and the oxides in which phosphate, potash and others are stated. */
export const analysisKeys = [
  'N',
  'P2O5',
  'P',
  'K2O',
  'K',
  'CaO',
  'Ca',
  'MgO',
  'Mg',
  'SO3',
  'S',
  'Fe',
  'Mn',
  'Zn',
  'Cu',
  'B',
  'Mo',
  'Cl',
  'Na',
  'Co',
  'Ni',
  'Si',
  'SiO2',
] as const;

export type AnalysisKey = (typeof analysisKeys)[number];

const share = quantity(['fraction'], { says: 'The share of the feed’s mass.', examples: ['5 %'] }, { atMost: 1 });

export const feed = group(
  {
    label: z.optional(
      quantity(['volume-per-volume', 'mass-per-volume'], {
        says: 'The rate that the label gives for non-circulating use. `label` in a batch means this rate.',
        examples: ['2 mL/L', '1 tsp/gal', '0.8 g/L'],
      }),
    ),
    analysis: z.optional(
      byKey(analysisKeys, share, {
        says: 'The guaranteed analysis of the label, by mass. Phosphate and potash as oxides (`P2O5`, `K2O`) or as elements.',
        examples: ['{ N: 5 %, P2O5: 4 %, K2O: 6 % }'],
        called: 'A guaranteed analysis',
      }),
    ),
    nitrogen: z.optional(
      group(
        { nitrate: z.optional(share), ammonium: z.optional(share), urea: z.optional(share) },
        {
          says: 'How the nitrogen of the analysis splits into its forms, by mass of the feed.',
          examples: ['{ nitrate: 4.2 %, ammonium: 0.8 %, urea: 0 % }'],
          called: 'The forms of nitrogen',
        },
      ),
    ),
    formula: z.optional(
      plainText({
        says: 'A salt by its chemical formula; water of crystallisation behind a dot.',
        examples: ['KNO3', 'CaSO4·2H2O', 'MgSO4.7H2O'],
      }),
    ),
    purity: z.optional(
      quantity(
        ['fraction'],
        {
          says: 'How much of the salt is the formula; 100 % where left out.',
          examples: ['99 %'],
        },
        { aboveZero: true, atMost: 1 },
      ),
    ),
    density: z.optional(
      quantity(
        ['mass-per-volume'],
        {
          says: 'Mass per volume of a liquid feed. Without it a liquid’s elements cannot be reckoned.',
          examples: ['1.15 kg/L', '1.15 g/mL'],
        },
        { aboveZero: true },
      ),
    ),
    package: z.optional(
      quantity(
        ['volume', 'mass'],
        { says: 'What one package holds.', examples: ['1 L', '500 g'] },
        { aboveZero: true },
      ),
    ),
    price: z.optional(parsed(parseMoney, { says: 'What one package costs.', examples: ['18 EUR'] })),
    for: z.optional(
      listOf(reference(['stages'], { says: 'A stage that the feed is meant for.', examples: ['rooting'] }), {
        says: 'The stages that the feed is meant for. Given in another stage it is a finding.',
        examples: ['[rooting]'],
      }),
    ),
  },
  { says: 'A feed, as its label describes it or by its formula.', called: 'A feed' },
);
