// Source water: what comes from the tap, the roof or the pond, as a report or a test kit gives it.

import * as z from 'zod/mini';
import { bareNumber, byKey, choice, group, quantity } from '../field.ts';

/** The ions a water report may state, each as the substance named. */
export const ionKeys = [
  'Ca',
  'Mg',
  'K',
  'Na',
  'NH4',
  'NO3',
  'Cl',
  'SO4',
  'PO4',
  'HCO3',
  'B',
  'Si',
  'NO3-N',
  'NH4-N',
  'PO4-P',
  'SO4-S',
] as const;

export type IonKey = (typeof ionKeys)[number];

export const water = group(
  {
    pH: z.optional(bareNumber(0, 14, { says: 'The pH of the water as it is drawn.', examples: ['7.8'] })),
    alkalinity: z.optional(
      quantity(['charge-per-volume'], {
        says: 'What the water holds against acid. It decides how much acid a pH step takes, far more than the pH does.',
        examples: ['140 mg/L CaCO3', '2.8 meq/L', '7.8 dKH', '171 mg/L HCO3'],
      }),
    ),
    EC: z.optional(
      quantity(['conductivity'], { says: 'The conductivity of the water at 25 °C.', examples: ['0.42 mS/cm'] }),
    ),
    temperature: z.optional(
      quantity(['temperature'], { says: 'The temperature at which the water is used.', examples: ['18 °C'] }),
    ),
    air: z.optional(
      choice(['closed', 'open'], {
        says: 'Whether the stated pH was measured fresh from the tap (`closed`) or after standing in air (`open`).',
        examples: ['open'],
      }),
    ),
    ions: z.optional(
      byKey(
        ionKeys,
        quantity(['mass-per-volume', 'amount-per-volume', 'charge-per-volume'], {
          says: 'How much of the ion is in the water, as mg/L of what is named, mmol/L or meq/L.',
          examples: ['46 mg/L', '1.2 mmol/L'],
        }),
        {
          says: 'What is dissolved in the water, from its report. `NO3-N` is nitrate as nitrogen, `NO3` nitrate as such.',
          examples: ['{ Ca: 46 mg/L, Mg: 7 mg/L }'],
          called: 'The list of ions',
        },
      ),
    ),
  },
  {
    says: 'Source water: give what its report or a test kit says. Without a pH it is taken to be in balance with air.',
    called: 'A water',
  },
);
