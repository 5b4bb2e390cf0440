import { describe, expect, test } from 'vitest';
import { parseFill } from '../../../schema/texts/fill.ts';
import { drawEach } from '../draw-complaint.ts';

test.each([
  ['to net cup', { kind: 'to-net-cup' }],
  ['5 mm into net cup', { kind: 'into-net-cup', depth: { dimension: 'length', value: 0.5 } }],
  ['1/8 in into net cup', { kind: 'into-net-cup', depth: { dimension: 'length', value: 0.3175 } }],
  ['12 cm', { kind: 'level', level: { dimension: 'length', value: 12 } }],
])('%s', (text, fill) => {
  expect(parseFill(text)).toEqual({ kind: 'read', value: fill });
});

describe('complaints', () => {
  test('underlined, with their rewriting', () => {
    expect(
      drawEach(
        [
          'to net-cup',
          'To net cup',
          '5 mm into the net cup',
          '5 mm below net cup',
          '5 kg into net cup',
          '4 L',
          '12',
          '-1 cm',
          'full',
          '',
        ],
        parseFill,
      ),
    ).toMatchInlineSnapshot(`
      "
      to net-cup
      ^^^^^^^^^^ value-invalid: \`to net-cup\`: a fill is \`to net cup\`, a depth such as \`5 mm into net cup\`, or a level such as \`12 cm\`. Write \`to net cup\`?
      to net cup

      To net cup
      ^^^^^^^^^^ value-invalid: \`To net cup\`: a fill is \`to net cup\`, a depth such as \`5 mm into net cup\`, or a level such as \`12 cm\`. Write \`to net cup\`?
      to net cup

      5 mm into the net cup
          ^^^^^^^^^^^^^^^^^ value-invalid: \`into the net cup\`: a depth is written \`into net cup\`, counted from the bottom of the cup up. Write \`into net cup\`?
      5 mm into net cup

      5 mm below net cup
          ^^^^^^^^^^^^^^ value-invalid: \`below net cup\`: a depth is written \`into net cup\`, counted from the bottom of the cup up.

      5 kg into net cup
        ^^ unit-mismatch: \`kg\` is the unit of a mass; a length belongs here.

      4 L
        ^ unit-mismatch: \`L\` is the unit of a volume; a length belongs here.

      12
      ^^ unit-missing: \`12\` has no unit; a length belongs here, in cm, mm, m or in.

      -1 cm
      ^^ value-invalid: \`-1\`: a length cannot be below zero. Write \`1\`?
      1 cm

      full
      ^^^^ value-invalid: \`full\`: a fill is \`to net cup\`, a depth such as \`5 mm into net cup\`, or a level such as \`12 cm\`.


       value-invalid: A fill is \`to net cup\`, a depth such as \`5 mm into net cup\`, or a level such as \`12 cm\`.
      "
    `);
  });
});
