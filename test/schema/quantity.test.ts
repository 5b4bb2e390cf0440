import { describe, expect, expectTypeOf, test } from 'vitest';
import { unitOf } from '../../schema/find-unit.ts';
import { convert, fromUnit, parseQuantity, type Quantity } from '../../schema/quantity.ts';
import { draw, drawEach } from './draw-complaint.ts';

const volume = (text: string) => parseQuantity(text, ['volume']);
const rate = (text: string) => parseQuantity(text, ['volume-per-volume', 'mass-per-volume']);
const alkalinity = (text: string) => parseQuantity(text, ['charge-per-volume']);
const conductivity = (text: string) => parseQuantity(text, ['conductivity']);

describe('what is read', () => {
  test.each([
    ['20 L', 20],
    ['20L', 20],
    [' 400 mL ', 0.4],
    ['3 gal', 11.356235352],
    ['1/2 tsp', 0.0025],
    ['1½ cups', 0.36],
  ])('%s', (text, litres) => {
    const parsed = volume(text);
    expect(parsed.kind === 'read' && parsed.value).toEqual({ dimension: 'volume', value: litres });
  });

  test('the unit is given as it is meant, with the place where it is written', () => {
    const parsed = volume('5  ml');
    if (parsed.kind === 'complaint') throw new Error(parsed.code);
    expect([parsed.number, parsed.unit.symbol, parsed.unitSlice]).toEqual([5, 'mL', { from: 3, to: 5 }]);
  });

  test('a pH needs no unit', () => {
    expect(parseQuantity('-0.6', ['pH'])).toMatchObject({ kind: 'read', value: { dimension: 'pH', value: -0.6 } });
  });

  test('one accepted dimension gives its own type', () => {
    const parsed = volume('5 mL');
    if (parsed.kind === 'read') expectTypeOf(parsed.value).toEqualTypeOf<Quantity<'volume'>>();
    expect(parsed.kind).toBe('read');
  });

  test('of several dimensions, the quantity tells which', () => {
    const parsed = rate('1.2 g/L');
    if (parsed.kind === 'complaint' || parsed.value.dimension !== 'mass-per-volume') throw new Error('not a mass');
    expectTypeOf(parsed.value).toEqualTypeOf<Quantity<'mass-per-volume'>>();
    expect(parsed.value.value).toBe(1200);
  });
});

describe('units', () => {
  test('an unknown unit is underlined alone, with the nearest of the kind that belongs here', () => {
    expect(draw('5 galon', volume)).toMatchInlineSnapshot(`
      "
      5 galon
        ^^^^^ unit-unknown: \`galon\` is not a unit that Tidemark knows. Did you mean \`gal\`?
      5 gal
      "
    `);
  });

  test('only the unknown side of a rate is underlined', () => {
    expect(draw('5 mL/galon', rate)).toMatchInlineSnapshot(`
      "
      5 mL/galon
           ^^^^^ unit-unknown: \`galon\` is not a unit that Tidemark knows. Did you mean \`gal\`?
      5 mL/gal
      "
    `);
  });

  test('a million is not read as a thousandth', () => {
    expect(draw('1.2 MS/cm', conductivity)).toMatchInlineSnapshot(`
      "
      1.2 MS/cm
          ^^^^^ unit-unknown: \`MS/cm\` is not a unit that Tidemark knows. Did you mean \`mS/cm\`?
      1.2 mS/cm
      "
    `);
  });

  test('a length where a volume belongs is named as both', () => {
    expect(draw('20 cm', volume)).toMatchInlineSnapshot(`
      "
      20 cm
         ^^ unit-mismatch: \`cm\` is the unit of a length; a volume belongs here.
      "
    `);
  });

  test('an ounce where a volume belongs', () => {
    expect(draw('8 oz', volume)).toMatchInlineSnapshot(`
      "
      8 oz
        ^^ unit-mismatch: \`oz\` is the unit of a mass; a volume belongs here.
      8 fl_oz
      "
    `);
  });

  test('a misspelt basis of alkalinity', () => {
    expect(draw('140 mg/L CaCO', alkalinity)).toMatchInlineSnapshot(`
      "
      140 mg/L CaCO
          ^^^^^^^^^ unit-unknown: \`mg/L CaCO\` is not a unit that Tidemark knows. Did you mean \`mg/L CaCO3\`?
      140 mg/L CaCO3
      "
    `);
  });

  test('an alkalinity must say as what it is counted', () => {
    expect(draw('140 mg/L', alkalinity)).toMatchInlineSnapshot(`
      "
      140 mg/L
          ^^^^ unit-mismatch: \`mg/L\` is the unit of a mass per volume; an alkalinity or charge per volume belongs here.
      "
    `);
  });

  test('a number alone is offered units', () => {
    expect(draw('20', volume)).toMatchInlineSnapshot(`
      "
      20
      ^^ unit-missing: \`20\` has no unit; a volume belongs here, in L, mL, gal or qt.
      "
    `);
  });

  test('where one unit alone would do it is written', () => {
    expect(draw('5', text => parseQuantity(text, ['fraction']))).toMatchInlineSnapshot(`
      "
      5
      ^ unit-missing: \`5\` has no unit; a share belongs here, in %.
      5 %
      "
    `);
  });
});

