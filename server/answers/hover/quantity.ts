// A written quantity in other units.

import type { Dimension } from '../../../schema/dimensions.ts';
import { type UnitSymbol, unitOf } from '../../../schema/find-unit.ts';
import { convert, parseQuantity } from '../../../schema/quantity.ts';
import { amountIn } from '../../words/amount.ts';
import { row } from './blocks.ts';

/** `20 L = 5.28 gal · 21.1 qt`; undefined where the text is no quantity or has no other unit of a handy size. */
export function conversions(text: string, accepted: readonly Dimension[]): string | undefined {
  const parsed = parseQuantity(text, accepted);
  if (parsed.kind === 'complaint') return undefined;
  const { value, unit } = parsed;
  const others = (handyUnits[value.dimension] ?? [])
    .map(symbol => unitOf(symbol))
    .filter(other => other.symbol !== unit.symbol);
  const handy = others.flatMap(other => {
    if (other.dimension !== value.dimension) return [];
    const size = Math.abs(convert(value, other));
    const isHandy = value.dimension === 'temperature' || (0.1 <= size && size < 10_000);
    return isHandy ? [amountIn(value, other).replace('_', ' ')] : [];
  });
  const said = row(...handy.slice(0, 4));
  return said === undefined ? undefined : `${text.trim()} = ${said}`;
}

/** The units in which growers think, the likeliest first. */
const handyUnits: Partial<Record<Dimension, readonly UnitSymbol[]>> = {
  volume: ['L', 'mL', 'gal', 'qt', 'fl_oz', 'tsp'],
  length: ['cm', 'mm', 'in'],
  area: ['cm2', 'in2'],
  mass: ['g', 'kg', 'mg', 'oz', 'lb'],
  duration: ['d', 'wk', 'h'],
  temperature: ['°C', '°F'],
  conductivity: ['mS/cm', 'µS/cm'],
  'volume-per-volume': ['mL/L', 'mL/gal', 'tsp/gal'],
  'mass-per-volume': ['mg/L', 'g/L', 'kg/L', 'g/gal'],
  'amount-per-volume': ['mmol/L', 'mol/L'],
  'charge-per-volume': ['meq/L', 'mg/L CaCO3', 'dKH', 'mg/L HCO3'],
  'volume-per-time': ['mL/d', 'L/d', 'L/wk', 'fl_oz/d'],
};
