import { describe, expect, test } from 'vitest';
import { parseBatchVolume } from '../../../schema/texts/batch-volume.ts';
import { drawEach } from '../draw-complaint.ts';

test('a volume', () => {
  expect(parseBatchVolume('20 L')).toEqual({
    kind: 'read',
    value: { kind: 'volume', volume: { dimension: 'volume', value: 20 } },
  });
});

test('as needed', () => {
  expect(parseBatchVolume('as needed')).toEqual({ kind: 'read', value: { kind: 'as-needed' } });
});

describe('complaints', () => {
  test('underlined, with their rewriting', () => {
    expect(
      drawEach(['As needed', 'as-needed', 'plenty', '0 L', '-1 L', '20', '20 cm', '5 galon', ''], parseBatchVolume),
    ).toMatchInlineSnapshot(`
      "
      As needed
      ^^^^^^^^^ value-invalid: \`As needed\`: a batch has a volume such as \`20 L\`, or is mixed \`as needed\`. Write \`as needed\`?
      as needed

      as-needed
      ^^^^^^^^^ value-invalid: \`as-needed\`: a batch has a volume such as \`20 L\`, or is mixed \`as needed\`. Write \`as needed\`?
      as needed

      plenty
      ^^^^^^ value-invalid: \`plenty\`: a batch has a volume such as \`20 L\`, or is mixed \`as needed\`.

      0 L
      ^ value-invalid: \`0\`: this must be above zero.

      -1 L
      ^^ value-invalid: \`-1\`: a volume cannot be below zero. Write \`1\`?
      1 L

      20
      ^^ unit-missing: \`20\` has no unit; a volume belongs here, in L, mL, gal or qt.

      20 cm
         ^^ unit-mismatch: \`cm\` is the unit of a length; a volume belongs here.

      5 galon
        ^^^^^ unit-unknown: \`galon\` is not a unit that Tidemark knows. Did you mean \`gal\`?
      5 gal


       value-invalid: An amount is missing here.
      "
    `);
  });
});
