// Source waters from each kind of knowledge that a grower may have of them.

import { expect, test } from 'vitest';
import { recipe } from '../recipe.ts';
import { known, shown, workedOut } from './worked-out.ts';

test('a water of known pH and alkalinity keeps both, and says where its pH ends in air', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      mains: { pH: 7.6, alkalinity: 100 mg/L CaCO3, temperature: 20 °C, ions: { Ca: 18.76 mg/L, Mg: 5.8 mg/L, K: 1.95 mg/L, Na: 31.5878 mg/L, Cl: 18.01 mg/L, SO4: 11.1 mg/L, NO3-N: 1.4 mg/L } }
  `);
  const { figures, inAir, carbon } = water('mains');
  expect(known(figures.pH)).toBe(7.6);
  // PHREEQC 3.8.9: 8.4189 in air, 2.1037 mmol/L of carbon, 0.11194 of CO2.
  expect(known(inAir.pH)).toBeCloseTo(8.419, 2);
  expect(known(carbon.total)).toBeCloseTo(2.104, 2);
  expect(known(carbon.CO2)).toBeCloseTo(0.112, 2);
});

test('a water of known alkalinity alone stands in air', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      rain: { alkalinity: 0 mg/L CaCO3, temperature: 25 °C }
      cistern: { air: open, temperature: 25 °C }
      well: { alkalinity: 2 meq/L, temperature: 25 °C }
  `);
  // Pure water under 420 ppm of CO2.
  expect(known(water('rain').figures.pH)).toBeCloseTo(5.6, 1);
  expect(known(water('cistern').figures.pH)).toBeCloseTo(known(water('rain').figures.pH), 6);
  expect(known(water('well').figures.pH)).toBeCloseTo(known(water('well').inAir.pH), 6);
});

test('bicarbonate of a report is its alkalinity', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      a: { pH: 7.4, alkalinity: 122.034 mg/L HCO3 }
      b: { pH: 7.4, ions: { HCO3: 122.034 mg/L } }
  `);
  expect(known(water('a').figures.alkalinity)).toBeCloseTo(2, 3);
  expect(known(water('b').figures.alkalinity)).toBeCloseTo(2, 3);
});

test('a lab report of pH and ions, open to air, is taken at its pH', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      pond: { pH: 6.9, air: open, ions: { NO3-N: 140 mg/L, PO4-P: 30 mg/L, K: 300 mg/L, Ca: 60 mg/L } }
  `);
  expect(known(water('pond').figures.pH)).toBe(6.9);
  expect(known(water('pond').inAir.pH)).toBeCloseTo(6.9, 6);
});

test('ions alone tell a pH by their difference, in air', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      spring: { ions: { Ca: 40.078 mg/L, Cl: 35.453 mg/L } }
  `);
  // Two equivalents of calcium, one of chloride: the third ion is bicarbonate.
  expect(known(water('spring').figures.alkalinity)).toBeCloseTo(1, 2);
});

test('the cations that a report leaves out conduct all the same', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      whole: { pH: 7.6, alkalinity: 2 meq/L, ions: { Ca: 2 meq/L } }
      bare: { pH: 7.6, alkalinity: 2 meq/L }
      metered: { pH: 7.6, alkalinity: 2 meq/L, EC: 0.4 mS/cm }
  `);
  const whole = known(water('whole').figures.EC);
  expect(Math.abs(known(water('bare').figures.EC) / whole - 1)).toBeLessThan(0.1);
  expect(known(water('metered').figures.EC)).toBeCloseTo(0.4, 6);
});

test('a pH without alkalinity is not enough, and says what is', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      mains: { pH: 7.8 }
  `);
  expect(shown(water('mains').figures.pH)).toMatch(/^wants the alkalinity \(or `air: open`/);
});

test.each([
  ['{ pH: 4.1, alkalinity: 20 mg/L CaCO3 }', 'acid-with-alkalinity'],
  ['{ pH: 5, alkalinity: 300 mg/L CaCO3 }', 'alkalinity-too-high'],
  ['{ pH: 9.5, alkalinity: 5 mg/L CaCO3, ions: { Si: 60 mg/L } }', 'alkalinity-too-low'],
])('%s is a water that cannot be', (text, why) => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      odd: ${text}
  `);
  expect(water('odd').impossible?.why).toBe(why);
  expect(shown(water('odd').figures.EC)).toMatch(/^wants an alkalinity/);
});

test('what a test kit cannot tell from none is no contradiction', () => {
  const { water } = workedOut(recipe`
    recipe: 1
    waters:
      pure: { pH: 8.3, alkalinity: 0 mg/L CaCO3 }
      acid: { pH: 4.0, alkalinity: 0 mg/L CaCO3 }
  `);
  expect(known(water('pure').figures.pH)).toBeCloseTo(8.3, 2);
  expect(known(water('acid').figures.pH)).toBe(4);
});

test('a water without a temperature has that of the batch it goes into', () => {
  const { mixture } = workedOut(recipe`
    recipe: 1
    waters:
      a: { pH: 7.6, alkalinity: 100 mg/L CaCO3 }
      b: { pH: 7.6, alkalinity: 100 mg/L CaCO3, temperature: 28 °C }
    batches:
      of-a: { water: a, volume: 1 L, temperature: 28 °C }
      of-b: { water: b, volume: 1 L }
  `);
  expect(known(mixture('of-a').predicted.pH)).toBeCloseTo(7.6, 6);
  expect(known(mixture('of-b').predicted.pH)).toBeCloseTo(7.6, 6);
});
