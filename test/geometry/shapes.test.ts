import { describe, expect, test } from 'vitest';
import { sources } from '../../schema/sources.ts';
import { type Shape, solidOf } from '../../server/geometry/shape.ts';
import { expectNear, type ReferenceRow, referenceRows } from '../reference-rows.ts';

interface GeometryReference extends ReferenceRow {
  readonly what: string;
  readonly shape: Shape;
  readonly level_cm: number;
  readonly volume_L: number;
}

describe('published and plain volumes', () => {
  test.each(referenceRows<GeometryReference>('geometry'))('$id: $what', row => {
    expectNear(solidOf(row.shape).volume_L(row.level_cm), row.volume_L, row.tolerance);
    expect(Object.keys(sources)).toContain(row.source);
  });
});

test('a tank of 109 L, harvested at 1.3 cm of 7.6 cm, has used 90.4 L', () => {
  const tank = solidOf({ kind: 'box', length_cm: 143.421, width_cm: 100, height_cm: 7.6 });
  expect(tank.volume_L(7.6) - tank.volume_L(1.3)).toBeCloseTo(90.4, 1);
});

test('a cone is as wide halfway up as the mean of its ends', () => {
  const pail = solidOf({ kind: 'cone', top_cm: 30, bottom_cm: 20, height_cm: 10 });
  expect(pail.area_cm2(5)).toBeCloseTo((Math.PI * 25 * 25) / 4, 12);
});

describe('a profile', () => {
  const jar = solidOf({
    kind: 'profile',
    points: [
      { at_cm: 0, area_cm2: 60 },
      { at_cm: 10, area_cm2: 100 },
      { at_cm: 12, area_cm2: 40 },
    ],
  });

  test('is the sum of trapezia', () => {
    expect(jar.volume_L(10)).toBe(0.8);
    expect(jar.volume_L(12)).toBe(0.94);
  });

  test('is cut between its points at the area found there', () => {
    expect(jar.area_cm2(5)).toBe(80);
    expect(jar.volume_L(5)).toBe(0.35);
    expect(jar.area_cm2(11)).toBe(70);
  });
});
