import { expect, test } from 'vitest';
import type { Shape } from '../../server/geometry/shape.ts';
import type { VesselSpec } from '../../server/geometry/vessel.ts';
import { vesselFaults } from '../../server/geometry/vessel-faults.ts';

const crock: Shape = { kind: 'cylinder', diameter_cm: 14, height_cm: 20 };
const cup = { depth_cm: 6, top_cm: 7, bottom_cm: 5 };

const faults = (spec: VesselSpec) => vesselFaults(spec).map(({ at, says }) => `${at.join('/')}: ${says}`);

test('a crock with a net cup has none', () => {
  expect(faults({ shape: crock, netCup: cup })).toEqual([]);
});

test('a container of no height is refused', () => {
  expect(faults({ shape: { ...crock, height_cm: 0 } })).toEqual([
    'inside/cylinder/height: the height must be above zero',
  ]);
});

test('every size that cannot be is named', () => {
  expect(
    faults({ shape: { kind: 'box', length_cm: -1, width_cm: Number.NaN, height_cm: Number.POSITIVE_INFINITY } }),
  ).toEqual([
    'inside/box/length: the length must be above zero',
    'inside/box/width: the width must be above zero',
    'inside/box/height: the height must be above zero',
  ]);
});

test.each([6, 8])('a net cup of %d cm in a container of 6 cm is refused', depth_cm => {
  expect(faults({ shape: { ...crock, height_cm: 6 }, netCup: { ...cup, depth_cm } })).toEqual([
    'net-cup/depth: the net cup reaches the floor of its container',
  ]);
});

test('a net cup wider than its container is refused', () => {
  expect(faults({ shape: crock, netCup: { ...cup, top_cm: 15 } })).toEqual([
    'net-cup/top: the net cup is wider than the container',
  ]);
});

test('a net cup as wide as the mouth it hangs in fits', () => {
  expect(faults({ shape: crock, netCup: { ...cup, top_cm: 14 } })).toEqual([]);
});

test('a net cup that fills its container from wall to wall is refused', () => {
  expect(faults({ shape: crock, netCup: { ...cup, top_cm: 14, bottom_cm: 14 } })).toHaveLength(1);
});

test('more net cups than there is room for are refused', () => {
  expect(faults({ shape: crock, netCup: cup, netCups: 5 })).toEqual([
    'net-cup/top: 5 net cups are wider than the container',
  ]);
});

test('a neck narrower than the cup below the rim is found', () => {
  const points = [
    { at_cm: 0, area_cm2: 150 },
    { at_cm: 15, area_cm2: 20 },
    { at_cm: 20, area_cm2: 150 },
  ];
  expect(faults({ shape: { kind: 'profile', points }, netCup: cup })).toHaveLength(1);
});

test('a pointed cone is a shape, a line is none', () => {
  expect(faults({ shape: { kind: 'cone', top_cm: 10, bottom_cm: 0, height_cm: 10 } })).toEqual([]);
  expect(faults({ shape: { kind: 'cone', top_cm: 0, bottom_cm: 0, height_cm: 10 } })).toHaveLength(2);
});

test('a profile begins at the floor, rises, and has room', () => {
  const points = [
    { at_cm: 1, area_cm2: 0 },
    { at_cm: 5, area_cm2: 0 },
    { at_cm: 5, area_cm2: -2 },
  ];
  expect(faults({ shape: { kind: 'profile', points } })).toEqual([
    'inside/profile/0/at: a profile begins at the floor, at 0 cm',
    'inside/profile/1/area: nothing fits between two areas of zero',
    'inside/profile/2/at: the heights of a profile rise from one to the next',
    'inside/profile/2/area: an area cannot be below zero',
  ]);
  expect(faults({ shape: { kind: 'profile', points: [] } })).toEqual([
    'inside/profile: a profile needs two heights at least, the floor and the rim',
  ]);
});
