// Laws of every container over time, over random plantings with logs, top-ups and changes of feed: nothing is lost between what went
// in and what is there, and what explains a number is the number.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, type Day, dayOf, formatDate } from '../../schema/date.ts';
import { levelAt, volumeAt } from '../../server/geometry/vessel.ts';
import { dayFigures, daysUntilLowOf, topUpFigure } from '../../server/plan/day-figures.ts';
import { type Figure, inputsOf, numberOf, runAgain } from '../../server/plan/figure.ts';
import type { Forecast } from '../../server/plan/forecast.ts';
import { isForecast, seasonOf } from '../../server/plan/season.ts';
import { markedRecipe } from '../recipe.ts';

const number = (min: number, max: number, digits = 2) =>
  fc.double({ min, max, noNaN: true }).map(value => Number(value.toFixed(digits)));

interface Entry {
  readonly day: number;
  readonly EC: number | undefined;
  readonly level: number | undefined;
  readonly topUp: { readonly from: 'opening' | 'later' | 'rain' | 'unknown'; readonly mL: number } | undefined;
}

const perhaps = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(of, { nil: undefined });

const entry: fc.Arbitrary<Entry> = fc.record({
  day: fc.integer({ min: 0, max: 60 }),
  EC: perhaps(number(0, 4)),
  level: perhaps(number(0, 24)),
  topUp: perhaps(
    fc.record({ from: fc.constantFrom('opening', 'later', 'rain', 'unknown'), mL: fc.integer({ min: 1, max: 6000 }) }),
  ),
});

const drawn = fc.record({
  shape: fc.constantFrom(
    'cylinder: { diameter: 16 cm, height: 24 cm }',
    'cone: { top: 30 cm, bottom: 20 cm, height: 24 cm }',
    'box: { length: 40 cm, width: 20 cm, height: 24 cm }',
  ),
  cup: fc.boolean(),
  plants: fc.integer({ min: 1, max: 4 }),
  fill: number(6, 18, 1),
  gap: perhaps(number(0, 12, 1)),
  crop: fc.constantFrom('lettuce', 'tomato'),
  uses: fc.tuple(perhaps(number(1, 900, 0)), perhaps(number(1, 900, 0))),
  light: perhaps(number(4, 40, 1)),
  days: fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 })),
  changes: fc.boolean(),
  log: fc.array(entry, { maxLength: 6 }),
});

type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const begin = dayOf(2027, 3, 1);

function forecastOf(of: Drawn): Forecast {
  const { shape, cup, plants, fill, gap, crop, uses, light, days, changes, log } = of;
  const stage = (index: 0 | 1, batch: string): string => {
    const use = uses[index] === undefined ? '' : `, uses: ${uses[index]} mL/d`;
    return `{ lasts: ${days[index]} d, batch: ${batch}${use}${light === undefined ? '' : `, light: ${light} mol/m2/d`} }`;
  };
  const entries = [...log].sort((a, b) => a.day - b.day).map(entryText);
  const text = `recipe: 1
waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
feeds: { salt: { formula: KNO3 }, blank: { label: 1 mL/L } }
containers:
  pot:
    inside: { ${shape} }
${cup ? '    net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }' : ''}
stages: { leaf: ${stage(0, 'opening')}, fruit: ${stage(1, changes ? 'later' : 'opening')} }
plantings:
  p: { crop: ${crop}, container: pot, plants: ${plants}, transplant: ${formatDate(begin)}, fill: ${fill} cm${gap === undefined ? '' : `, keep-air-gap: ${gap} cm`}, stages: [leaf, fruit] }
batches:
  opening: { water: rain, volume: 50 L, feed: { salt: 1 g/L } }
  later: { water: rain, volume: 50 L, feed: { salt: 1.6 g/L } }
  unknown: { water: rain, volume: 50 L, feed: { blank: label } }
${entries.length === 0 ? '' : `log:\n${entries.join('\n')}`}
`;
  const forecast = seasonOf(markedRecipe(text).snapshot().plan).plantings.get('p')?.forecast;
  if (forecast === undefined || !isForecast(forecast)) throw new Error(`${JSON.stringify(forecast)}\n${text}`);
  return forecast;
}

function entryText({ day, EC, level, topUp }: Entry): string {
  const parts = [`on: ${formatDate(addDays(begin, day))}`, 'planting: p'];
  if (EC !== undefined) parts.push(`EC: ${EC} mS/cm`);
  if (level !== undefined) parts.push(`level: ${level} cm`);
  if (topUp !== undefined) {
    const from = topUp.from === 'rain' ? 'water: rain' : `batch: ${topUp.from}`;
    parts.push(`top-up: { ${from}, volume: ${topUp.mL} mL }`);
  }
  return `  - { ${parts.join(', ')} }`;
}

/** A figure with all that led to it. */
function allOf(figure: Figure): readonly Figure[] {
  if (figure.kind === 'unknown' || figure.by.kind !== 'step') return [figure];
  return [figure, ...inputsOf(figure.by).flatMap(allOf)];
}

