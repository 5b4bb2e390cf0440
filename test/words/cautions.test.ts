import { expect, test } from 'vitest';
import { parseQuantity } from '../../schema/quantity.ts';
import type { Adjuster } from '../../server/recipe/seen.ts';
import { cautionsFor, cautionText } from '../../server/words/cautions.ts';

function percent(number: number) {
  const parsed = parseQuantity(`${number} %`, ['fraction']);
  if (parsed.kind === 'complaint') throw new Error('no percent');
  return parsed.value;
}

// Bands: Regulation (EC) No 1272/2008, Annex VI, table 3, phosphoric acid: 10 % irritant, 25 % corrosive.
test('the same acid is irritant when weak and burns when strong', () => {
  const weak = cautionsFor({ acid: { phosphoric: percent(12) } });
  expect(weak.burns).toBe(false);
  expect(weak.hazards.map(({ code }) => code)).toEqual(['H319', 'H315']);
  const strong = cautionsFor({ acid: { phosphoric: percent(30) } });
  expect(strong.burns).toBe(true);
  expect(strong.hazards[0]?.says).toBe('Causes severe skin burns and eye damage.');
});

test('below every band the usual cautions stay', () => {
  const { hazards, sentences } = cautionsFor({ acid: { citric: percent(1) } });
  expect(hazards).toEqual([]);
  expect(sentences).toMatchInlineSnapshot(`
    [
      "Wear gloves and eye protection.",
      "Pour acid into water, never water into acid.",
      "Add a little, stir, and measure again before adding more.",
      "Never mix an acid with a chlorine product, such as bleach: poisonous gas forms.",
      "Keep it away from children and food.",
      "Follow the label and the safety data sheet; they overrule the recipe.",
      "Dispose of it by your local rules.",
      "The amounts are estimates; the meter decides.",
    ]
  `);
});

test('a base is given to water too, and is told by its own sentence', () => {
  const { about, sentences } = cautionsFor({ base: { KOH: percent(5) } });
  expect(about).toBe('base');
  expect(sentences).toContain('Pour the base into water, never water onto the base: it heats up.');
  expect(sentences).not.toContain('Pour acid into water, never water into acid.');
});

test('of a mixture the statements of all parts are given', () => {
  const mixed: Adjuster = { acid: { nitric: percent(30), phosphoric: percent(10) } };
  expect(cautionsFor(mixed).hazards.map(({ code }) => code)).toEqual([
    'H331',
    'H314',
    'EUH071',
    'H319',
    'H315',
    'H290',
  ]);
});

test('what is not known is taken to burn, and both ways to pour are told', () => {
  const none = cautionsFor(undefined);
  expect(none.burns).toBe(true);
  expect(cautionText(none)).toContain('Pour acid into water, never water into acid. Pour the base into water');
  expect(cautionsFor({ response: { pH: -0.6, at: { dimension: 'volume-per-volume', value: 0.3 } } }).about).toBe(
    'acid',
  );
});
