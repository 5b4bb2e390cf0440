// The numbers of a planting that can be explained: its fill, what its plants drink, and its forecast day by day.

import { formatDate } from '../../../schema/date.ts';
import { dayFigures, daysUntilLowOf, topUpFigure } from '../../plan/day-figures.ts';
import { unknown } from '../../plan/figure.ts';
import type { Forecast } from '../../plan/forecast.ts';
import { lifeUseOf } from '../../plan/life-use.ts';
import { isForecast, type PlantingSeason } from '../../plan/season.ts';
import { type ExplainedNumber, number } from './explained-number.ts';

export function plantingNumbers(name: string, { plan, stages, forecast }: PlantingSeason): readonly ExplainedNumber[] {
  const at = ['plantings', name];
  const { fill } = plan;
  const use = () => ('kind' in stages ? undefined : lifeUseOf(plan, stages));
  const noUse = 'kind' in stages ? stages : unknown([]);
  return [
    number([...at, 'fill_L'], () => fill.volume, ['fill', 'fill/volume']),
    number([...at, 'fill_cm'], () => fill.level, ['level', 'fill/level']),
    number([...at, 'highestRefill_cm'], () => fill.changeLevel, ['highestRefill']),
    number([...at, 'highestRefill_L'], () => fill.changeVolume),
    number([...at, 'containers'], () => plan.containers),
    number([...at, 'together_L'], () => plan.together, ['together']),
    number([...at, 'lifeUse_L', 'low'], () => use()?.low ?? noUse),
    number([...at, 'lifeUse_L', 'high'], () => use()?.high ?? noUse),
    ...(isForecast(forecast) ? forecastNumbers(at, forecast) : []),
  ];
}

/** Days by their dates or by their number in the JSON, counted from 0; top-ups likewise. */
function forecastNumbers(at: readonly string[], forecast: Forecast): readonly ExplainedNumber[] {
  const days = forecast.days.flatMap((day, index) => {
    const figures = () => dayFigures(forecast, day);
    const one = (key: string, plain: string, of: keyof ReturnType<typeof figures>): ExplainedNumber => {
      const [date, numbered] = [formatDate(day.date), String(index)].map(name => [...at, 'days', name].join('/'));
      return {
        path: `${date}/${key}`,
        also: [`${date}/${plain}`, `${numbered}/${key}`, `${numbered}/${plain}`],
        figure: () => figures()[of],
        isOneOfMany: true,
      };
    };
    return [
      one('volume_L', 'volume', 'volume'),
      one('level_cm', 'level', 'level'),
      one('airGap_cm', 'airGap', 'airGap'),
    ];
  });
  const topUps = forecast.topUps.map((topUp, index): ExplainedNumber => {
    const date = [...at, 'topUps', formatDate(topUp.date)].join('/');
    const numbered = [...at, 'topUps', String(index)].join('/');
    return {
      path: `${date}/volume_L`,
      also: [date, numbered, `${numbered}/volume_L`],
      figure: () => topUpFigure(forecast, topUp),
    };
  });
  const untilLow = daysUntilLowOf(forecast);
  const low = untilLow === undefined ? [] : [number([...at, 'daysUntilLow'], () => untilLow, ['runsLow'])];
  return [...days, ...low, ...topUps];
}
