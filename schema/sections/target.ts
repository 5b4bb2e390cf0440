// A target: the bands in which a stage's solution is kept.

import * as z from 'zod/mini';
import { bareNumber, group, range } from '../field.ts';

const element = (name: string, example: string) =>
  z.optional(range('mass-per-volume', { says: `The band for ${name}, in mg/L of the element.`, examples: [example] }));

/** The elements for which a target may give a band. */
export const targetElements = [
  'N',
  'P',
  'K',
  'Ca',
  'Mg',
  'S',
  'Fe',
  'Mn',
  'Zn',
  'Cu',
  'B',
  'Mo',
  'Cl',
  'Na',
  'Si',
] as const;

export type TargetElement = (typeof targetElements)[number];

export const target = group(
  {
    pH: z.optional(range('pH', { says: 'The pH band.', examples: ['5.5..6.5'] })),
    'pH-aim': z.optional(
      bareNumber(0, 14, {
        says: 'The pH to which a batch is adjusted; the middle of the band where left out.',
        examples: ['5.8'],
      }),
    ),
    EC: z.optional(range('conductivity', { says: 'The EC band at 25 °C.', examples: ['1.0..1.6 mS/cm'] })),
    N: element('nitrogen', '120..200 mg/L'),
    P: element('phosphorus', '30..50 mg/L'),
    K: element('potassium', '150..300 mg/L'),
    Ca: element('calcium', '120..200 mg/L'),
    Mg: element('magnesium', '30..60 mg/L'),
    S: element('sulfur', '40..100 mg/L'),
    Fe: element('iron', '1..3 mg/L'),
    Mn: element('manganese', '0.3..0.8 mg/L'),
    Zn: element('zinc', '0.1..0.4 mg/L'),
    Cu: element('copper', '0.02..0.1 mg/L'),
    B: element('boron', '0.3..0.6 mg/L'),
    Mo: element('molybdenum', '0.02..0.06 mg/L'),
    Cl: element('chlorine', '0..70 mg/L'),
    Na: element('sodium', '0..50 mg/L'),
    Si: element('silicon', '0..30 mg/L'),
  },
  { says: 'The bands in which a stage’s solution is kept, and the pH to aim at.', called: 'A target' },
);
