// A planting as lines: its fill, its stages with their days, whether the fill lasts and what to top up.

import { type Day, formatDate } from '../../../schema/date.ts';
import type { DatedStage, Forecast } from '../../plan/forecast.ts';
import type { ForecastDay } from '../../plan/forecast-day.ts';
import { lifeUseOf } from '../../plan/life-use.ts';
import { isForecast, type PlantingSeason } from '../../plan/season.ts';
import type { TopUp } from '../../plan/top-up.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { dayWords } from '../../words/season.ts';
import { amountOf, block, figureText, type Lines, missingText, row } from './rows.ts';

export function plantingText(name: string, season: PlantingSeason, reader: Reader): Lines {
  const { planting, fill } = season.plan;
  const { crop, container, count = 1, plants = 1 } = planting.value;
  const kept = planting.value['keep-air-gap'] !== undefined;
  return [
    `Planting ${name}`,
    ...(crop === undefined ? [] : [row('crop', crop)]),
    ...(container === undefined
      ? []
      : [row('container', `${count} × ${container}${plants === 1 ? '' : `, ${plants} plants in each`}`)]),
    row(
      'fill',
      `${figureText(fill.volume, reader)} in each${fill.level.kind === 'known' ? `, up to ${figureText(fill.level, reader)}` : ''}`,
    ),
    ...(kept ? [row('highest refill', `${figureText(fill.changeLevel, reader)}, once air roots hang`)] : []),
    ...((planting.value.stages ?? []).length === 0 ? [] : seasonLines(season, reader)),
  ];
}

function seasonLines(season: PlantingSeason, reader: Reader): Lines {
  const { stages, forecast } = season;
  if ('kind' in stages) return block('stages', [row('days', `not known: ${missingText(stages.wants)}`, 2)]);
  const known = isForecast(forecast) ? forecast : undefined;
  const { low, high } = lifeUseOf(season.plan, stages);
  const least = figureText(low, reader);
  const most = figureText(high, reader);
  return [
    ...block('stages', stageLines(stages, known, reader)),
    ...block('solution in each', [
      ...(low.kind === 'unknown' ? [] : [row('plants drink', least === most ? least : `${least} to ${most}`, 2)]),
      ...(isForecast(forecast)
        ? lastsLines(forecast, reader)
        : [row('forecast', `not known: ${missingText(forecast.wants)}`, 2)]),
    ]),
    ...block(
      'top-ups to come, in each',
      (known?.topUps ?? []).map(topUp => topUpLine(topUp, reader)),
    ),
  ];
}

/** `rooting  2027-02-20 to 2027-03-09, fed by opening`, and how the solution then stands. */
function stageLines(stages: readonly DatedStage[], forecast: Forecast | undefined, reader: Reader): Lines {
  const days = new Map(forecast?.days.map(day => [day.date, day]));
  const end = stages.at(-1);
  const lines = stages.map(({ stage, from, batch }) => {
    const fed = batch === undefined ? [] : [`fed by ${batch.needs.batch.name}`];
    return row(stage.name, [`from ${formatDate(from)}`, ...fed, ...dayFacts(days.get(from), reader)].join(', '), 2);
  });
  if (end === undefined) return lines;
  return [...lines, row('to', [formatDate(end.to), ...dayFacts(days.get(end.to), reader)].join(', '), 2)];
}

function dayFacts(day: ForecastDay | undefined, reader: Reader): readonly string[] {
  if (day === undefined) return [];
  const { level, airGap, EC } = dayWords(day, reader);
  return [`level ${level}`, `air gap ${airGap}`, ...(day.EC === undefined ? [] : [`EC ${EC}`])];
}

function lastsLines(forecast: Forecast, reader: Reader): Lines {
  const { lastsCrop, runsLow, runsLowBetween, isPublishedUse, learnedUse } = forecast;
  const { earliest, latest } = runsLowBetween;
  const lasts = lastsCrop
    ? 'yes, without a top-up'
    : runsLow === undefined
      ? 'no: it is less than what is published for the crop'
      : 'no, not without top-ups';
  return [
    row('lasts the crop', lasts, 2),
    ...(runsLow === undefined ? [] : [row('too low from', formatDate(runsLow), 2)]),
    ...(isPublishedUse && earliest !== undefined
      ? [row('', `${formatDate(earliest)} at the earliest, ${dayOrNever(latest)}, by published use`, 2)]
      : []),
    ...(learnedUse === undefined
      ? []
      : [row('levels show', `${amountText({ dimension: 'number', value: learnedUse }, reader)} times that use`, 2)]),
  ];
}

function dayOrNever(day: Day | undefined): string {
  return day === undefined ? 'perhaps never' : `${formatDate(day)} at the latest`;
}

function topUpLine({ date, volume_L, level_cm, with: what, batch, water }: TopUp, reader: Reader): string {
  const of = (what === 'water' ? water : batch) ?? what;
  const level = amountOf(level_cm, 'length', reader);
  return row(formatDate(date), `${amountOf(volume_L, 'volume', reader)} of ${of}, up to ${level} and no higher`, 2);
}
