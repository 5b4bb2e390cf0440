// A row per unit: how it is written, what it measures and its exact size. `a/b` units are derived from these rows in
// `find-unit.ts`, so a new unit is one row here.

import type { Dimension } from './dimensions.ts';
import type { SourceKey } from './sources.ts';

/**
 * One unit of this kind is `times / over` of the dimension's base unit. Whole numbers where the size is exact, so that 3 mm is
 * 0.3 cm and not 0.30000000000000004.
 */
interface UnitRow {
  readonly dimension: Dimension;
  readonly title: string;
  readonly times: number;
  readonly over: number;
  /** The reading on this scale at which the base scale reads zero; temperatures only. */
  readonly zero?: number;
  readonly system: System;
  readonly source: SourceKey;
  /** Other spellings that are read as this unit. Letter case is forgiven without a row. */
  readonly aliases: readonly string[];
  /** Read, but offered after all others. */
  readonly rare?: true;
  /** What a reader should know before trusting the unit. */
  readonly note?: string;
}

/** Whose unit it is; `any` is used everywhere. */
export type System = 'metric' | 'us' | 'imperial' | 'any';

// Conventional atomic weights, IUPAC 2021, g/mol.
const H = 1.008;
const C = 12.011;
const O = 15.999;
const Ca = 40.078;

