// A round container with upright walls.

import { circle_cm2, cm3PerL, type Solid } from './solid.ts';

export interface Cylinder {
  readonly kind: 'cylinder';
  /** Inner diameter. */
  readonly diameter_cm: number;
  readonly height_cm: number;
}

/** V = π d² h / 4. */
export function cylinder({ diameter_cm, height_cm }: Cylinder): Solid {
  const area = circle_cm2(diameter_cm);
  return {
    height_cm,
    area_cm2: () => area,
    volume_L: to => (area * to) / cm3PerL,
    corners_cm: [0, height_cm],
  };
}
