// A container: its shape inside and the net cup that hangs in it.

import * as z from 'zod/mini';
import { flag, group, listOf, quantity } from '../field.ts';

const length = (says: string, example: string) =>
  quantity(['length'], { says, examples: [example] }, { aboveZero: true });

export const container = group(
  {
    inside: group(
      {
        cylinder: z.optional(
          group(
            { diameter: length('Inner diameter.', '14 cm'), height: length('Inner height, floor to rim.', '20 cm') },
            {
              says: 'An upright round container of one width.',
              examples: ['{ diameter: 14 cm, height: 20 cm }'],
              called: 'A cylinder',
            },
          ),
        ),
        box: z.optional(
          group(
            {
              length: length('Inner length.', '40 cm'),
              width: length('Inner width.', '30 cm'),
              height: length('Inner height, floor to rim.', '20 cm'),
            },
            {
              says: 'A rectangular container.',
              examples: ['{ length: 40 cm, width: 30 cm, height: 20 cm }'],
              called: 'A box',
            },
          ),
        ),
        cone: z.optional(
          group(
            {
              top: length('Inner diameter at the rim.', '28.6 cm'),
              bottom: length('Inner diameter at the floor.', '26.2 cm'),
              height: length('Inner height, floor to rim.', '33 cm'),
            },
            {
              says: 'A round container that widens or narrows, as a pail.',
              examples: ['{ top: 28.6 cm, bottom: 26.2 cm, height: 33 cm }'],
              called: 'A cone',
            },
          ),
        ),
        profile: z.optional(
          listOf(
            group(
              {
                at: quantity(['length'], { says: 'Height above the floor.', examples: ['0 cm'] }),
                area: quantity(
                  ['area'],
                  { says: 'Inner area at this height.', examples: ['60 cm2'] },
                  { aboveZero: true },
                ),
              },
              {
                says: 'The inner area at one height.',
                examples: ['{ at: 0 cm, area: 60 cm2 }'],
                called: 'A step of a profile',
              },
            ),
            {
              says: 'Any other shape, by its inner area at two or more heights, from floor to rim; straight walls between them.',
              examples: ['[{ at: 0 cm, area: 60 cm2 }, { at: 12 cm, area: 80 cm2 }]'],
            },
          ),
        ),
      },
      {
        says: 'The inner shape: one of `cylinder`, `box`, `cone`, `profile`.',
        called: 'The inside of a container',
        oneOf: true,
      },
    ),
    'net-cup': z.optional(
      group(
        {
          depth: length('From the rim down to the bottom of the cup.', '6 cm'),
          top: length('Outer diameter at the rim.', '7 cm'),
          bottom: length('Outer diameter at its bottom.', '5 cm'),
        },
        {
          says: 'The net cup that hangs from the rim. What of it is under the level displaces solution.',
          examples: ['{ depth: 6 cm, top: 7 cm, bottom: 5 cm }'],
          called: 'A net cup',
        },
      ),
    ),
    opaque: z.optional(flag({ says: 'Whether light is kept out; algae grow where it is not.', examples: ['true'] })),
  },
  { says: 'A container for nutrient solution: its inner shape and its net cup.', called: 'A container' },
);
