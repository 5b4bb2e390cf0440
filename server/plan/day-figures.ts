// The figures behind a forecast: the volume and level on a day, the days until a container stands too low, the volume of a top-up.
// Made when they are asked for, from the same course that the forecast took; a law holds the two together.

import { type Day, daysBetween } from '../../schema/date.ts';
import { valueAt } from '../../schema/place.ts';
import { levelAt, type Vessel, volumeAt } from '../geometry/vessel.ts';
import { volumeAtLevel } from './container.ts';
import { assumed, type Figure, formula, given, unknown } from './figure.ts';
import { cupLineOf, type Forecast } from './forecast.ts';
import type { Anchor, ForecastDay, Learned } from './forecast-day.ts';
import { type TopUp, usualMargin } from './top-up.ts';
import { lowestLevel_cm } from './uptake.ts';
import { useOver } from './use-rate.ts';

export interface DayFigures {
  /** Of one container, on the morning of the day after what is done that day. */
  readonly volume: Figure<'volume'>;
  readonly level: Figure<'length'>;
  readonly airGap: Figure<'length'>;
}

export function dayFigures(forecast: Forecast, day: ForecastDay): DayFigures {
  const { vessel, needs } = forecast;
  const volume = volumeOn(forecast, day.since, day.date);
  const level = levelOfVolume({ volume }, vessel);
  const cup = needs.fill.netCupLine;
  const value = cupLineOf(needs.fill, vessel);
  const line = cup.kind === 'known' ? cup : assumed({ dimension: 'length', value }, 'the fill', 'tidemark-design');
  return { volume, level, airGap: airGap({ line, level }) };
}

/** From what the solution is reckoned until the morning on which it stands too low; undefined where it lasts. */
export function daysUntilLowOf(forecast: Forecast): Figure<'duration'> | undefined {
  const { runsLow, untouched, vessel } = forecast;
  const before = untouched.findLast(day => runsLow !== undefined && day.date < runsLow);
  if (before === undefined || runsLow === undefined) return undefined;
  const { since } = before;
  const pieces = piecesBetween(forecast, since.date, runsLow);
  const low = volumeAtLevel({ level: lowest }, vessel);
  const course = pieces.map(piece => piece.course);
  return daysUntilLow(
    {
      volume: anchorVolume(forecast, since),
      low,
      uses: pieces.map(piece => piece.rate),
      factor: factorOf(forecast, since),
    },
    course,
  );
}

/** What a recommended top-up pours into each container. */
export function topUpFigure(forecast: Forecast, topUp: TopUp): Figure<'volume'> {
  const day = forecast.days.find(({ date }) => date === topUp.date);
  const by = day?.since.by;
  if (by?.kind !== 'top-up') return unknown([]);
  const after = afterRecommended(forecast, topUp, topUp.date);
  return topUpVolume({ after, now: volumeOn(forecast, by.before, topUp.date) });
}

const lowest = assumed(
  { dimension: 'length', value: lowestLevel_cm },
  'what was left at harvest in the published trial',
  'kratky-2005',
);

function volumeOn(forecast: Forecast, since: Anchor, date: Day): Figure<'volume'> {
  const from = anchorVolume(forecast, since);
  if (date <= since.date) return from;
  const pieces = piecesBetween(forecast, since.date, date);
  return drawnDown({
    from,
    uses: pieces.map(piece => piece.rate),
    days: pieces.map(piece => piece.days),
    factor: factorOf(forecast, since),
  });
}

function anchorVolume(forecast: Forecast, { date, by }: Anchor): Figure<'volume'> {
  const { fill, log } = forecast.needs;
  switch (by.kind) {
    case 'fill':
      return fill.volume;
    case 'change':
      return fill.changeVolume;
    case 'level': {
      const level = log.find(({ index }) => index === by.log)?.entry.level;
      if (level === undefined) return unknown([]);
      return volumeAtLevel({ level: given(level, valueAt(['log', by.log, 'level'])) }, forecast.vessel);
    }
    case 'logged-top-up':
      return afterTopUp(
        { volume: volumeOn(forecast, by.before, date), added: loggedTopUp(forecast, by.log) },
        { brimful_L: forecast.vessel.brimful_L },
      );
    default:
      return afterRecommended(forecast, by.topUp, date);
  }
}

