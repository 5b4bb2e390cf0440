// A season worked by hand, with the arithmetic of each number in the open, and what is published of volumes, depths and water use.

import { describe, expect, test } from 'vitest';
import { formatDate } from '../../schema/date.ts';
import { dayFigures, daysUntilLowOf } from '../../server/plan/day-figures.ts';
import { numberOf } from '../../server/plan/figure.ts';
import type { Forecast } from '../../server/plan/forecast.ts';
import { lifeUseOf } from '../../server/plan/life-use.ts';
import { isForecast, seasonOf } from '../../server/plan/season.ts';
import { type MarkedRecipe, markedRecipe, recipe } from '../recipe.ts';
import { expectNear, type ReferenceRow, referenceRows } from '../reference-rows.ts';

function forecastOf(of: MarkedRecipe, planting: string): Forecast {
  const forecast = seasonOf(of.snapshot().plan).plantings.get(planting)?.forecast;
  if (forecast === undefined || !isForecast(forecast)) throw new Error(`no forecast: ${JSON.stringify(forecast)}`);
  return forecast;
}

/*
 * A tray 40 × 25 cm: 1000 cm², so a centimetre of level is a litre. The net cup ends 15 cm above the floor; with 4 cm of air the
 * solution may stand at 11 cm. Too low is below 1.3 cm. A litre that is drunk takes 1.2 mS/cm × L of nutrients along.
 */
const byHand = recipe`
  recipe: 1
  waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.1 mS/cm } }
  containers:
    tray:
      inside: { box: { length: 40 cm, width: 25 cm, height: 20 cm } }
      net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm }
  targets: { early: { EC: 1.2..1.8 mS/cm }, late: { EC: 1.8..2.6 mS/cm } }
  stages:
    young: { lasts: 10 d, target: early, batch: mild, uses: 200 mL/d }
    grown: { lasts: 30 d, target: late, batch: strong, uses: 300 mL/d }
  plantings:
    bean: { crop: bean, container: tray, transplant: 2027-03-01, keep-air-gap: 4 cm, stages: [young, grown] }
  batches:
    mild: { water: rain, volume: 40 L, readings: [{ EC: 1.6 mS/cm }] }
    strong: { water: rain, volume: 40 L, readings: [{ EC: 2.0 mS/cm }] }
  log:
    - { on: 2027-03-06, planting: bean, level: 13.5 cm }
    - { on: 2027-03-21, planting: bean, top-up: { water: rain, volume: 1 L } }
`;

