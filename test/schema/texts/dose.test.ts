import { describe, expect, test } from 'vitest';
import { parseDose } from '../../../schema/texts/dose.ts';
import { drawEach } from '../draw-complaint.ts';

test.each([
  ['label', { kind: 'label', share: { dimension: 'fraction', value: 1 } }],
  ['50 % of label', { kind: 'label', share: { dimension: 'fraction', value: 0.5 } }],
  ['150% of label', { kind: 'label', share: { dimension: 'fraction', value: 1.5 } }],
  ['1 mL/L', { kind: 'rate', rate: { dimension: 'volume-per-volume', value: 1 } }],
  ['1.2 g/L', { kind: 'rate', rate: { dimension: 'mass-per-volume', value: 1200 } }],
  ['20 mL', { kind: 'amount', amount: { dimension: 'volume', value: 0.02 } }],
  ['12 g', { kind: 'amount', amount: { dimension: 'mass', value: 12 } }],
])('%s', (text, dose) => {
  expect(parseDose(text)).toEqual({ kind: 'read', value: dose });
});

describe('complaints', () => {
  test('underlined, with their rewriting', () => {
    expect(
      drawEach(
        [
          'lable',
          'Label',
          '50 %',
          '50 of label',
          '1/2 of label',
          '0.5 of label',
          'half of label',
          '50 % of the label rate',
          '20',
          '20 cm',
          '5 galon',
          'some',
          '',
        ],
        parseDose,
      ),
    ).toMatchInlineSnapshot(`
      "
      lable
      ^^^^^ value-invalid: \`lable\`: a dose is \`label\`, a percent of the label, a rate such as 2 mL/L, or an amount such as 20 mL. Write \`label\`?
      label

      Label
      ^^^^^ value-invalid: \`Label\`: a dose is \`label\`, a percent of the label, a rate such as 2 mL/L, or an amount such as 20 mL. Write \`label\`?
      label

      50 %
      ^^^^ value-invalid: \`50 %\`: a share says of what. Write \`50 % of label\`?
      50 % of label

      50 of label
      ^^ unit-missing: \`50\` has no unit; a share belongs here, in %.
      50 % of label

      1/2 of label
      ^^^ unit-missing: \`1/2\` has no unit; a share belongs here, in %.
      50 % of label

      0.5 of label
      ^^^ unit-missing: \`0.5\` has no unit; a share belongs here, in %.

      half of label
      ^^^^ value-invalid: \`half\`: the share is written as a number. Write \`50 %\`?
      50 % of label

      50 % of the label rate
          ^^^^^^^^^^^^^^^^^^ value-invalid: \`of the label rate\`: a share ends in \`of label\`. Write \`of label\`?
      50 % of label

      20
      ^^ unit-missing: \`20\` has no unit; a rate by volume, a mass per volume, a volume or a mass belongs here, in mL/L, mg/L, L or g.

      20 cm
         ^^ unit-mismatch: \`cm\` is the unit of a length; a rate by volume, a mass per volume, a volume or a mass belongs here.

      5 galon
        ^^^^^ unit-unknown: \`galon\` is not a unit that Tidemark knows. Did you mean \`gal\`?
      5 gal

      some
      ^^^^ value-invalid: \`some\`: a dose is \`label\`, a percent of the label, a rate such as 2 mL/L, or an amount such as 20 mL.


       value-invalid: An amount is missing here.
      "
    `);
  });
});