function afterRecommended(forecast: Forecast, { until }: TopUp, date: Day): Figure<'volume'> {
  const pieces = piecesBetween(forecast, date, until);
  const since = forecast.days.find(day => day.date === date)?.since;
  if (since === undefined) return unknown([]);
  return topUpTo({
    allowed: forecast.needs.fill.changeVolume,
    low: volumeAtLevel({ level: lowest }, forecast.vessel),
    uses: pieces.map(piece => piece.rate),
    days: pieces.map(piece => piece.days),
    factor: factorOf(forecast, since),
    margin: assumed({ dimension: 'fraction', value: usualMargin }, 'for a thirsty week', 'common-practice'),
  });
}

function loggedTopUp({ needs }: Forecast, log: number): Figure<'volume'> {
  const volume = needs.log.find(({ index }) => index === log)?.entry['top-up']?.volume;
  return volume === undefined ? unknown([]) : given(volume, valueAt(['log', log, 'top-up', 'volume']));
}

function factorOf(forecast: Forecast, { learned }: Anchor): Figure<'number'> {
  if (learned === undefined) {
    return assumed({ dimension: 'number', value: 1 }, 'no level has shown another use', 'tidemark-design');
  }
  return learnedFigure(forecast, learned);
}

function learnedFigure(forecast: Forecast, { from, poured, date, log }: Learned): Figure<'number'> {
  const level = forecast.needs.log.find(({ index }) => index === log)?.entry.level;
  if (level === undefined) return unknown([]);
  const pieces = piecesBetween(forecast, from.date, date);
  return learnedUse({
    stood: anchorVolume(forecast, from),
    poured: poured.map(one => loggedTopUp(forecast, one.log)),
    measured: volumeAtLevel({ level: given(level, valueAt(['log', log, 'level'])) }, forecast.vessel),
    uses: pieces.map(piece => piece.rate),
    days: pieces.map(piece => piece.days),
  });
}

/** The days within one stage, with the use of all plants of a container. */
interface Piece {
  readonly rate: Figure<'volume-per-time'>;
  readonly days: Figure<'duration'>;
  /** How many times that rate each of the days has: always 1 where the rate is written. */
  readonly course: readonly number[];
}

function piecesBetween({ needs }: Forecast, from: Day, to: Day): readonly Piece[] {
  const { planting, stages } = needs;
  const begin = stages[0]?.from ?? from;
  const days = daysBetween(begin, stages.at(-1)?.to ?? to);
  return stages.flatMap((dated): Piece[] => {
    const first = Math.max(dated.from, from);
    const last = Math.min(dated.to, to);
    if (last <= first) return [];
    const stretch = { from: first - begin, to: last - begin, days };
    const rate = useOver(planting, dated.stage, stretch, 'mid');
    const each = (age: number) => useOver(planting, dated.stage, { from: age, to: age + 1, days }, 'mid');
    const course = Array.from({ length: last - first }, (_, index) => ratio(each(stretch.from + index), rate));
    const says = `the days in ${dated.stage.name}`;
    return [{ rate, days: assumed({ dimension: 'duration', value: last - first }, says, 'tidemark-design'), course }];
  });
}

function ratio(part: Figure, of: Figure): number {
  if (part.kind === 'unknown' || of.kind === 'unknown' || of.quantity.value === 0) return 0;
  return part.quantity.value / of.quantity.value;
}

const drunkBy = (uses: readonly number[], days: readonly number[]): number =>
  uses.reduce((sum, use, index) => sum + (use / 1000) * (days[index] ?? 0), 0);

