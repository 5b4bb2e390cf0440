import { describe, expect, test } from 'vitest';
import { parseResponse } from '../../../schema/texts/response.ts';
import { drawEach } from '../draw-complaint.ts';

test.each([
  ['-0.6 pH at 0.3 mL/L', { pH: -0.6, at: { dimension: 'volume-per-volume', value: 0.3 } }],
  ['+0.4 pH at 0.2 g/L', { pH: 0.4, at: { dimension: 'mass-per-volume', value: 200 } }],
  ['-0.6 at 0.3 mL/L', { pH: -0.6, at: { dimension: 'volume-per-volume', value: 0.3 } }],
])('%s', (text, response) => {
  expect(parseResponse(text)).toEqual({ kind: 'read', value: response });
});

describe('complaints', () => {
  test('underlined, with their rewriting', () => {
    expect(
      drawEach(
        [
          '-0.6 pH',
          '-0.6 pH per 0.3 mL/L',
          '0 pH at 1 mL/L',
          '-0.6 pH at 0 mL/L',
          '-0.6 pH at 0.3 mL',
          '-0.6 mL at 0.3 mL/L',
          '-0.6 pH at 0.3 mL/galon',
          '',
        ],
        parseResponse,
      ),
    ).toMatchInlineSnapshot(`
      "
      -0.6 pH
      ^^^^^^^ value-invalid: \`-0.6 pH\`: a response says what moves the pH by how much, as in \`-0.6 pH at 0.3 mL/L\`.

      -0.6 pH per 0.3 mL/L
             ^^^^^ value-invalid: \`per\`: the amount follows the word \`at\`. Write \`at\`?
      -0.6 pH at 0.3 mL/L

      0 pH at 1 mL/L
      ^ value-invalid: \`0\`: a pH that does not move tells nothing.

      -0.6 pH at 0 mL/L
                 ^ value-invalid: \`0\`: this must be above zero.

      -0.6 pH at 0.3 mL
                     ^^ unit-mismatch: \`mL\` is the unit of a volume; a rate by volume or a mass per volume belongs here.

      -0.6 mL at 0.3 mL/L
           ^^ unit-mismatch: \`mL\` is the unit of a volume; a pH belongs here.

      -0.6 pH at 0.3 mL/galon
                        ^^^^^ unit-unknown: \`galon\` is not a unit that Tidemark knows. Did you mean \`gal\`?
      -0.6 pH at 0.3 mL/gal


       value-invalid: A response says what moves the pH by how much, as in \`-0.6 pH at 0.3 mL/L\`.
      "
    `);
  });
});