describe('a season by hand', () => {
  const forecast = forecastOf(byHand, 'bean');
  const on = (date: string) => {
    const day = forecast.days.find(one => formatDate(one.date) === date);
    if (day === undefined) throw new Error(`no day ${date}`);
    return day;
  };

  test.each([
    // 1 March: filled to the net cup, 15 cm × 1 L/cm, at 1.6 mS/cm: 24 mS/cm × L.
    ['2027-03-01', 15, 0, 1.6],
    // 5 March: 15 − 4 × 0.2 = 14.2 L; 24 − 1.2 × 0.8 = 23.04, over 14.2.
    ['2027-03-05', 14.2, 0.8, 23.04 / 14.2],
    // 6 March: measured 13.5 cm. Drunk 1.5 L where 5 × 0.2 = 1 L was reckoned: from here 1.5 times. 24 − 1.2 × 1.5 = 22.2.
    ['2027-03-06', 13.5, 1.5, 22.2 / 13.5],
    // 10 March: 13.5 − 4 × 0.2 × 1.5 = 12.3 L; 22.2 − 1.2 × 1.2 = 20.76.
    ['2027-03-10', 12.3, 2.7, 20.76 / 12.3],
    // 11 March: 12 L are poured away with 20.4; changed to 11 L at 2.0: 22.
    ['2027-03-11', 11, 4, 2],
    // 20 March: 11 − 9 × 0.3 × 1.5 = 6.95 L; 22 − 1.2 × 4.05 = 17.14.
    ['2027-03-20', 6.95, 8.05, 17.14 / 6.95],
    // 21 March: 6.5 L and 16.6; 1 L of rain brings 0.1: 7.5 L and 16.7.
    ['2027-03-21', 7.5, 7.5, 16.7 / 7.5],
    // 2 April: 7.5 − 12 × 0.45 = 2.1 L; 16.7 − 1.2 × 5.4 = 10.22.
    ['2027-04-02', 2.1, 12.9, 10.22 / 2.1],
    // 3 April: 1.65 L would be 1.2 tomorrow, below 1.3. To harvest 7 × 0.45 = 3.15 L are drunk: 1.3 + 3.15 × 1.1 = 4.765 L, which is
    // below 11. 3.115 L of rain bring 0.3115 to 16.7 − 1.2 × 5.85 = 9.68: 9.9915.
    ['2027-04-03', 4.765, 10.235, 9.9915 / 4.765],
    // 10 April, harvest: 4.765 − 7 × 0.45 = 1.615 L; 9.9915 − 1.2 × 3.15 = 6.2115.
    ['2027-04-10', 1.615, 13.385, 6.2115 / 1.615],
  ])('%s: %f L, an air gap of %f cm, EC %f', (date, volume_L, airGap_cm, EC) => {
    const day = on(date);
    expect(day.volume_L).toBeCloseTo(volume_L, 9);
    expect(day.level_cm).toBeCloseTo(volume_L, 9);
    expect(day.airGap_cm).toBeCloseTo(airGap_cm, 9);
    expect(day.EC).toBeCloseTo(EC, 9);
    expect(numberOf(dayFigures(forecast, day).volume)).toBeCloseTo(volume_L, 9);
  });

  test('one top-up is to come: water, for its 2.10 lies nearer to the middle of 1.8 to 2.6 than the 3.34 of solution', () => {
    expect(forecast.topUps.map(({ date, until, ...topUp }) => [formatDate(date), formatDate(until), topUp])).toEqual([
      [
        '2027-04-03',
        '2027-04-10',
        {
          volume_L: expect.closeTo(3.115, 9),
          level_cm: expect.closeTo(4.765, 9),
          with: 'water',
          batch: undefined,
          water: 'rain',
          EC: expect.closeTo(9.9915 / 4.765, 9),
        },
      ],
    ]);
  });

  test('without it, it stands too low on 4 April: 14 days after 21 March', () => {
    // 7.5 − 13 × 0.45 = 1.65 is above 1.3 L; 7.5 − 14 × 0.45 = 1.2 is not.
    expect(forecast.runsLow === undefined ? '' : formatDate(forecast.runsLow)).toBe('2027-04-04');
    expect(numberOf(daysUntilLowOf(forecast))).toBe(14);
    expect(forecast.lastsCrop).toBe(false);
    expect(forecast.learnedUse).toBeCloseTo(1.5, 9);
  });

  test('the nutrients add up', () => {
    // In: 24 + 22 + 0.1 + 0.3115 = 46.4115. Poured away 20.4. Taken up 1.2 × (1.5 + 1.5 + 4.5 + 5.85 + 3.15) = 19.8. Left 6.2115.
    const { in: poured, pouredAway, takenUp, solution, corrected } = forecast.balance;
    expect(poured).toBeCloseTo(46.4115, 9);
    expect(pouredAway).toBeCloseTo(20.4, 9);
    expect(takenUp).toBeCloseTo(19.8, 9);
    expect(solution).toBeCloseTo(6.2115, 9);
    expect(corrected).toBe(0);
  });
});

interface Lives extends ReferenceRow {
  readonly crop: string;
  readonly plants: number;
  readonly days: number;
}

interface Tank extends ReferenceRow {
  readonly area_cm2: number;
  readonly level_cm: number;
  readonly value: number;
}

interface Band {
  readonly low: number;
  readonly high: number;
}

