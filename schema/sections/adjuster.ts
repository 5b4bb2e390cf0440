// An adjuster: what moves the pH down or up, by composition or by a known response.

import * as z from 'zod/mini';
import { byKey, group, parsed, quantity } from '../field.ts';
import { parseMoney } from '../texts/money.ts';
import { parseResponse } from '../texts/response.ts';

export const acidKeys = ['phosphoric', 'nitric', 'sulfuric', 'citric', 'acetic', 'hydrochloric'] as const;
export const baseKeys = ['KOH', 'NaOH', 'K2CO3', 'KHCO3', 'NaHCO3', 'K2SiO3'] as const;

const strength = quantity(
  ['fraction'],
  { says: 'The share of the adjuster’s mass.', examples: ['12 %'] },
  { aboveZero: true, atMost: 1 },
);

export const adjuster = group(
  {
    acid: z.optional(
      byKey(acidKeys, strength, {
        says: 'The acid in it and its share by mass, from the label or the safety data sheet.',
        examples: ['{ phosphoric: 12 % }'],
        called: 'The acid of an adjuster',
      }),
    ),
    base: z.optional(
      byKey(baseKeys, strength, {
        says: 'The base in it and its share by mass, from the label or the safety data sheet.',
        examples: ['{ KOH: 5 % }'],
        called: 'The base of an adjuster',
      }),
    ),
    response: z.optional(
      parsed(parseResponse, {
        says: 'A known effect in place of a composition. It holds for one water and one starting pH only.',
        examples: ['-0.6 pH at 0.3 mL/L'],
      }),
    ),
    density: z.optional(
      quantity(
        ['mass-per-volume'],
        {
          says: 'Mass per volume of a liquid. Left out, the adjuster is a solid and dosed in grams.',
          examples: ['1.06 kg/L'],
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
    price: z.optional(parsed(parseMoney, { says: 'What one package costs.', examples: ['12 EUR'] })),
  },
  {
    says: 'An acid or a base that moves the pH. Acids and bases burn: gloves, eye protection, acid into water, small steps.',
    called: 'An adjuster',
  },
);
