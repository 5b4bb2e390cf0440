import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Dimension, dimensions } from '../../schema/dimensions.ts';
import { unitOf } from '../../schema/find-unit.ts';
import { parseQuantity, quantity } from '../../schema/quantity.ts';
import { amountIn, amountText, countIn, rangeText, showIn } from '../../server/words/amount.ts';

describe('metric', () => {
  test.each([
    ['volume', 0.04, '40 mL'],
    ['volume', 2.2194, '2.22 L'],
    ['volume', 20, '20 L'],
    ['volume', 0.99996, '1 L'],
    ['volume', 1234.4, '1234 L'],
    ['volume', 0, '0 mL'],
    ['volume', -0.02, '-20 mL'],
    ['length', 14.5, '14.5 cm'],
    ['length', 0.5, '5 mm'],
    ['area', 153.938, '154 cm²'],
    ['mass', 0.1, '0.1 g'],
    ['mass', 0.0234, '23.4 mg'],
    ['mass', 1500, '1.5 kg'],
    ['duration', 18, '18 d'],
    ['temperature', 18.26, '18.3 °C'],
    ['temperature', -0.01, '0 °C'],
    ['conductivity', 0.42, '0.42 mS/cm'],
    ['conductivity', 0.035, '35 µS/cm'],
    ['fraction', 0.05, '5 %'],
    ['fraction', -0.166666, '-16.7 %'],
    ['volume-per-volume', 2, '2 mL/L'],
    ['mass-per-volume', 114.94, '115 mg/L'],
    ['mass-per-volume', 1_150_000, '1.15 kg/L'],
    ['mass-per-volume', 0.0021, '2.1 µg/L'],
    ['charge-per-volume', 2.7977, '2.8 meq/L'],
    ['volume-per-time', 55, '55 mL/d'],
    ['light', 14, '14 mol/m²/d'],
    ['number', 3, '3'],
    ['pH', 7, '7.0'],
    ['pH', 5.804, '5.8'],
    ['pH', 6.123, '6.12'],
  ] as const)('%s of %s in base units is %s', (dimension, value, text) => {
    expect(amountText({ dimension, value }, 'metric')).toBe(text);
  });
});

describe('for a reader in the United States', () => {
  test.each([
    ['volume', 18.927, '5 gal'],
    ['volume', 2.2194, '2.35 qt'],
    ['volume', 0.04, '1.35 fl oz'],
    ['volume', 0.01, '2 tsp'],
    ['volume', 0.0005, '0.5 mL'],
    ['length', 14.5, '5.71 in'],
    ['mass', 1.5, '1.5 g'],
    ['mass', 500, '1.1 lb'],
    ['temperature', 18, '64.4 °F'],
    ['volume-per-volume', 2, '1.51 tsp/gal'],
    ['mass-per-volume', 115, '115 mg/L'],
    ['conductivity', 1.2, '1.2 mS/cm'],
  ] as const)('%s of %s in base units is %s', (dimension, value, text) => {
    expect(amountText({ dimension, value }, 'us')).toBe(text);
  });
});

test('a given unit, a number alone, both ends of a range', () => {
  expect(amountIn(quantity('volume', 20), unitOf('gal'))).toBe('5.28 gal');
  expect(countIn(quantity('mass-per-volume', 114.94), unitOf('mg/L'))).toBe('115');
  expect(rangeText({ dimension: 'conductivity', low: 0.05, high: 1.6 }, 'metric')).toBe('0.05..1.6 mS/cm');
  expect(rangeText({ dimension: 'pH', low: 5.5, high: 6.5 }, 'metric')).toBe('5.5..6.5');
  expect(showIn('us').amount(quantity('temperature', 0))).toBe('32 °F');
});

const everyDimension = fc.constantFrom(...(Object.keys(dimensions) as Dimension[]));
const reader = fc.constantFrom('metric', 'us');

test('no amount has an exponent, a minus before zero or more than four digits that count', () => {
  fc.assert(
    fc.property(everyDimension, fc.double({ noNaN: true, min: -1e9, max: 1e9 }), reader, (dimension, value, whose) => {
      const [number = ''] = amountText({ dimension, value }, whose).split(' ');
      expect(number).toMatch(/^-?\d+(\.\d+)?$/u);
      expect(Object.is(Number(number), -0)).toBe(false);
      const counting = number.replace(/[-.]/gu, '').replace(/^0+/u, '').replace(/0+$/u, '');
      const inWholeTenths = dimension === 'temperature' || dimension === 'pH' ? 11 : 4;
      expect(counting.length).toBeLessThanOrEqual(inWholeTenths);
    }),
  );
});

test('an amount read back is the quantity to half a per cent', () => {
  const readable = everyDimension.filter(dimension => dimension !== 'number' && dimension !== 'pH');
  fc.assert(
    fc.property(readable, fc.double({ noNaN: true, min: 0.001, max: 1e6 }), reader, (dimension, value, whose) => {
      const text = amountText({ dimension, value }, whose);
      const parsed = parseQuantity(text, [dimension]);
      if (parsed.kind === 'complaint') throw new Error(`${text} is not read`);
      const off = Math.abs(parsed.value.value - value);
      expect(off).toBeLessThanOrEqual(dimension === 'temperature' ? 0.051 + value * 0.005 : value * 0.0051);
    }),
  );
});
