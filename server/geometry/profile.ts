// A container of any other shape, by its area at some heights. Between them the area is taken to change evenly.

import { cm3PerL, type Solid } from './solid.ts';

export interface Profile {
  readonly kind: 'profile';
  /** From the floor, at 0 cm, to the rim, in ascending order. */
  readonly points: readonly ProfilePoint[];
}

export interface ProfilePoint {
  readonly at_cm: number;
  readonly area_cm2: number;
}

/** The integral of the area, exact for an area that changes evenly from point to point (trapezia). */
export function profile({ points }: Profile): Solid {
  const slices = points.slice(1).map((upper, index) => ({ lower: points[index] ?? upper, upper }));
  const height_cm = points.at(-1)?.at_cm ?? 0;
  return {
    height_cm,
    area_cm2: at => {
      const slice = slices.find(({ upper }) => at <= upper.at_cm) ?? slices.at(-1);
      return slice === undefined ? 0 : areaIn(slice, at);
    },
    volume_L: to => {
      let cm3 = 0;
      for (const slice of slices) {
        if (to <= slice.lower.at_cm) break;
        const top = Math.min(to, slice.upper.at_cm);
        cm3 += ((slice.lower.area_cm2 + areaIn(slice, top)) / 2) * (top - slice.lower.at_cm);
      }
      return cm3 / cm3PerL;
    },
    corners_cm: points.map(point => point.at_cm),
  };
}

interface Slice {
  readonly lower: ProfilePoint;
  readonly upper: ProfilePoint;
}

function areaIn({ lower, upper }: Slice, at_cm: number): number {
  if (at_cm === upper.at_cm) return upper.area_cm2;
  const share = (at_cm - lower.at_cm) / (upper.at_cm - lower.at_cm);
  return lower.area_cm2 + (upper.area_cm2 - lower.area_cm2) * share;
}
