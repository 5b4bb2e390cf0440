// A planting: one crop in containers of one kind, through its stages.

import * as z from 'zod/mini';
import { parseDate } from '../date.ts';
import { count, group, listOf, parsed, plainText, quantity, reference } from '../field.ts';
import { parseFill } from '../texts/fill.ts';

export const planting = group(
  {
    crop: z.optional(plainText({ says: 'What grows.', examples: ['strawberry'] })),
    container: reference(['containers'], { says: 'The kind of container it grows in.', examples: ['crock'] }),
    count: z.optional(
      count(1, 100_000, { says: 'How many containers of this kind; 1 where left out.', examples: ['3'] }),
    ),
    plants: z.optional(
      count(1, 1000, { says: 'Plants, and net cups, per container; 1 where left out.', examples: ['4'] }),
    ),
    sow: z.optional(parsed(parseDate, { says: 'The day of sowing.', examples: ['2027-02-01'] })),
    transplant: z.optional(
      parsed(parseDate, {
        says: 'The day the plugs go over the containers; the recipe’s `start` where left out.',
        examples: ['2027-02-20'],
      }),
    ),
    fill: z.optional(
      parsed(parseFill, {
        says: 'How far a container is filled at the start: to the net cup’s bottom where left out.',
        examples: ['to net cup', '5 mm into net cup', '12 cm'],
        fixed: ['to net cup', '5 mm into net cup'],
        dimensions: ['length'],
      }),
    ),
    'keep-air-gap': z.optional(
      quantity(['length'], {
        says: 'Once roots hang, no top-up may leave less air than this between the net cup and the level.',
        examples: ['5 cm'],
      }),
    ),
    stages: z.optional(
      listOf(reference(['stages'], { says: 'A stage of the planting.', examples: ['rooting'] }), {
        says: 'The stages the planting goes through, in order.',
        examples: ['[rooting, bearing]'],
      }),
    ),
  },
  { says: 'One crop in containers of one kind, through its stages.', called: 'A planting' },
);