type Row =
  | (Lives & { readonly kind: 'lasts'; readonly vessel_L: number; readonly lasts: boolean })
  | (Lives & Band & { readonly kind: 'need' })
  | (Lives & Band & { readonly kind: 'use' })
  | (Lives & Band & { readonly kind: 'daily'; readonly from: number; readonly to: number })
  | (Tank & { readonly kind: 'tank' })
  | (Tank & { readonly kind: 'tank-used' })
  | (ReferenceRow & { readonly kind: 'light'; readonly crop: string; readonly light: number; readonly share: number });

/** A crop in a tank of an area, filled to a level, through one stage without a written use. */
function planted(
  crop: string,
  plants: number,
  days: number,
  area_cm2: number,
  level_cm: number,
  light = '',
): MarkedRecipe {
  return markedRecipe(`recipe: 1
waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.1 mS/cm } }
containers: { tank: { inside: { profile: [{ at: 0 cm, area: ${area_cm2} cm2 }, { at: 60 cm, area: ${area_cm2} cm2 }] } } }
stages: { life: { lasts: ${days} d, batch: one${light} } }
plantings: { p: { crop: ${crop}, container: tank, plants: ${plants}, transplant: 2027-03-01, fill: ${level_cm} cm, stages: [life] } }
batches: { one: { water: rain, volume: 200 L } }
`);
}

/** Litres drunk over all stages by the usual use. */
function drunk(of: MarkedRecipe): number {
  const season = seasonOf(of.snapshot().plan).plantings.get('p');
  if (season === undefined || 'kind' in season.stages) throw new Error('no stages');
  return numberOf(lifeUseOf(season.plan, season.stages).mid) ?? Number.NaN;
}

describe('what is published', () => {
  test.each(referenceRows<Row>('season').map(row => [row.id, row] as const))('%s', (_, row) => {
    if (row.kind === 'lasts') {
      // As high as wide, about; the published vessels are of no one shape.
      const area_cm2 = row.vessel_L * 50;
      const forecast = forecastOf(
        planted(row.crop, row.plants, row.days, area_cm2, (row.vessel_L * 1000) / area_cm2),
        'p',
      );
      expect(forecast.lastsCrop).toBe(row.lasts);
    } else if (row.kind === 'need') {
      const { need } = forecastOf(planted(row.crop, row.plants, row.days, 1000, 20), 'p');
      expectNear(numberOf(need?.low) ?? Number.NaN, row.low, row.tolerance);
      expectNear(numberOf(need?.high) ?? Number.NaN, row.high, row.tolerance);
    } else if (row.kind === 'use') {
      const litres = drunk(planted(row.crop, row.plants, row.days, 1000, 20));
      expect(litres).toBeGreaterThanOrEqual(row.low);
      expect(litres).toBeLessThanOrEqual(row.high);
    } else if (row.kind === 'tank') {
      expectNear(
        numberOf(fill(planted('lettuce', 1, 35, row.area_cm2, row.level_cm))) ?? Number.NaN,
        row.value,
        row.tolerance,
      );
    } else if (row.kind === 'tank-used') {
      const [full, left] = [row.level_cm, 1.3].map(
        level => numberOf(fill(planted('lettuce', 1, 35, row.area_cm2, level))) ?? 0,
      );
      expectNear((full ?? 0) - (left ?? 0), row.value, row.tolerance);
    } else if (row.kind === 'light') {
      const bright = drunk(planted(row.crop, 1, 35, 1000, 20));
      const dim = drunk(planted(row.crop, 1, 35, 1000, 20, `, light: ${row.light} mol/m2/d`));
      expectNear(dim / bright, row.share, row.tolerance);
    } else {
      const { untouched } = forecastOf(planted(row.crop, 1, row.days, 9000, 50), 'p');
      const [from, to] = [untouched[row.from], untouched[row.to]];
      const daily = ((from?.volume_L ?? 0) - (to?.volume_L ?? 0)) / (row.to - row.from);
      expect(daily).toBeGreaterThanOrEqual(row.low);
      expect(daily).toBeLessThanOrEqual(row.high);
    }
  });
});

function fill(of: MarkedRecipe) {
  return of.snapshot().plan.plantings.get('p')?.fill.volume;
}
