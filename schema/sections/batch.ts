// A batch: solution mixed at one time from one water, by doses of feeds, then adjusted and measured.

import * as z from 'zod/mini';
import { bareNumber, byName, choice, group, listOf, parsed, quantity, reference } from '../field.ts';
import { parseBatchVolume } from '../texts/batch-volume.ts';
import { parseDose } from '../texts/dose.ts';

const added = quantity(['volume', 'mass'], { says: 'How much was added.', examples: ['4 mL'] });

export const reading = group(
  {
    add: z.optional(
      byName(['adjusters', 'feeds'], added, {
        says: 'What was added to the whole batch before this measurement.',
        examples: ['{ down: 4 mL }'],
      }),
    ),
    pH: z.optional(bareNumber(0, 14, { says: 'The measured pH.', examples: ['6.6'] })),
    EC: z.optional(quantity(['conductivity'], { says: 'The measured EC at 25 °C.', examples: ['1.3 mS/cm'] })),
  },
  { says: 'A measurement of the batch, in the order taken, and what was added before it.', called: 'A reading' },
);

export const batch = group(
  {
    water: reference(['waters'], { says: 'The source water.', examples: ['mains'] }),
    volume: parsed(parseBatchVolume, {
      says: 'How much is mixed. `as needed` is the sum of the fills it serves, plus spare.',
      examples: ['20 L', 'as needed'],
      fixed: ['as needed'],
      dimensions: ['volume'],
    }),
    'mix-in': z.optional(
      reference(['tools'], {
        says: 'The vessel it is mixed in; a batch larger than the vessel is mixed in equal loads.',
        examples: ['can'],
      }),
    ),
    target: z.optional(
      reference(['targets'], {
        says: 'What it aims at; the target of the first stage that it feeds where left out.',
        examples: ['leafy'],
      }),
    ),
    temperature: z.optional(
      quantity(['temperature'], {
        says: 'The temperature of the batch; the water’s where left out.',
        examples: ['19 °C'],
      }),
    ),
    air: z.optional(
      choice(['closed', 'open'], {
        says: '`closed`: freshly mixed, no CO2 lost. `open`: stood or aerated until in balance with air. `closed` where left out.',
        examples: ['closed'],
      }),
    ),
    feed: z.optional(
      byName(
        ['feeds'],
        parsed(parseDose, {
          says: 'How much of the feed: `label`, a percent of the label, a rate, or an amount for the whole batch.',
          examples: ['label', '50 % of label', '4 mL/gal', '20 mL', '1.2 g/L'],
          fixed: ['label', '50 % of label'],
          dimensions: ['volume-per-volume', 'mass-per-volume', 'volume', 'mass'],
        }),
        { says: 'The feeds of the batch, in the order in which they are added.', examples: ['{ green: label }'] },
      ),
    ),
    solve: z.optional(
      choice(['to target'], {
        says: 'Asks for the amounts of the feeds in `from` that best meet the target. They are shown, and written only when you take them.',
        examples: ['to target'],
      }),
    ),
    from: z.optional(
      listOf(reference(['feeds'], { says: 'A feed that may be used.', examples: ['green'] }), {
        says: 'The feeds that `solve` may use; all feeds where left out.',
        examples: ['[green, saltpetre]'],
      }),
    ),
    adjust: z.optional(
      group(
        {
          with: reference(['adjusters'], { says: 'The adjuster used.', examples: ['down'] }),
          to: z.optional(
            bareNumber(0, 14, { says: 'The pH to reach; the target’s aim where left out.', examples: ['5.8'] }),
          ),
        },
        {
          says: 'How the pH is adjusted after mixing: small steps, stir, measure. Acids and bases burn.',
          examples: ['{ with: down, to: 5.8 }'],
          called: 'An adjustment',
        },
      ),
    ),
    readings: z.optional(
      listOf(reading, { says: 'What was measured on this batch, in order.', examples: ['[{ pH: 7.2 }]'] }),
    ),
  },
  { says: 'Solution mixed at one time: water, volume, feeds, adjustment, readings.', called: 'A batch' },
);