export const drawnDown = formula({
  id: 'drawn-down',
  says: 'the solution in one container on that day',
  statement: 'volume = from − sum of use × days × factor',
  source: 'tidemark-design',
  takes: { from: 'volume', uses: ['volume-per-time'], days: ['duration'], factor: 'number' },
  gives: 'volume',
  evaluate: ({ from, uses, days, factor }) => Math.max(0, from - drunkBy(uses, days) * factor),
});

export const afterTopUp = formula({
  id: 'after-top-up',
  says: 'the solution in one container after the top-up',
  statement: 'after = volume + added, up to the rim',
  source: 'tidemark-design',
  takes: { volume: 'volume', added: 'volume' },
  gives: 'volume',
  evaluate: ({ volume, added }, { brimful_L }: { readonly brimful_L: number }) => Math.min(brimful_L, volume + added),
});

export const topUpTo = formula({
  id: 'top-up-to',
  says: 'what a container holds after the top-up: what is drunk until the next change or harvest, never past the air gap',
  statement: 'after = least of allowed and low + sum of use × days × factor × (1 + margin)',
  source: 'kratky-2011',
  takes: {
    allowed: 'volume',
    low: 'volume',
    uses: ['volume-per-time'],
    days: ['duration'],
    factor: 'number',
    margin: 'fraction',
  },
  gives: 'volume',
  evaluate: ({ allowed, low, uses, days, factor, margin }) =>
    Math.min(allowed, low + drunkBy(uses, days) * factor * (1 + margin)),
});

export const topUpVolume = formula({
  id: 'top-up-volume',
  says: 'the top-up that the air gap allows and the plants drink',
  statement: 'top-up = volume after − volume now',
  source: 'kratky-2011',
  takes: { after: 'volume', now: 'volume' },
  gives: 'volume',
  evaluate: ({ after, now }) => Math.max(0, after - now),
});

export const levelOfVolume = formula({
  id: 'level-of-volume',
  says: 'the level in one container',
  statement: 'level = where the volume reaches',
  source: 'solid-geometry',
  takes: { volume: 'volume' },
  gives: 'length',
  evaluate: ({ volume }, vessel: Vessel) => levelAt(vessel, volume),
  account: ({ volume }, vessel) => [
    { what: 'volume up to that level', value: volumeAt(vessel, levelAt(vessel, volume)), unit: 'L' },
  ],
});

export const airGap = formula({
  id: 'air-gap',
  says: 'the air between the net cup and the solution',
  statement: 'gap = line − level',
  source: 'tidemark-design',
  takes: { line: 'length', level: 'length' },
  gives: 'length',
  evaluate: ({ line, level }) => Math.max(0, line - level),
});

export const learnedUse = formula({
  id: 'learned-use',
  says: 'how many times the reckoned use the measured level shows',
  statement: 'factor = (stood + poured − measured) ÷ sum of use × days',
  source: 'tidemark-design',
  takes: { stood: 'volume', poured: ['volume'], measured: 'volume', uses: ['volume-per-time'], days: ['duration'] },
  gives: 'number',
  evaluate: ({ stood, poured, measured, uses, days }) =>
    (poured.reduce((sum, one) => sum + one, stood) - measured) / drunkBy(uses, days),
});

export const daysUntilLow = formula({
  id: 'days-until-low',
  says: 'the days until the container stands too low',
  statement: 'days until use × factor, day by day, comes to more than volume − low',
  source: 'kratky-2005',
  takes: { volume: 'volume', low: 'volume', uses: ['volume-per-time'], factor: 'number' },
  gives: 'duration',
  evaluate: ({ volume, low, uses, factor }, course: readonly (readonly number[])[]) => {
    let left = volume;
    let days = 0;
    for (const [index, use] of uses.entries()) {
      for (const times of course[index] ?? []) {
        days += 1;
        left -= (use / 1000) * times * factor;
        if (left < low - 1e-9) return days;
      }
    }
    return { reason: 'more days: it does not come to stand too low in these' };
  },
});
