import { expect, test, vi } from 'vitest';
import * as courses from '../../server/plan/drawdown.ts';
import { isForecast, seasonOf } from '../../server/plan/season.ts';
import { recipe } from '../recipe.ts';

test('a check goes through the days once; what would be without top-ups waits until somebody asks', () => {
  const drawDown = vi.spyOn(courses, 'drawDown');
  const { plan, findings } = recipe`
    recipe: 1
    waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
    feeds: { salt: { formula: KNO3 } }
    containers: { pot: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } }, opaque: true } }
    stages: { leaf: { lasts: 60 d, batch: only } }
    plantings:
      row: { crop: lettuce, container: pot, transplant: 2027-03-01, fill: 18 cm, keep-air-gap: 1 cm, stages: [leaf] }
    batches: { only: { water: rain, volume: 5 L, feed: { salt: 1 g/L } } }
  `.snapshot();
  expect(findings.map(({ finding }) => finding.code)).toContain('runs-dry');
  expect(drawDown).toHaveBeenCalledTimes(1);

  const forecast = seasonOf(plan).plantings.get('row')?.forecast;
  if (forecast === undefined || !isForecast(forecast)) throw new Error('no forecast');
  const { earliest = 0 } = forecast.runsLowBetween;
  expect(earliest).toBeLessThan(forecast.runsLow ?? 0);
  expect(forecast.topUps.length).toBeGreaterThan(0);
  expect(forecast.untouched).not.toBe(forecast.days);
  expect(forecast.untouched).toBe(forecast.untouched);
  // Once more for each bound, and once without top-ups.
  expect(drawDown).toHaveBeenCalledTimes(4);
  vi.restoreAllMocks();
});
