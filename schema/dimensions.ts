// The kinds of quantity a recipe can state, and the unit in which the core counts each.

/** A row per dimension: what a grower calls it, the unit its numbers are kept in, and an example to write. */
export const dimensions = {
  volume: { title: 'a volume', base: 'L', example: '20 L' },
  length: { title: 'a length', base: 'cm', example: '14 cm' },
  area: { title: 'an area', base: 'cm2', example: '60 cm2' },
  mass: { title: 'a mass', base: 'g', example: '25 g' },
  duration: { title: 'a duration', base: 'd', example: '14 d' },
  temperature: { title: 'a temperature', base: '°C', example: '18 °C' },
  conductivity: { title: 'a conductivity', base: 'mS/cm', example: '1.2 mS/cm' },
  fraction: { title: 'a share', base: '1', example: '5 %' },
  'volume-per-volume': { title: 'a rate by volume', base: 'mL/L', example: '2 mL/L' },
  'mass-per-volume': { title: 'a mass per volume', base: 'mg/L', example: '46 mg/L' },
  'amount-per-volume': { title: 'an amount per volume', base: 'mmol/L', example: '1.2 mmol/L' },
  'charge-per-volume': { title: 'an alkalinity or charge per volume', base: 'meq/L', example: '140 mg/L CaCO3' },
  'volume-per-time': { title: 'a use rate', base: 'mL/d', example: '55 mL/d' },
  light: { title: 'a daily light integral', base: 'mol/m2/d', example: '14 mol/m2/d' },
  'mass-per-amount': { title: 'a molar mass', base: 'g/mol', example: '101.1 g/mol' },
  number: { title: 'a number', base: '1', example: '3' },
  pH: { title: 'a pH', base: 'pH', example: '-0.6 pH' },
} as const satisfies Record<string, { title: string; base: string; example: string }>;

export type Dimension = keyof typeof dimensions;
