// A rectangular container with upright walls.

import { cm3PerL, type Solid } from './solid.ts';

export interface Box {
  readonly kind: 'box';
  readonly length_cm: number;
  readonly width_cm: number;
  readonly height_cm: number;
}

/** V = l w h. */
export function box({ length_cm, width_cm, height_cm }: Box): Solid {
  const area = length_cm * width_cm;
  return {
    height_cm,
    area_cm2: () => area,
    volume_L: to => (area * to) / cm3PerL,
    corners_cm: [0, height_cm],
  };
}
