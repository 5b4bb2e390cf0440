// Standard atomic weights. Separate because every mass in a recipe rests on these rows and on nothing else.

import type { SourceKey } from '../../../schema/sources.ts';

interface ElementRow {
  readonly name: string;
  /** Abridged standard atomic weight, g/mol; the conventional value where the standard is an interval. */
  readonly weight: number;
  readonly source: SourceKey;
}

/** Every element that has a standard atomic weight, by symbol. */
export const elements = {
  H: { name: 'hydrogen', weight: 1.008, source: 'ciaaw-2021' },
  He: { name: 'helium', weight: 4.0026, source: 'ciaaw-2021' },
  Li: { name: 'lithium', weight: 6.94, source: 'ciaaw-2021' },
  Be: { name: 'beryllium', weight: 9.0122, source: 'ciaaw-2021' },
  B: { name: 'boron', weight: 10.81, source: 'ciaaw-2021' },
  C: { name: 'carbon', weight: 12.011, source: 'ciaaw-2021' },
  N: { name: 'nitrogen', weight: 14.007, source: 'ciaaw-2021' },
  O: { name: 'oxygen', weight: 15.999, source: 'ciaaw-2021' },
  F: { name: 'fluorine', weight: 18.998, source: 'ciaaw-2021' },
  Ne: { name: 'neon', weight: 20.18, source: 'ciaaw-2021' },
  Na: { name: 'sodium', weight: 22.99, source: 'ciaaw-2021' },
  Mg: { name: 'magnesium', weight: 24.305, source: 'ciaaw-2021' },
  Al: { name: 'aluminium', weight: 26.982, source: 'ciaaw-2021' },
  Si: { name: 'silicon', weight: 28.085, source: 'ciaaw-2021' },
  P: { name: 'phosphorus', weight: 30.974, source: 'ciaaw-2021' },
  S: { name: 'sulfur', weight: 32.06, source: 'ciaaw-2021' },
  Cl: { name: 'chlorine', weight: 35.45, source: 'ciaaw-2021' },
  Ar: { name: 'argon', weight: 39.95, source: 'ciaaw-2021' },
  K: { name: 'potassium', weight: 39.098, source: 'ciaaw-2021' },
  Ca: { name: 'calcium', weight: 40.078, source: 'ciaaw-2021' },
  Sc: { name: 'scandium', weight: 44.956, source: 'ciaaw-2021' },
  Ti: { name: 'titanium', weight: 47.867, source: 'ciaaw-2021' },
  V: { name: 'vanadium', weight: 50.942, source: 'ciaaw-2021' },
  Cr: { name: 'chromium', weight: 51.996, source: 'ciaaw-2021' },
  Mn: { name: 'manganese', weight: 54.938, source: 'ciaaw-2021' },
  Fe: { name: 'iron', weight: 55.845, source: 'ciaaw-2021' },
  Co: { name: 'cobalt', weight: 58.933, source: 'ciaaw-2021' },
  Ni: { name: 'nickel', weight: 58.693, source: 'ciaaw-2021' },
  Cu: { name: 'copper', weight: 63.546, source: 'ciaaw-2021' },
  Zn: { name: 'zinc', weight: 65.38, source: 'ciaaw-2021' },
  Ga: { name: 'gallium', weight: 69.723, source: 'ciaaw-2021' },
  Ge: { name: 'germanium', weight: 72.63, source: 'ciaaw-2021' },
  As: { name: 'arsenic', weight: 74.922, source: 'ciaaw-2021' },
  Se: { name: 'selenium', weight: 78.971, source: 'ciaaw-2021' },
  Br: { name: 'bromine', weight: 79.904, source: 'ciaaw-2021' },
  Kr: { name: 'krypton', weight: 83.798, source: 'ciaaw-2021' },
  Rb: { name: 'rubidium', weight: 85.468, source: 'ciaaw-2021' },
  Sr: { name: 'strontium', weight: 87.62, source: 'ciaaw-2021' },
  Y: { name: 'yttrium', weight: 88.906, source: 'ciaaw-2021' },
  Zr: { name: 'zirconium', weight: 91.224, source: 'ciaaw-2021' },
  Nb: { name: 'niobium', weight: 92.906, source: 'ciaaw-2021' },
  Mo: { name: 'molybdenum', weight: 95.95, source: 'ciaaw-2021' },
  Ru: { name: 'ruthenium', weight: 101.07, source: 'ciaaw-2021' },
  Rh: { name: 'rhodium', weight: 102.91, source: 'ciaaw-2021' },
  Pd: { name: 'palladium', weight: 106.42, source: 'ciaaw-2021' },
  Ag: { name: 'silver', weight: 107.87, source: 'ciaaw-2021' },
  Cd: { name: 'cadmium', weight: 112.41, source: 'ciaaw-2021' },
  In: { name: 'indium', weight: 114.82, source: 'ciaaw-2021' },
  Sn: { name: 'tin', weight: 118.71, source: 'ciaaw-2021' },
  Sb: { name: 'antimony', weight: 121.76, source: 'ciaaw-2021' },
  Te: { name: 'tellurium', weight: 127.6, source: 'ciaaw-2021' },
  I: { name: 'iodine', weight: 126.9, source: 'ciaaw-2021' },
  Xe: { name: 'xenon', weight: 131.29, source: 'ciaaw-2021' },
  Cs: { name: 'caesium', weight: 132.91, source: 'ciaaw-2021' },
  Ba: { name: 'barium', weight: 137.33, source: 'ciaaw-2021' },
  La: { name: 'lanthanum', weight: 138.91, source: 'ciaaw-2021' },
  Ce: { name: 'cerium', weight: 140.12, source: 'ciaaw-2021' },
  Pr: { name: 'praseodymium', weight: 140.91, source: 'ciaaw-2021' },
  Nd: { name: 'neodymium', weight: 144.24, source: 'ciaaw-2021' },
  Sm: { name: 'samarium', weight: 150.36, source: 'ciaaw-2021' },
  Eu: { name: 'europium', weight: 151.96, source: 'ciaaw-2021' },
  Gd: { name: 'gadolinium', weight: 157.25, source: 'ciaaw-2021' },
  Tb: { name: 'terbium', weight: 158.93, source: 'ciaaw-2021' },
  Dy: { name: 'dysprosium', weight: 162.5, source: 'ciaaw-2021' },
  Ho: { name: 'holmium', weight: 164.93, source: 'ciaaw-2021' },
  Er: { name: 'erbium', weight: 167.26, source: 'ciaaw-2021' },
  Tm: { name: 'thulium', weight: 168.93, source: 'ciaaw-2021' },
  Yb: { name: 'ytterbium', weight: 173.05, source: 'ciaaw-2021' },
  Lu: { name: 'lutetium', weight: 174.97, source: 'ciaaw-2021' },
  Hf: { name: 'hafnium', weight: 178.49, source: 'ciaaw-2021' },
  Ta: { name: 'tantalum', weight: 180.95, source: 'ciaaw-2021' },
  W: { name: 'tungsten', weight: 183.84, source: 'ciaaw-2021' },
  Re: { name: 'rhenium', weight: 186.21, source: 'ciaaw-2021' },
  Os: { name: 'osmium', weight: 190.23, source: 'ciaaw-2021' },
  Ir: { name: 'iridium', weight: 192.22, source: 'ciaaw-2021' },
  Pt: { name: 'platinum', weight: 195.08, source: 'ciaaw-2021' },
  Au: { name: 'gold', weight: 196.97, source: 'ciaaw-2021' },
  Hg: { name: 'mercury', weight: 200.59, source: 'ciaaw-2021' },
  Tl: { name: 'thallium', weight: 204.38, source: 'ciaaw-2021' },
  Pb: { name: 'lead', weight: 207.2, source: 'ciaaw-2021' },
  Bi: { name: 'bismuth', weight: 208.98, source: 'ciaaw-2021' },
  Th: { name: 'thorium', weight: 232.04, source: 'ciaaw-2021' },
  Pa: { name: 'protactinium', weight: 231.04, source: 'ciaaw-2021' },
  U: { name: 'uranium', weight: 238.03, source: 'ciaaw-2021' },
} as const satisfies Record<string, ElementRow>;

export type ElementSymbol = keyof typeof elements;

/** Amounts of elements, by symbol; an element that is absent is zero. */
export type ElementCounts = Readonly<Partial<Record<ElementSymbol, number>>>;

export function isElement(symbol: string): symbol is ElementSymbol {
  return Object.hasOwn(elements, symbol);
}

/** The element counts as [symbol, count] pairs, zeros included. */
export function elementEntries(counts: ElementCounts): readonly (readonly [ElementSymbol, number])[] {
  return Object.entries(counts).filter((entry): entry is [ElementSymbol, number] => isElement(entry[0]));
}

/** The mass of one mole of these elements, g/mol. */
export function molarMass(counts: ElementCounts): number {
  return elementEntries(counts).reduce((mass, [symbol, count]) => mass + count * elements[symbol].weight, 0);
}
