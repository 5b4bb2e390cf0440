// Laws of level and volume, for containers of every shape with and without net cups.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Shape, solidOf } from '../../server/geometry/shape.ts';
import {
  buildVessel,
  displacedAt,
  levelAt,
  surfaceAt,
  type Vessel,
  type VesselSpec,
  volumeAt,
} from '../../server/geometry/vessel.ts';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const shapes: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('cylinder' as const), diameter_cm: size(2, 100), height_cm: size(2, 100) }),
  fc.record({
    kind: fc.constant('box' as const),
    length_cm: size(2, 200),
    width_cm: size(2, 200),
    height_cm: size(2, 100),
  }),
  fc.record({
    kind: fc.constant('cone' as const),
    top_cm: size(2, 100),
    bottom_cm: size(0, 100),
    height_cm: size(2, 100),
  }),
  fc
    .array(fc.record({ rise_cm: size(0.5, 30), area_cm2: size(5, 5000) }), { minLength: 2, maxLength: 6 })
    .map(steps => ({
      kind: 'profile' as const,
      points: steps.map(({ area_cm2 }, index) => ({
        at_cm: steps.slice(1, index + 1).reduce((sum, step) => sum + step.rise_cm, 0),
        area_cm2,
      })),
    })),
);

const specs: fc.Arbitrary<VesselSpec> = fc
  .record({
    shape: shapes,
    netCup: fc.record({ depth_cm: size(1, 20), top_cm: size(1, 20), bottom_cm: size(0, 20) }),
    netCups: fc.integer({ min: 0, max: 6 }),
  })
  .filter(spec => buildVessel(spec).kind === 'vessel');

const vessels: fc.Arbitrary<Vessel> = specs.map(spec => {
  const built = buildVessel(spec);
  if (built.kind === 'faulty') throw new Error('filtered above');
  return built.vessel;
});

const share = size(0, 1);

describe('laws of level and volume', () => {
  test('a volume put in stands at a level that holds that volume', () => {
    fc.assert(
      fc.property(vessels, share, (vessel, part) => {
        const volume_L = vessel.brimful_L * part;
        const there = volumeAt(vessel, levelAt(vessel, volume_L));
        expect(Math.abs(there - volume_L)).toBeLessThanOrEqual(1e-12 * vessel.brimful_L);
      }),
      { numRuns: 500 },
    );
  });

  test('a level holds a volume that stands at that level, wherever the surface has an area to speak of', () => {
    fc.assert(
      fc.property(vessels, share, (vessel, part) => {
        const level_cm = vessel.height_cm * part;
        // Where the cup all but fills the mouth, or a cone ends in a point, a drop is a wide step of level.
        const drop_cm = (1e-12 * vessel.brimful_L * 1000) / surfaceAt(vessel, level_cm);
        fc.pre(drop_cm < 1e-9);
        const back = levelAt(vessel, volumeAt(vessel, level_cm));
        expect(Math.abs(back - level_cm)).toBeLessThanOrEqual(1e-12 * vessel.height_cm + 10 * drop_cm);
      }),
      { numRuns: 500 },
    );
  });

  test('more solution never stands lower', () => {
    fc.assert(
      fc.property(vessels, share, share, (vessel, a, b) => {
        const [less, more] = a < b ? [a, b] : [b, a];
        const slack = 1e-12;
        expect(volumeAt(vessel, vessel.height_cm * less)).toBeLessThanOrEqual(
          volumeAt(vessel, vessel.height_cm * more) + slack * vessel.brimful_L,
        );
        expect(levelAt(vessel, vessel.brimful_L * less)).toBeLessThanOrEqual(
          levelAt(vessel, vessel.brimful_L * more) + slack * vessel.height_cm,
        );
      }),
    );
  });

  test('solution and wet cup together fill the inside below the level', () => {
    fc.assert(
      fc.property(vessels, share, (vessel, part) => {
        const level_cm = vessel.height_cm * part;
        const together = volumeAt(vessel, level_cm) + displacedAt(vessel, level_cm);
        const inside = vessel.inside.volume_L(level_cm);
        expect(Math.abs(together - inside)).toBeLessThanOrEqual(1e-13 * Math.max(inside, vessel.brimful_L));
      }),
    );
  });

  test('the cups displace no more than they are', () => {
    fc.assert(
      fc.property(vessels, vessel => {
        const { netCups } = vessel;
        const whole = netCups === undefined ? 0 : netCups.count * netCups.one.volume_L(netCups.one.height_cm);
        expect(displacedAt(vessel, vessel.height_cm)).toBeCloseTo(whole, 10);
      }),
    );
  });
});

describe('laws of shapes', () => {
  test('a cone as wide above as below is a cylinder', () => {
    fc.assert(
      fc.property(size(2, 100), size(2, 100), share, (diameter_cm, height_cm, part) => {
        const cone = solidOf({ kind: 'cone', top_cm: diameter_cm, bottom_cm: diameter_cm, height_cm });
        const cylinder = solidOf({ kind: 'cylinder', diameter_cm, height_cm });
        const at = height_cm * part;
        expect(Math.abs(cone.volume_L(at) - cylinder.volume_L(at))).toBeLessThanOrEqual(
          1e-13 * cylinder.volume_L(height_cm),
        );
      }),
    );
  });

  test('a profile of one area is a cylinder', () => {
    fc.assert(
      fc.property(size(2, 100), size(2, 100), share, share, (diameter_cm, height_cm, part, cut) => {
        fc.pre(0 < cut && cut < 1);
        const cylinder = solidOf({ kind: 'cylinder', diameter_cm, height_cm });
        const area_cm2 = cylinder.area_cm2(0);
        const points = [0, height_cm * cut, height_cm].map(at_cm => ({ at_cm, area_cm2 }));
        fc.pre(0 < height_cm * cut && height_cm * cut < height_cm);
        const profile = solidOf({ kind: 'profile', points });
        const at = height_cm * part;
        expect(Math.abs(profile.volume_L(at) - cylinder.volume_L(at))).toBeLessThanOrEqual(
          1e-12 * cylinder.volume_L(height_cm),
        );
      }),
    );
  });

  test('a profile with many heights comes near a cone, by the square of their distance', () => {
    const cone = solidOf({ kind: 'cone', top_cm: 30, bottom_cm: 10, height_cm: 24 });
    const error = (steps: number) => {
      const points = Array.from({ length: steps + 1 }, (_, step) => (24 * step) / steps).map(at_cm => ({
        at_cm,
        area_cm2: cone.area_cm2(at_cm),
      }));
      return solidOf({ kind: 'profile', points }).volume_L(24) - cone.volume_L(24);
    };
    expect(error(10) / error(20)).toBeCloseTo(4, 6);
    expect(error(100) / cone.volume_L(24)).toBeLessThan(1e-4);
  });

  test('the area is how fast the volume grows', () => {
    fc.assert(
      fc.property(shapes, size(0.05, 0.95), (shape, part) => {
        const solid = solidOf(shape);
        const at = solid.height_cm * part;
        const step = solid.height_cm * 1e-5;
        fc.pre(solid.corners_cm.every(corner => step < Math.abs(corner - at)));
        const slope_cm2 = ((solid.volume_L(at + step) - solid.volume_L(at - step)) * 1000) / (2 * step);
        expect(Math.abs(slope_cm2 / solid.area_cm2(at) - 1)).toBeLessThan(1e-5);
      }),
    );
  });
});
