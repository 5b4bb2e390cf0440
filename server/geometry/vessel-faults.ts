// Why a container as described cannot exist, or cannot hold its net cups. Each fault names the key at which it is written.

import { netCup } from './net-cup.ts';
import type { ProfilePoint } from './profile.ts';
import { type Shape, solidOf } from './shape.ts';
import type { VesselSpec } from './vessel.ts';

export interface Fault {
  /** The way from the container's entry to the value at fault, as a recipe writes it. */
  readonly at: readonly (string | number)[];
  /** What is wrong, as a sentence without its full stop. */
  readonly says: string;
  /** Of cups that do not go in: which way. */
  readonly cups?: 'too-deep' | 'too-wide';
}

/** All faults of a description; none where the vessel can be built. */
export function vesselFaults(spec: VesselSpec): readonly Fault[] {
  const ofParts = [...shapeFaults(spec.shape), ...cupSizeFaults(spec)];
  // Whether the cup fits can only be asked of a container and a cup that exist.
  return ofParts.length === 0 ? fitFaults(spec) : ofParts;
}

function shapeFaults(shape: Shape): readonly Fault[] {
  switch (shape.kind) {
    case 'cylinder':
      return [
        ...tooSmall(['inside', 'cylinder', 'diameter'], 'the diameter', shape.diameter_cm),
        ...tooSmall(['inside', 'cylinder', 'height'], 'the height', shape.height_cm),
      ];
    case 'box':
      return [
        ...tooSmall(['inside', 'box', 'length'], 'the length', shape.length_cm),
        ...tooSmall(['inside', 'box', 'width'], 'the width', shape.width_cm),
        ...tooSmall(['inside', 'box', 'height'], 'the height', shape.height_cm),
      ];
    case 'cone':
      return [
        ...coneEnds(['inside', 'cone'], shape.top_cm, shape.bottom_cm),
        ...tooSmall(['inside', 'cone', 'height'], 'the height', shape.height_cm),
      ];
    case 'profile':
      return profileFaults(shape.points);
  }
}

function profileFaults(points: readonly ProfilePoint[]): readonly Fault[] {
  const at = ['inside', 'profile'];
  if (points.length < 2) return [{ at, says: 'a profile needs two heights at least, the floor and the rim' }];
  return points.flatMap((point, index) => {
    const before = points[index - 1];
    const faults: Fault[] = [];
    if (before === undefined && point.at_cm !== 0) {
      faults.push({ at: [...at, 0, 'at'], says: 'a profile begins at the floor, at 0 cm' });
    }
    if (before !== undefined && !(before.at_cm < point.at_cm)) {
      faults.push({ at: [...at, index, 'at'], says: 'the heights of a profile rise from one to the next' });
    }
    if (!(0 <= point.area_cm2) || !Number.isFinite(point.area_cm2)) {
      faults.push({ at: [...at, index, 'area'], says: 'an area cannot be below zero' });
    }
    if (before !== undefined && before.area_cm2 === 0 && point.area_cm2 === 0) {
      faults.push({ at: [...at, index, 'area'], says: 'nothing fits between two areas of zero' });
    }
    return faults;
  });
}

function cupSizeFaults({ netCup: cup, netCups = 1 }: VesselSpec): readonly Fault[] {
  if (!Number.isInteger(netCups) || netCups < 0) {
    return [{ at: ['net-cup'], says: 'the number of net cups is a whole number' }];
  }
  if (cup === undefined) return [];
  return [
    ...tooSmall(['net-cup', 'depth'], 'the depth', cup.depth_cm),
    ...coneEnds(['net-cup'], cup.top_cm, cup.bottom_cm),
  ];
}

function fitFaults({ shape, netCup: cup, netCups = 1 }: VesselSpec): readonly Fault[] {
  if (cup === undefined || netCups === 0) return [];
  const inside = solidOf(shape);
  const line_cm = inside.height_cm - cup.depth_cm;
  if (line_cm <= 0) {
    return [{ at: ['net-cup', 'depth'], says: 'the net cup reaches the floor of its container', cups: 'too-deep' }];
  }
  const one = netCup(cup);
  const free_cm2 = (at: number) => inside.area_cm2(at) - netCups * one.area_cm2(at - line_cm);
  const corners = [line_cm, ...inside.corners_cm.filter(at => line_cm < at)];
  const fits = corners.slice(1).every((upper, index) => {
    const lower = corners[index] ?? line_cm;
    const middle = free_cm2((lower + upper) / 2);
    return 0 < middle && -tolerance_cm2 <= least(free_cm2(lower), middle, free_cm2(upper));
  });
  if (fits) return [];
  const cups = netCups === 1 ? 'the net cup is' : `${netCups} net cups are`;
  return [{ at: ['net-cup', 'top'], says: `${cups} wider than the container`, cups: 'too-wide' }];
}

/** A cup as wide as the mouth it hangs in fits, rounding or not. */
const tolerance_cm2 = 1e-9;

/** The least value of the parabola through three points at equal distances, between the outer two. */
function least(first: number, middle: number, last: number): number {
  const bend = first - 2 * middle + last;
  const slope = (last - first) / 2;
  const ends = Math.min(first, last);
  if (bend <= 0 || bend <= Math.abs(slope)) return ends;
  return Math.min(ends, middle - (slope * slope) / (2 * bend));
}

/** One end of a cone may be a point, both may not. */
function coneEnds(at: readonly string[], top_cm: number, bottom_cm: number): readonly Fault[] {
  const bottom = bottom_cm === 0 && 0 < top_cm ? [] : tooSmall([...at, 'bottom'], 'the bottom diameter', bottom_cm);
  const top = top_cm === 0 && 0 < bottom_cm ? [] : tooSmall([...at, 'top'], 'the top diameter', top_cm);
  return [...top, ...bottom];
}

function tooSmall(at: readonly string[], what: string, size_cm: number): readonly Fault[] {
  if (0 < size_cm && Number.isFinite(size_cm)) return [];
  return [{ at, says: `${what} must be above zero` }];
}
