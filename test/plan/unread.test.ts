// What is written and cannot be read is unknown, with its reason; nothing is taken in its place, and the rest is computed.

import { expect, test } from 'vitest';
import { markedRecipe } from '../recipe.ts';
import { known, shown, workedOut } from './worked-out.ts';

/** A recipe that is sound but for one place. */
function written(odd: Readonly<Record<string, string>>) {
  const { pH = '7.6', alkalinity = '120 mg/L CaCO3', temperature = '20 °C', ions = '{ Ca: 46 mg/L }' } = odd;
  const { feed = '{ formula: KNO3 }', dose = '1 g/L', acid = '{ phosphoric: 12 % }', to = '5.8', air = 'closed' } = odd;
  const { added = '2 mL', purity = '99 %' } = odd;
  const kind = feed.startsWith('{ formula') ? feed.replace(' }', `, purity: ${purity} }`) : feed;
  return workedOut(
    markedRecipe(`recipe: 1
waters:
  odd: { pH: ${pH}, alkalinity: ${alkalinity}, temperature: ${temperature}, ions: ${ions} }
  sound: { pH: 7.6, alkalinity: 120 mg/L CaCO3 }
feeds:
  salt: ${kind}
adjusters:
  down: { acid: ${acid}, density: 1.06 kg/L }
  fine: { acid: { citric: 5 % }, density: 1.02 kg/L }
targets:
  leafy: { pH: 5.5..6.5 }
batches:
  tub: { water: odd, volume: 10 L, target: leafy, air: ${air}, feed: { salt: ${dose} }, adjust: { with: down, to: ${to} }, readings: [{ add: { down: ${added} } }] }
  other: { water: sound, volume: 10 L, adjust: { with: fine, to: 6 } }
`),
  );
}

test('as it stands everything is known', () => {
  const { mixture, adjustment, state } = written({});
  expect(known(mixture('tub').predicted.pH)).toBeGreaterThan(7);
  expect(known(state('tub').pH)).toBeLessThan(7);
  expect(known(adjustment('tub').exact)).toBeGreaterThan(0);
});

test.each([
  ['pH', '15', 'value-invalid'],
  ['alkalinity', '-20 mg/L CaCO3', 'value-invalid'],
  ['alkalinity', '20 mS/cm', 'unit-mismatch'],
  ['temperature', '-5 °C', 'temperature-outside'],
  ['temperature', '90 °C', 'temperature-outside'],
  ['ions', '{ Ca: 46 }', 'unit-missing'],
  ['air', 'stale', 'value-invalid'],
  ['dose', '1 g/Lx', 'unit-unknown'],
  ['feed', '{ formula: KNo3 }', 'formula-invalid'],
  ['purity', '150 %', 'value-invalid'],
] as const)('%s: %s leaves the mixture unknown', (key, value, code) => {
  const { mixture, adjustment, codes } = written({ [key]: value });
  for (const figure of [mixture('tub').predicted.pH, mixture('tub').predicted.EC, adjustment('tub').exact]) {
    expect(shown(figure)).toMatch(/^wants /);
  }
  expect(codes).toContain(code);
  expect(codes).not.toContain('not-computed');
  expect(known(adjustment('other').exact)).toBeGreaterThan(0);
});

test.each([
  ['acid', '{ phosphoric: 120 % }', 'value-invalid'],
  ['acid', '{ phosphoric: 12 }', 'unit-missing'],
  ['acid', '{}', 'adjuster-without-strength'],
  ['to', '15', 'value-invalid'],
  ['added', '2 mm', 'unit-mismatch'],
] as const)('%s: %s leaves the adjustment unknown, the mixture not', (key, value, code) => {
  const { mixture, adjustment, codes } = written({ [key]: value });
  expect(known(mixture('tub').predicted.pH)).toBeGreaterThan(7);
  expect(shown(adjustment('tub').exact)).toMatch(/^wants /);
  expect(codes).toContain(code);
  expect(codes).not.toContain('not-computed');
  expect(known(adjustment('other').exact)).toBeGreaterThan(0);
});

test('a dose or an analysis that cannot be read leaves the elements unknown too', () => {
  for (const odd of [{ dose: '1 g/Lx' }, { feed: '{ analysis: { N: 3 %, K: 140 % }, density: 1 kg/L }' }]) {
    const { batch, codes } = written(odd);
    expect(shown(batch('tub').elements.get('Ca'))).toMatch(/^wants a value/);
    expect(codes).not.toContain('not-computed');
  }
});

test('an ion given twice is said, and counts once', () => {
  const { water, codes } = written({ ions: '{ NO3: 62 mg/L, NO3-N: 14 mg/L, Ca: 46 mg/L }' });
  const once = written({ ions: '{ NO3: 62 mg/L, Ca: 46 mg/L }' }).water('odd');
  expect(codes).toContain('ion-twice');
  expect(known(water('odd').figures.EC)).toBeCloseTo(known(once.figures.EC), 9);
});
