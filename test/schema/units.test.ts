import { unit as theirUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { dimensions } from '../../schema/dimensions.ts';
import { findUnit, type UnitSymbol, unitOf, unitsFor } from '../../schema/find-unit.ts';
import { convert, parseQuantity } from '../../schema/quantity.ts';
import { sources } from '../../schema/sources.ts';
import { unitRows } from '../../schema/units.ts';
import { elements } from '../../server/chemistry/tables/elements.ts';
import { expectNear, type ReferenceRow, referenceRows } from '../reference-rows.ts';

interface UnitReference extends ReferenceRow {
  readonly written: string;
  readonly unit: UnitSymbol;
  readonly value: number;
}

describe('published sizes', () => {
  test.each(referenceRows<UnitReference>('units'))('$id: $written is $value $unit', row => {
    const unit = unitOf(row.unit);
    const parsed = parseQuantity(row.written, [unit.dimension]);
    if (parsed.kind === 'complaint') throw new Error(`${row.written} is not read`);
    expectNear(convert(parsed.value, unit), row.value, row.tolerance);
    expect(Object.keys(sources)).toContain(row.source);
  });
});

// How the units are called by mathjs, a general-purpose package. Spoons and cups are left out: there they are customary
// or metric, here those of labels (21 CFR 101.9). Degrees are compared below, with their zeros.
const inMathjs: readonly (readonly [UnitSymbol, string, string])[] = [
  ['L', 'L', 'L'],
  ['mL', 'mL', 'L'],
  ['µL', 'uL', 'L'],
  ['m3', 'm3', 'L'],
  ['gal', 'gallon', 'L'],
  ['qt', 'quart', 'L'],
  ['pt', 'pint', 'L'],
  ['fl_oz', 'fluidounce', 'L'],
  ['in3', 'cuin', 'L'],
  ['ft3', 'cuft', 'L'],
  ['cm', 'cm', 'cm'],
  ['mm', 'mm', 'cm'],
  ['m', 'm', 'cm'],
  ['in', 'in', 'cm'],
  ['ft', 'ft', 'cm'],
  ['cm2', 'cm2', 'cm2'],
  ['m2', 'm2', 'cm2'],
  ['in2', 'sqin', 'cm2'],
  ['ft2', 'sqft', 'cm2'],
  ['g', 'g', 'g'],
  ['mg', 'mg', 'g'],
  ['µg', 'ug', 'g'],
  ['kg', 'kg', 'g'],
  ['oz', 'ounce', 'g'],
  ['lb', 'lbm', 'g'],
  ['d', 'day', 'day'],
  ['wk', 'week', 'day'],
  ['h', 'hour', 'day'],
  ['min', 'minute', 'day'],
  ['mS/cm', 'mS/cm', 'mS/cm'],
  ['µS/cm', 'uS/cm', 'mS/cm'],
  ['dS/m', 'dS/m', 'mS/cm'],
  ['S/m', 'S/m', 'mS/cm'],
  ['mL/L', 'mL/L', 'mL/L'],
  ['mL/gal', 'mL/gallon', 'mL/L'],
  ['fl_oz/gal', 'fluidounce/gallon', 'mL/L'],
  ['L/m3', 'L/m3', 'mL/L'],
  ['mg/L', 'mg/L', 'mg/L'],
  ['µg/L', 'ug/L', 'mg/L'],
  ['g/L', 'g/L', 'mg/L'],
  ['kg/L', 'kg/L', 'mg/L'],
  ['g/mL', 'g/mL', 'mg/L'],
  ['g/gal', 'g/gallon', 'mg/L'],
  ['oz/gal', 'ounce/gallon', 'mg/L'],
  ['lb/gal', 'lbm/gallon', 'mg/L'],
  ['mL/d', 'mL/day', 'mL/day'],
  ['L/d', 'L/day', 'mL/day'],
  ['L/wk', 'L/week', 'mL/day'],
  ['gal/d', 'gallon/day', 'mL/day'],
  ['fl_oz/d', 'fluidounce/day', 'mL/day'],
  ['mmol/L', 'mmol/L', 'mmol/L'],
  ['µmol/L', 'umol/L', 'mmol/L'],
  ['mol/L', 'mol/L', 'mmol/L'],
  ['mol/m2/d', 'mol/(m2 day)', 'mol/(m2 day)'],
];

describe('against a general-purpose package', () => {
  test.each(inMathjs)('%s', (symbol, theirs, theirBase) => {
    const { times, over } = unitOf(symbol);
    expectNear(times / over, theirUnit(1, theirs).toNumber(theirBase), 1e-12);
  });

  test.each([
    ['°F', 'degF', 71.6],
    ['°C', 'degC', 18],
    ['K', 'K', 291.15],
  ] as const)('%s with its zero', (symbol, theirs, reading) => {
    const parsed = parseQuantity(`${reading} ${symbol}`, ['temperature']);
    expect(parsed.kind === 'read' && parsed.value.value).toBeCloseTo(theirUnit(reading, theirs).toNumber('degC'), 9);
  });
});

describe('the table', () => {
  test.each(unitRows)('%s is found by its symbol and every alias', (symbol, row) => {
    for (const spelling of [symbol, ...row.aliases]) {
      const found = findUnit(spelling);
      expect(found.kind === 'found' && found.unit.symbol, spelling).toBe(symbol);
    }
  });

  test('no spelling is claimed by two units', () => {
    const all = unitRows.flatMap(([symbol, row]) => [symbol, ...row.aliases]);
    expect(new Set(all).size).toBe(all.length);
  });

  test('every dimension has its base unit, of size one', () => {
    for (const [dimension, { base }] of Object.entries(dimensions)) {
      if (base === '1') continue; // counted in ones: written in per cent, or not written at all
      const found = findUnit(base);
      if (found.kind !== 'found') throw new Error(`${base} is not a unit`);
      expect(found.unit.dimension).toBe(dimension);
      expect(found.unit.times / found.unit.over).toBe(1);
    }
  });

  test('alkalinity rests on the atomic weights of the chemistry', () => {
    const { Ca, C, O, H } = elements;
    const carbonate = C.weight + 3 * O.weight;
    expectNear(2 / (Ca.weight + carbonate), unitOf('mg/L CaCO3').times / unitOf('mg/L CaCO3').over, 1e-15);
    expectNear(1 / (H.weight + carbonate), unitOf('mg/L HCO3').times / unitOf('mg/L HCO3').over, 1e-15);
    expectNear(20 / (Ca.weight + O.weight), unitOf('dKH').times / unitOf('dKH').over, 1e-15);
  });
});

describe('units on offer', () => {
  test('a reader of metric units is offered those first', () => {
    expect(
      unitsFor('volume')
        .map(unit => unit.symbol)
        .slice(0, 2),
    ).toEqual(['L', 'mL']);
  });

  test('a reader of US units is offered those first', () => {
    expect(
      unitsFor('length', 'us')
        .map(unit => unit.symbol)
        .slice(0, 2),
    ).toEqual(['in', 'ft']);
  });
});
