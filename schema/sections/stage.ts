// A stage of growth: how long it lasts, what it aims at, which batch feeds it, how much a plant drinks.

import * as z from 'zod/mini';
import { group, quantity, reference } from '../field.ts';

export const stage = group(
  {
    lasts: quantity(
      ['duration'],
      { says: 'How long the stage lasts.', examples: ['18 d', '3 wk'] },
      // Ten years: longer than anything grows in one container, and short enough to be forecast day by day.
      { aboveZero: true, atMost: 3660 },
    ),
    target: z.optional(reference(['targets'], { says: 'The target of the stage.', examples: ['leafy'] })),
    batch: z.optional(reference(['batches'], { says: 'The batch that feeds the stage.', examples: ['opening'] })),
    uses: z.optional(
      quantity(['volume-per-time'], {
        says: 'How much solution one plant takes up and transpires a day.',
        examples: ['55 mL/d'],
      }),
    ),
    light: z.optional(
      quantity(['light'], {
        says: 'The daily light integral. Where no use rate is given, the water use of the crop is scaled by it.',
        examples: ['14 mol/m2/d'],
      }),
    ),
  },
  { says: 'A stage of growth.', called: 'A stage' },
);
