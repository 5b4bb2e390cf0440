import { describe, expect, test } from 'vitest';
import {
  buildVessel,
  displacedAt,
  levelAt,
  surfaceAt,
  type Vessel,
  type VesselSpec,
  volumeAt,
} from '../../server/geometry/vessel.ts';

function vesselOf(spec: VesselSpec): Vessel {
  const built = buildVessel(spec);
  if (built.kind === 'faulty') throw new Error(built.faults.map(fault => fault.says).join('; '));
  return built.vessel;
}

const crock = vesselOf({
  shape: { kind: 'cylinder', diameter_cm: 14, height_cm: 20 },
  netCup: { depth_cm: 6, top_cm: 7, bottom_cm: 5 },
});

describe('a crock with a net cup', () => {
  test('has the net-cup line where the cup ends, and no displacement below it', () => {
    expect(crock.netCups?.line_cm).toBe(14);
    expect(crock.netCups?.line_L).toBeCloseTo((Math.PI * 49 * 14) / 1000, 12);
    expect(displacedAt(crock, 14)).toBe(0);
  });

  test('is brimful with less than its inside by the whole cup', () => {
    const cup_L = (Math.PI * 6 * (49 + 35 + 25)) / 12 / 1000;
    expect(crock.brimful_L).toBeCloseTo((Math.PI * 49 * 20) / 1000 - cup_L, 12);
    expect(volumeAt(crock, 20)).toBeCloseTo(crock.brimful_L, 12);
  });

  test('has a smaller surface where the cup is wet', () => {
    expect(surfaceAt(crock, 10)).toBeCloseTo(Math.PI * 49, 12);
    expect(surfaceAt(crock, 14.5)).toBeCloseTo(Math.PI * 49 - (Math.PI * (5 + 1 / 6) ** 2) / 4, 12);
  });

  test('stands at the rim with more than it holds, at the floor with nothing', () => {
    expect(levelAt(crock, 99)).toBe(20);
    expect(levelAt(crock, 0)).toBe(0);
    expect(levelAt(crock, -1)).toBe(0);
  });

  test('counts a level outside as its floor or its rim', () => {
    expect(volumeAt(crock, -3)).toBe(0);
    expect(volumeAt(crock, 30)).toBe(crock.brimful_L);
  });
});

test('the lower 3 cm of a net cup 7.6 cm deep displace 71.8 mL', () => {
  const tub = vesselOf({
    shape: { kind: 'box', length_cm: 30, width_cm: 30, height_cm: 20 },
    netCup: { depth_cm: 7.6, top_cm: 7.6, bottom_cm: 5 },
  });
  expect(displacedAt(tub, 12.4 + 3) * 1000).toBeCloseTo(71.8, 1);
});

test('several net cups displace as often', () => {
  const shape = { kind: 'box', length_cm: 40, width_cm: 30, height_cm: 20 } as const;
  const netCup = { depth_cm: 6, top_cm: 7, bottom_cm: 5 };
  const [one, six] = [vesselOf({ shape, netCup }), vesselOf({ shape, netCup, netCups: 6 })];
  expect(displacedAt(six, 18)).toBeCloseTo(6 * displacedAt(one, 18), 12);
});

test('without a net cup nothing is displaced, and there is no line', () => {
  const pail = vesselOf({ shape: { kind: 'cone', top_cm: 28.6, bottom_cm: 26.2, height_cm: 33 }, netCups: 0 });
  expect(pail.netCups).toBeUndefined();
  expect(pail.brimful_L).toBeCloseTo(19.47, 2);
});
