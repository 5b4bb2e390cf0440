// The log: what was measured and topped up, day by day.

import * as z from 'zod/mini';
import { parseDate } from '../date.ts';
import { bareNumber, group, listOf, parsed, plainText, quantity, reference } from '../field.ts';

export const logEntry = group(
  {
    on: parsed(parseDate, { says: 'The day.', examples: ['2027-03-01'] }),
    planting: z.optional(reference(['plantings'], { says: 'The planting it is about.', examples: ['berry'] })),
    batch: z.optional(reference(['batches'], { says: 'The batch it is about.', examples: ['opening'] })),
    pH: z.optional(bareNumber(0, 14, { says: 'The measured pH.', examples: ['6.2'] })),
    EC: z.optional(quantity(['conductivity'], { says: 'The measured EC at 25 °C.', examples: ['1.3 mS/cm'] })),
    level: z.optional(
      quantity(['length'], { says: 'The measured level above the floor of the container.', examples: ['11.5 cm'] }),
    ),
    'top-up': z.optional(
      group(
        {
          batch: z.optional(
            reference(['batches'], { says: 'The batch it was topped up from.', examples: ['opening'] }),
          ),
          water: z.optional(
            reference(['waters'], { says: 'The plain water it was topped up with.', examples: ['mains'] }),
          ),
          volume: quantity(['volume'], { says: 'How much went into each container.', examples: ['400 mL'] }),
        },
        {
          says: 'Solution or water added to each container of the planting.',
          examples: ['{ batch: opening, volume: 400 mL }'],
          called: 'A top-up',
        },
      ),
    ),
    note: z.optional(plainText({ says: 'A remark of your own.', examples: ['thinned to one'] })),
  },
  { says: 'One day’s measurements or top-up.', called: 'A log entry' },
);

export const log = listOf(logEntry, {
  says: 'What was measured and topped up, oldest first.',
  examples: ['[{ on: 2027-03-01, planting: berry, pH: 6.2 }]'],
});