describe('values', () => {
  test('that cannot be read are underlined, with their rewriting', () => {
    expect(
      drawEach(
        ['1,000 L', '1,5 L', '5-6 L', '1e3 L', '20 L of rain', '20 L 5 mL', 'L 20', 'plenty', '', '-5 L', '1/0 L'],
        volume,
      ),
    ).toMatchInlineSnapshot(`
      "
      1,000 L
      ^^^^^ value-invalid: \`1,000\`: the thousands are separated. Write \`1000\`?
      1000 L

      1,5 L
      ^^^ value-invalid: \`1,5\`: the number has a decimal comma. Write \`1.5\`?
      1.5 L

      5-6 L
      ^^^^^ value-invalid: \`5-6 L\`: one amount belongs here, not a range.

      1e3 L
      ^^^ value-invalid: \`1e3\`: the number has an exponent. Write \`1000\`?
      1000 L

      20 L of rain
          ^^^^^^^^ value-invalid: \`of rain\`: nothing belongs after the unit.
      20 L

      20 L 5 mL
          ^^^^^ value-invalid: \`5 mL\`: one amount belongs here.

      L 20
      ^^^^ value-invalid: \`L 20\`: the number comes first, then the unit. Write \`20 L\`?
      20 L

      plenty
      ^^^^^^ value-invalid: \`plenty\`: this does not begin with a number.


       value-invalid: An amount is missing here.

      -5 L
      ^^ value-invalid: \`-5\`: a volume cannot be below zero. Write \`5\`?
      5 L

      1/0 L
      ^^^ value-invalid: \`1/0\`: a number cannot be divided by zero.
      "
    `);
  });

  test('a temperature may be below zero', () => {
    expect(parseQuantity('-3 °C', ['temperature']).kind).toBe('read');
  });

  test('zero is refused where the caller says so', () => {
    expect(draw('0 L', text => parseQuantity(text, ['volume'], { aboveZero: true }))).toMatchInlineSnapshot(`
      "
      0 L
      ^ value-invalid: \`0\`: this must be above zero.
      "
    `);
  });

  test('more than all of it is refused where the caller says so', () => {
    expect(draw('105 %', text => parseQuantity(text, ['fraction'], { atMost: 1 }))).toMatchInlineSnapshot(`
      "
      105 %
      ^^^ value-invalid: \`105\`: the most that can be meant here is 100 %.
      "
    `);
  });
});

describe('conversion', () => {
  test('a quantity is counted in any unit of its dimension', () => {
    expect(convert(fromUnit(2, unitOf('gal')), unitOf('qt'))).toBe(8);
    expect(convert(fromUnit(64.4, unitOf('°F')), unitOf('°C'))).toBe(18);
  });

  test('a unit of another dimension does not compile', () => {
    // @ts-expect-error a volume is not counted in centimetres
    expect(() => convert(fromUnit(2, unitOf('gal')), unitOf('cm'))).toThrow('volume is not counted in cm');
  });
});
