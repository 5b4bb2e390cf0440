// A round container whose walls lean evenly: a pail, a cup, a funnel. In geometry's own word, the frustum of a cone.

import { circle_cm2, cm3PerL, type Solid } from './solid.ts';

export interface Cone {
  readonly kind: 'cone';
  /** Inner diameter at the rim; it may be smaller than at the floor. */
  readonly top_cm: number;
  /** Inner diameter at the floor; 0 for a pointed cone. */
  readonly bottom_cm: number;
  readonly height_cm: number;
}

/** V = π h (D² + D d + d²) / 12, with the diameter at the level for D. */
export function cone({ top_cm, bottom_cm, height_cm }: Cone): Solid {
  const diameterAt = (at_cm: number) => bottom_cm + ((top_cm - bottom_cm) * at_cm) / height_cm;
  return {
    height_cm,
    area_cm2: at => circle_cm2(diameterAt(at)),
    volume_L: to => {
      const d = diameterAt(to);
      return (Math.PI * to * (d * d + d * bottom_cm + bottom_cm * bottom_cm)) / 12 / cm3PerL;
    },
    corners_cm: [0, height_cm],
  };
}
