// A tool: what can be measured on the bench, and the vessels in which batches are mixed.

import * as z from 'zod/mini';
import { group, listOf, quantity } from '../field.ts';

const amount = (says: string, ...examples: string[]) =>
  quantity(['volume', 'mass'], { says, examples }, { aboveZero: true });

export const tool = group(
  {
    smallest: z.optional(
      amount('The finest step of its scale: every multiple of it can be measured.', '0.5 mL', '0.1 g'),
    ),
    largest: z.optional(amount('The most it measures at once.', '10 mL', '500 g')),
    steps: z.optional(
      listOf(amount('One of the sizes it has.', '5 mL'), {
        says: 'The sizes of a set of spoons or cups.',
        examples: ['[2.5 mL, 5 mL, 15 mL]'],
      }),
    ),
    holds: z.optional(
      quantity(['volume'], { says: 'The brimful volume of a mixing vessel.', examples: ['12 L'] }, { aboveZero: true }),
    ),
    fill: z.optional(
      quantity(
        ['fraction'],
        {
          says: 'How far a mixing vessel is filled; 95 % where left out, so that there is room to stir.',
          examples: ['90 %'],
        },
        { aboveZero: true, atMost: 1 },
      ),
    ),
  },
  { says: 'A measuring tool (`smallest`, `largest` or `steps`) or a mixing vessel (`holds`).', called: 'A tool' },
);