const holds = (law: (forecast: Forecast) => void, numRuns = 50): void => {
  fc.assert(
    fc.property(drawn, of => law(forecastOf(of))),
    { numRuns },
  );
};

test('mass balance: what went in is in the solution, taken up or poured away', () => {
  holds(({ balance, days }) => {
    const { in: poured, corrected, solution = 0, takenUp, pouredAway } = balance;
    const most = Math.max(1, poured, takenUp, pouredAway);
    expect(Math.abs(poured + corrected - solution - takenUp - pouredAway)).toBeLessThanOrEqual(1e-9 * most);
    expect(takenUp).toBeGreaterThanOrEqual(-1e-9);
    expect(solution).toBeGreaterThanOrEqual(0);
    const last = days.at(-1);
    if (last?.EC !== undefined) expect(last.EC * last.volume_L).toBeCloseTo(solution, 9);
  });
});

test('water balance: each day is the one before, less what was drunk, but for what was poured, changed or measured', () => {
  holds(({ days, vessel }) => {
    for (const [index, day] of days.entries()) {
      expect(day.volume_L).toBeGreaterThanOrEqual(0);
      expect(day.volume_L).toBeLessThanOrEqual(vessel.brimful_L + 1e-9);
      const before = days[index - 1];
      if (before !== undefined && day.events.length === 0) expect(day.volume_L).toBeLessThanOrEqual(before.volume_L);
    }
  });
});

test('level and volume are two sides of one thing on every day', () => {
  holds(({ days, vessel }) => {
    for (const { level_cm, volume_L } of days) {
      expect(volumeAt(vessel, level_cm)).toBeCloseTo(volume_L, 9);
      expect(levelAt(vessel, volumeAt(vessel, level_cm))).toBeCloseTo(level_cm, 6);
    }
  });
});

test('no recommended top-up goes above the line that keeps the air gap, nor lies in the past', () => {
  holds(({ topUps, needs, days, vessel }) => {
    const line = numberOf(needs.fill.changeLevel) ?? 0;
    const logged = Math.max(...needs.log.map(({ entry }) => entry.on ?? 0), 0);
    for (const { date, level_cm, volume_L } of topUps) {
      expect(level_cm).toBeLessThanOrEqual(line + 1e-9);
      expect(volume_L).toBeGreaterThan(0);
      expect(date).toBeGreaterThan(logged);
      const day = days.find(one => one.date === date);
      expect(day?.volume_L).toBeLessThanOrEqual(volumeAt(vessel, line) + 1e-9);
    }
  });
});

test('what explains a day is the day: the figures run again give the forecast', () => {
  holds(forecast => {
    for (const day of forecast.days) {
      const { volume, level, airGap } = dayFigures(forecast, day);
      expect(numberOf(volume)).toBeCloseTo(day.volume_L, 9);
      expect(numberOf(level)).toBeCloseTo(day.level_cm, 6);
      expect(numberOf(airGap)).toBeCloseTo(day.airGap_cm, 6);
    }
    const last = forecast.days.at(-1);
    const figures = [
      ...(last === undefined ? [] : [dayFigures(forecast, last).airGap]),
      ...forecast.topUps.map(topUp => topUpFigure(forecast, topUp)),
    ];
    for (const figure of figures.flatMap(allOf)) {
      if (figure.kind === 'unknown' || figure.by.kind !== 'step') continue;
      const again = runAgain(figure.by);
      const value = typeof again === 'number' ? again : Number.NaN;
      expect(value, figure.by.formula.id).toBe(figure.quantity.value);
    }
    for (const topUp of forecast.topUps) expect(numberOf(topUpFigure(forecast, topUp))).toBeCloseTo(topUp.volume_L, 9);
  });
});

test('the days until it stands too low lead to the day that is told', () => {
  holds(forecast => {
    const days = daysUntilLowOf(forecast);
    const { runsLow, untouched } = forecast;
    expect(days === undefined).toBe(runsLow === undefined);
    if (days === undefined || runsLow === undefined) return;
    const since = untouched.findLast(({ date }) => date < runsLow)?.since.date;
    expect(since === undefined ? Number.NaN : since + (numberOf(days) ?? Number.NaN)).toBe(runsLow as Day);
  });
});

test('what is used less lasts at least as long', () => {
  fc.assert(
    fc.property(drawn, number(0.1, 1), (of, less) => {
      const [first, second] = of.uses;
      if (first === undefined || second === undefined) return;
      const quiet = { ...of, log: [] };
      const more = forecastOf(quiet).runsLow ?? Number.POSITIVE_INFINITY;
      const fewer = forecastOf({ ...quiet, uses: [first * less, second * less] }).runsLow ?? Number.POSITIVE_INFINITY;
      expect(fewer).toBeGreaterThanOrEqual(more);
    }),
    { numRuns: 30 },
  );
});
