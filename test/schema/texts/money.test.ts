import { describe, expect, test } from 'vitest';
import { parseMoney } from '../../../schema/texts/money.ts';
import { drawEach } from '../draw-complaint.ts';

test.each([
  ['18 EUR', { amount: 18, currency: 'EUR' }],
  ['18.50 USD', { amount: 18.5, currency: 'USD' }],
  ['0 EUR', { amount: 0, currency: 'EUR' }],
])('%s', (text, money) => {
  expect(parseMoney(text)).toEqual({ kind: 'read', value: money });
});

describe('complaints', () => {
  test('underlined, with their rewriting', () => {
    expect(
      drawEach(['EUR 18', '€18', '18 €', '$18', '18 eur', '18', '18,50 EUR', '-3 EUR', '18 bucks', ''], parseMoney),
    ).toMatchInlineSnapshot(`
      "
      EUR 18
      ^^^^^^ value-invalid: \`EUR 18\`: the amount comes first, then the three letters of the currency. Write \`18 EUR\`?
      18 EUR

      €18
      ^^^ value-invalid: \`€18\`: the amount comes first, then the three letters of the currency. Write \`18 EUR\`?
      18 EUR

      18 €
         ^ value-invalid: \`€\`: a currency is its three letters in ISO 4217, as in EUR. Write \`EUR\`?
      18 EUR

      $18
      ^^^ value-invalid: \`$18\`: the amount comes first, then the three letters of the currency.

      18 eur
         ^^^ value-invalid: \`eur\`: a currency is its three letters in ISO 4217, as in EUR. Write \`EUR\`?
      18 EUR

      18
      ^^ value-invalid: \`18\`: a price needs its currency, as in \`18 EUR\`.

      18,50 EUR
      ^^^^^ value-invalid: \`18,50\`: the number has a decimal comma. Write \`18.50\`?
      18.50 EUR

      -3 EUR
      ^^ value-invalid: \`-3\`: a price cannot be below zero. Write \`3\`?
      3 EUR

      18 bucks
         ^^^^^ value-invalid: \`bucks\`: a currency is its three letters in ISO 4217, as in EUR.


       value-invalid: An amount is missing here.
      "
    `);
  });
});
