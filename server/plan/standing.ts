// Where a figure stands to a band: below it, in it or above it.

import type { Dimension } from '../../schema/dimensions.ts';
import type { Range } from '../../schema/range.ts';
import type { Known } from './figure.ts';

export type Standing = 'below' | 'in' | 'above';

/** The ends belong to the band; a figure that misses an end by the noise of computing is in it. */
export function standing<D extends Dimension>({ quantity }: Pick<Known<D>, 'quantity'>, band: Range<D>): Standing {
  const slack = 1e-9 * Math.max(Math.abs(band.low), Math.abs(band.high));
  if (quantity.value < band.low - slack) return 'below';
  return band.high + slack < quantity.value ? 'above' : 'in';
}
