import { expect, test } from 'vitest';
import { findUnit } from '../../schema/find-unit.ts';

const symbol = (text: string) => {
  const found = findUnit(text);
  return found.kind === 'found' ? found.unit.symbol : undefined;
};

test.each([
  ['ml', 'mL'],
  ['Ml', 'mL'],
  ['KG', 'kg'],
  ['Liters', 'L'],
  ['US GAL', 'gal'],
  ['PH', 'pH'],
  ['us/cm', 'µS/cm'],
  ['ms/cm', 'mS/cm'],
  ['meq/l', 'meq/L'],
])('letter case is forgiven: %s is %s', (written, meant) => {
  expect(symbol(written)).toBe(meant);
});

test.each(['ML', 'MG', 'Mg', 'MM', 'MS/cm', 'Mmol/L', 'G', 'D', 'M', 'c', 'T', 't'])(
  '%s might mean something else and is refused',
  written => {
    expect(symbol(written)).toBeUndefined();
  },
);

test('mM is a concentration and mm a length', () => {
  expect([symbol('mM'), symbol('mm')]).toEqual(['mmol/L', 'mm']);
});

test.each([
  ['µS/cm with the micro sign', '\u00b5S/cm', 'µS/cm'],
  ['µS/cm with the Greek letter', '\u03bcS/cm', 'µS/cm'],
  ['a superscript', 'm³', 'm3'],
  ['a hat', 'cm^2', 'cm2'],
  ['a subscript', 'mg/L CaCO₃', 'mg/L CaCO3'],
  ['one sign for degrees Celsius', '℃', '°C'],
  ['words for degrees', 'deg C', '°C'],
  ['an inch mark', '"', 'in'],
  ['negative powers', 'mol m⁻² d⁻¹', 'mol/m2/d'],
])('%s is read', (_, written, meant) => {
  expect(symbol(written)).toBe(meant);
});

test.each([
  ['mL per gal', 'mL/gal'],
  ['tsp / gallon', 'tsp/gal'],
  ['tbsp/cup', 'tbsp/cup'],
  ['oz/ft3', 'oz/ft3'],
  ['ft3/wk', 'ft3/wk'],
  ['mL/10 L', 'mL/10 L'],
  ['mL per 4 litres', 'mL/4 L'],
])('a quotient of two units needs no row: %s', (written, meant) => {
  expect(symbol(written)).toBe(meant);
});

test('a quotient keeps its exact size: a fluid ounce per gallon is one part in 128', () => {
  const found = findUnit('fl_oz/gal');
  expect(found.kind === 'found' && [found.unit.times, found.unit.over]).toEqual([125, 16]);
});

test('a quotient names both sources and the narrower system', () => {
  const found = findUnit('tsp/gal');
  expect(found.kind === 'found' && [found.unit.sources, found.unit.system]).toEqual([
    ['cfr-21-101-9', 'nist-hb44'],
    'us',
  ]);
});

test('only the unknown side of a quotient is named', () => {
  expect(findUnit('mL/galon')).toEqual({ kind: 'unknown', wrong: { from: 3, to: 8 } });
  expect(findUnit('mLL / gal')).toEqual({ kind: 'unknown', wrong: { from: 0, to: 3 } });
});

test.each(['L/d/d', 'cm/L', 'mL/0 L', '/', '/L', 'L/', '', ' ', 'constructor', '__proto__'])(
  '%j is no unit',
  written => {
    expect(symbol(written)).toBeUndefined();
  },
);