// biome-ignore format: one unit a line reads as the table it is
export const units = {
  L: { dimension: 'volume', title: 'litre', times: 1, over: 1, system: 'metric', source: 'si', aliases: ['l', 'litre', 'litres', 'liter', 'liters'] },
  // `Ml` is what a phone makes of `ml`; other words that begin with a capital M could mean a million and are refused.
  mL: { dimension: 'volume', title: 'millilitre', times: 1, over: 1000, system: 'metric', source: 'si', aliases: ['ml', 'Ml', 'cm3', 'cc', 'millilitre', 'millilitres', 'milliliter', 'milliliters'] },
  µL: { dimension: 'volume', title: 'microlitre', times: 1, over: 1e6, system: 'metric', source: 'si', aliases: ['uL', 'microlitre', 'microlitres', 'microliter', 'microliters'], rare: true },
  m3: { dimension: 'volume', title: 'cubic metre', times: 1000, over: 1, system: 'metric', source: 'si', aliases: ['cubic metre', 'cubic metres', 'cubic meter', 'cubic meters'], rare: true },
  gal: { dimension: 'volume', title: 'US gallon', times: 3785411784, over: 1e9, system: 'us', source: 'nist-hb44', aliases: ['gallon', 'gallons', 'gals', 'gal_us', 'US gal', 'US gallon', 'US gallons'] },
  qt: { dimension: 'volume', title: 'US liquid quart', times: 946352946, over: 1e9, system: 'us', source: 'nist-hb44', aliases: ['qts', 'quart', 'quarts'] },
  pt: { dimension: 'volume', title: 'US liquid pint', times: 473176473, over: 1e9, system: 'us', source: 'nist-hb44', aliases: ['pts', 'pint', 'pints'] },
  cup: { dimension: 'volume', title: 'labelling cup', times: 240, over: 1000, system: 'us', source: 'cfr-21-101-9', aliases: ['cups'], note: 'the cup of 240 mL used on labels, not the 236.6 mL of a customary cup' },
  fl_oz: { dimension: 'volume', title: 'US fluid ounce', times: 295735295625, over: 1e13, system: 'us', source: 'nist-hb44', aliases: ['fl oz', 'fl. oz.', 'fl. oz', 'floz', 'fluid ounce', 'fluid ounces', 'US fl oz'] },
  tbsp: { dimension: 'volume', title: 'labelling tablespoon', times: 15, over: 1000, system: 'us', source: 'cfr-21-101-9', aliases: ['tbsps', 'tablespoon', 'tablespoons'], note: 'the tablespoon of 15 mL used on labels' },
  tsp: { dimension: 'volume', title: 'labelling teaspoon', times: 5, over: 1000, system: 'us', source: 'cfr-21-101-9', aliases: ['tsps', 'teaspoon', 'teaspoons'], note: 'the teaspoon of 5 mL used on labels, not the 4.93 mL of a customary one' },
  gal_imp: { dimension: 'volume', title: 'imperial gallon', times: 454609, over: 1e5, system: 'imperial', source: 'nist-sp-811', aliases: ['imp gal', 'imperial gallon', 'imperial gallons'] },
  pt_imp: { dimension: 'volume', title: 'imperial pint', times: 56826125, over: 1e8, system: 'imperial', source: 'nist-sp-811', aliases: ['imp pt', 'imperial pint', 'imperial pints'], rare: true },
  fl_oz_imp: { dimension: 'volume', title: 'imperial fluid ounce', times: 284130625, over: 1e10, system: 'imperial', source: 'nist-sp-811', aliases: ['imp fl oz', 'imperial fluid ounce', 'imperial fluid ounces'], rare: true },
  in3: { dimension: 'volume', title: 'cubic inch', times: 16387064, over: 1e9, system: 'us', source: 'nist-hb44', aliases: ['cu in', 'cubic inch', 'cubic inches'], rare: true },
  ft3: { dimension: 'volume', title: 'cubic foot', times: 28316846592, over: 1e9, system: 'us', source: 'nist-hb44', aliases: ['cu ft', 'cubic foot', 'cubic feet'], rare: true },

  cm: { dimension: 'length', title: 'centimetre', times: 1, over: 1, system: 'metric', source: 'si', aliases: ['centimetre', 'centimetres', 'centimeter', 'centimeters'] },
  mm: { dimension: 'length', title: 'millimetre', times: 1, over: 10, system: 'metric', source: 'si', aliases: ['millimetre', 'millimetres', 'millimeter', 'millimeters'] },
  m: { dimension: 'length', title: 'metre', times: 100, over: 1, system: 'metric', source: 'si', aliases: ['metre', 'metres', 'meter', 'meters'] },
  in: { dimension: 'length', title: 'inch', times: 254, over: 100, system: 'us', source: 'nist-hb44', aliases: ['inch', 'inches', '"', '″', '”'] },
  ft: { dimension: 'length', title: 'foot', times: 3048, over: 100, system: 'us', source: 'nist-hb44', aliases: ['foot', 'feet', "'", '′', '’'] },

  cm2: { dimension: 'area', title: 'square centimetre', times: 1, over: 1, system: 'metric', source: 'si', aliases: ['sq cm', 'square centimetres', 'square centimeters'] },
  m2: { dimension: 'area', title: 'square metre', times: 10000, over: 1, system: 'metric', source: 'si', aliases: ['sq m', 'square metres', 'square meters'], rare: true },
  in2: { dimension: 'area', title: 'square inch', times: 64516, over: 1e4, system: 'us', source: 'nist-hb44', aliases: ['sq in', 'square inch', 'square inches'] },
  ft2: { dimension: 'area', title: 'square foot', times: 9290304, over: 1e4, system: 'us', source: 'nist-hb44', aliases: ['sq ft', 'square foot', 'square feet'] },

  g: { dimension: 'mass', title: 'gram', times: 1, over: 1, system: 'metric', source: 'si', aliases: ['gram', 'grams', 'gramme', 'grammes'] },
  mg: { dimension: 'mass', title: 'milligram', times: 1, over: 1000, system: 'metric', source: 'si', aliases: ['milligram', 'milligrams'] },
  µg: { dimension: 'mass', title: 'microgram', times: 1, over: 1e6, system: 'metric', source: 'si', aliases: ['ug', 'mcg', 'microgram', 'micrograms'], rare: true },
  kg: { dimension: 'mass', title: 'kilogram', times: 1000, over: 1, system: 'metric', source: 'si', aliases: ['kilo', 'kilos', 'kilogram', 'kilograms'] },
  oz: { dimension: 'mass', title: 'avoirdupois ounce', times: 28349523125, over: 1e9, system: 'us', source: 'nist-hb44', aliases: ['ounce', 'ounces'] },
  lb: { dimension: 'mass', title: 'avoirdupois pound', times: 45359237, over: 1e5, system: 'us', source: 'nist-hb44', aliases: ['lbs', 'pound', 'pounds'] },

  d: { dimension: 'duration', title: 'day', times: 1, over: 1, system: 'any', source: 'si', aliases: ['day', 'days'] },
  wk: { dimension: 'duration', title: 'week', times: 7, over: 1, system: 'any', source: 'si', aliases: ['week', 'weeks', 'wks'] },
  h: { dimension: 'duration', title: 'hour', times: 1, over: 24, system: 'any', source: 'si', aliases: ['hr', 'hrs', 'hour', 'hours'] },
  min: { dimension: 'duration', title: 'minute', times: 1, over: 1440, system: 'any', source: 'si', aliases: ['mins', 'minute', 'minutes'], rare: true },

  '°C': { dimension: 'temperature', title: 'degree Celsius', times: 1, over: 1, system: 'metric', source: 'si', aliases: ['C', 'deg C', 'degC', 'celsius'] },
  '°F': { dimension: 'temperature', title: 'degree Fahrenheit', times: 5, over: 9, zero: 32, system: 'us', source: 'nist-sp-811', aliases: ['F', 'deg F', 'degF', 'fahrenheit'] },
  K: { dimension: 'temperature', title: 'kelvin', times: 1, over: 1, zero: 273.15, system: 'metric', source: 'si', aliases: ['kelvin'], rare: true },

  'mS/cm': { dimension: 'conductivity', title: 'millisiemens per centimetre', times: 1, over: 1, system: 'any', source: 'si', aliases: ['mmho/cm', 'mS'] },
  'µS/cm': { dimension: 'conductivity', title: 'microsiemens per centimetre', times: 1, over: 1000, system: 'any', source: 'si', aliases: ['uS/cm', 'µmho/cm', 'µS', 'uS'] },
  'dS/m': { dimension: 'conductivity', title: 'decisiemens per metre', times: 1, over: 1, system: 'any', source: 'si', aliases: [] },
  'S/m': { dimension: 'conductivity', title: 'siemens per metre', times: 10, over: 1, system: 'any', source: 'si', aliases: [], rare: true },

  '%': { dimension: 'fraction', title: 'per cent', times: 1, over: 100, system: 'any', source: 'si', aliases: ['percent', 'per cent', 'pct'] },

  ppm: { dimension: 'mass-per-volume', title: 'part per million, as milligram per litre', times: 1, over: 1, system: 'any', source: 'common-practice', aliases: [], note: 'read as mg/L, which holds for dilute solutions; a conductivity meter that shows ppm shows EC on a scale of its own', rare: true },

  'mmol/L': { dimension: 'amount-per-volume', title: 'millimole per litre', times: 1, over: 1, system: 'any', source: 'si', aliases: ['mM'] },
  'µmol/L': { dimension: 'amount-per-volume', title: 'micromole per litre', times: 1, over: 1000, system: 'any', source: 'si', aliases: ['umol/L', 'µM', 'uM'], rare: true },
  'mol/L': { dimension: 'amount-per-volume', title: 'mole per litre', times: 1000, over: 1, system: 'any', source: 'si', aliases: [] },

  'meq/L': { dimension: 'charge-per-volume', title: 'milliequivalent per litre', times: 1, over: 1, system: 'any', source: 'si', aliases: ['me/L'] },
  'mg/L CaCO3': { dimension: 'charge-per-volume', title: 'milligram per litre as calcium carbonate', times: 2, over: Ca + C + 3 * O, system: 'any', source: 'ciaaw-2021', aliases: ['mg/L as CaCO3', 'mg CaCO3/L'] },
  'ppm CaCO3': { dimension: 'charge-per-volume', title: 'part per million as calcium carbonate', times: 2, over: Ca + C + 3 * O, system: 'any', source: 'ciaaw-2021', aliases: ['ppm as CaCO3'], rare: true },
  dKH: { dimension: 'charge-per-volume', title: 'German degree, 10 mg/L as calcium oxide', times: 20, over: Ca + O, system: 'any', source: 'common-practice', aliases: ['°dKH', '°dH', 'dH', '°KH', 'KH'] },
  'mg/L HCO3': { dimension: 'charge-per-volume', title: 'milligram per litre as hydrogencarbonate', times: 1, over: H + C + 3 * O, system: 'any', source: 'ciaaw-2021', aliases: ['mg/L as HCO3', 'mg/L HCO3-', 'mg HCO3/L', 'ppm HCO3'] },

  'mol/m2/d': { dimension: 'light', title: 'mole of photons per square metre and day', times: 1, over: 1, system: 'any', source: 'si', aliases: ['mol/m2/day', 'mol/m2d', 'mol/(m2 d)', 'mol m-2 d-1', 'mol/d/m2'] },

  'g/mol': { dimension: 'mass-per-amount', title: 'gram per mole', times: 1, over: 1, system: 'any', source: 'si', aliases: [] },

  pH: { dimension: 'pH', title: 'pH', times: 1, over: 1, system: 'any', source: 'iupac-green-book', aliases: [] },
} as const satisfies Record<string, UnitRow>;

export type SimpleSymbol = keyof typeof units;

/** The rows as plain rows, for those who walk over all of them. */
export const unitRows: readonly (readonly [SimpleSymbol, UnitRow])[] = Object.entries(units) as [
  SimpleSymbol,
  UnitRow,
][];
