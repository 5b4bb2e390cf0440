import { describe, expect, test } from 'vitest';
import { parseRange } from '../../schema/range.ts';
import { drawEach } from './draw-complaint.ts';

const pH = (text: string) => parseRange(text, 'pH');
const EC = (text: string) => parseRange(text, 'conductivity');

test.each([
  ['5.5..6.5', 5.5, 6.5],
  ['5.5 .. 6.5', 5.5, 6.5],
  ['5.8..5.8', 5.8, 5.8],
  ['6..6.5', 6, 6.5],
])('%s is a range of pH', (text, low, high) => {
  expect(pH(text)).toMatchObject({ kind: 'read', value: { dimension: 'pH', low, high } });
});

test.each([
  ['0.8..1.2 mS/cm', 0.8, 1.2],
  ['800..1200 µS/cm', 0.8, 1.2],
  ['0.8 mS/cm..1200 µS/cm', 0.8, 1.2],
  ['0.8 mS/cm..1.2', 0.8, 1.2],
])('%s has one unit for both ends, or one for each', (text, low, high) => {
  expect(EC(text)).toMatchObject({ kind: 'read', value: { dimension: 'conductivity', low, high } });
});

describe('complaints', () => {
  test('pH', () => {
    expect(
      drawEach(
        [
          '6.5..5.5',
          '5.5-6.5',
          '5.5–6.5',
          '5.5 - 6.5',
          '5.5 to 6.5',
          '5.5…6.5',
          '5.5...6.5',
          '5.8',
          '6 ± 0.2',
          '..6',
          '5..',
          '..',
          '5,5..6,5',
          '1..2..3',
          'low..6',
          '',
        ],
        pH,
      ),
    ).toMatchInlineSnapshot(`
    "
    6.5..5.5
    ^^^^^^^^ value-invalid: \`6.5..5.5\`: the range runs downwards. Write \`5.5..6.5\`?
    5.5..6.5

    5.5-6.5
       ^ value-invalid: \`-\`: a range is written with two dots. Write \`..\`?
    5.5..6.5

    5.5–6.5
       ^ value-invalid: \`–\`: a range is written with two dots. Write \`..\`?
    5.5..6.5

    5.5 - 6.5
       ^^^ value-invalid: \`-\`: a range is written with two dots. Write \`..\`?
    5.5..6.5

    5.5 to 6.5
       ^^^^ value-invalid: \`to\`: a range is written with two dots. Write \`..\`?
    5.5..6.5

    5.5…6.5
       ^ value-invalid: \`…\`: a range is written with two dots. Write \`..\`?
    5.5..6.5

    5.5...6.5
       ^^^ value-invalid: \`...\`: a range has two dots. Write \`..\`?
    5.5..6.5

    5.8
    ^^^ value-invalid: \`5.8\`: a range has two ends. Write \`5.8..5.8\`?
    5.8..5.8

    6 ± 0.2
    ^^^^^^^ value-invalid: \`6 ± 0.2\`: a range is written with its two ends. Write \`5.8..6.2\`?
    5.8..6.2

    ..6
    ^^ value-invalid: \`..\`: the lower end of the range is missing.

    5..
     ^^ value-invalid: \`..\`: the upper end of the range is missing.

    ..
    ^^ value-invalid: \`..\`: a range has two ends.

    5,5..6,5
    ^^^ value-invalid: \`5,5\`: the number has a decimal comma. Write \`5.5\`?
    5.5..6,5

    1..2..3
        ^^^ value-invalid: \`..3\`: a range has two ends.

    low..6
    ^^^ value-invalid: \`low\`: this does not begin with a number.


     value-invalid: An amount is missing here.
    "
  `);
  });

  test('EC', () => {
    expect(
      drawEach(
        [
          '0.8..1.2',
          '0.8..1.2 L',
          '0.8 L..1.2 mS/cm',
          '1.2..0.8 mS/cm',
          '0.8-1.2 mS/cm',
          '0.8 mS/cm - 1.2 mS/cm',
          '1.0 mS/cm',
          '1.4 ± 0.1 mS/cm',
          '1..2 mS/cn',
          '-1..2 mS/cm',
          '1',
        ],
        EC,
      ),
    ).toMatchInlineSnapshot(`
    "
    0.8..1.2
    ^^^^^^^^ unit-missing: \`0.8..1.2\` has no unit; a conductivity belongs here, in mS/cm, µS/cm, dS/m or S/m.

    0.8..1.2 L
             ^ unit-mismatch: \`L\` is the unit of a volume; a conductivity belongs here.

    0.8 L..1.2 mS/cm
        ^ unit-mismatch: \`L\` is the unit of a volume; a conductivity belongs here.

    1.2..0.8 mS/cm
    ^^^^^^^^^^^^^^ value-invalid: \`1.2..0.8 mS/cm\`: the range runs downwards. Write \`0.8..1.2 mS/cm\`?
    0.8..1.2 mS/cm

    0.8-1.2 mS/cm
       ^ value-invalid: \`-\`: a range is written with two dots. Write \`..\`?
    0.8..1.2 mS/cm

    0.8 mS/cm - 1.2 mS/cm
             ^^^ value-invalid: \`-\`: a range is written with two dots. Write \`..\`?
    0.8 mS/cm..1.2 mS/cm

    1.0 mS/cm
    ^^^^^^^^^ value-invalid: \`1.0 mS/cm\`: a range has two ends. Write \`1.0..1.0 mS/cm\`?
    1.0..1.0 mS/cm

    1.4 ± 0.1 mS/cm
    ^^^^^^^^^^^^^^^ value-invalid: \`1.4 ± 0.1 mS/cm\`: a range is written with its two ends. Write \`1.3..1.5 mS/cm\`?
    1.3..1.5 mS/cm

    1..2 mS/cn
         ^^^^^ unit-unknown: \`mS/cn\` is not a unit that Tidemark knows. Did you mean \`mS/cm\`?
    1..2 mS/cm

    -1..2 mS/cm
    ^^ value-invalid: \`-1\`: the lower end cannot be below zero.

    1
    ^ value-invalid: \`1\`: a range has two ends.
    "
  `);
  });
});
