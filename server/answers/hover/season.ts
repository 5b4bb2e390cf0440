// A planting over time: the days of its stages, when its fill runs low, and what tops it up.

import { type Day, formatDate } from '../../../schema/date.ts';
import { sources } from '../../../schema/sources.ts';
import { cropRow } from '../../plan/crops.ts';
import { daysUntilLowOf, topUpFigure } from '../../plan/day-figures.ts';
import type { DatedStage, Forecast } from '../../plan/forecast.ts';
import type { ForecastDay } from '../../plan/forecast-day.ts';
import type { Plan, PlantingPlan } from '../../plan/plan.ts';
import { isForecast, plantingSeasonOf } from '../../plan/season.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { explanationText, figureText, sourcesText, wantsText } from '../../words/figure.ts';
import { dayWords, topUpText } from '../../words/season.ts';
import { blocks, code, lines, table } from './blocks.ts';

/** The stages with their days, and how long the fill lasts; undefined where the planting names no stages. */
export function seasonBlock(plan: Plan, planned: PlantingPlan, reader: Reader): string | undefined {
  if ((planned.planting.value.stages ?? []).length === 0) return undefined;
  const { stages, forecast } = plantingSeasonOf(plan, planned);
  if ('kind' in stages) return wantsText(stages.wants);
  const known = isForecast(forecast) ? forecast : undefined;
  return blocks(
    stagesTable(stages, known, reader),
    known === undefined ? undefined : lastsLines(planned, stages, known, reader),
    known === undefined ? undefined : topUpsList(known, reader),
    isForecast(forecast) ? undefined : `The forecast: ${wantsText(forecast.wants)}`,
  );
}

/** A row for the first day of each stage and one for the end. */
function stagesTable(
  stages: readonly DatedStage[],
  forecast: Forecast | undefined,
  reader: Reader,
): string | undefined {
  const end = stages.at(-1);
  const days = new Map(forecast?.days.map(day => [day.date, day]));
  const rows = stages.map(({ stage, from, batch }) => [
    code(stage.name),
    formatDate(from),
    batch === undefined ? '' : code(batch.needs.batch.name),
    ...dayCells(days.get(from), reader),
  ]);
  if (end !== undefined) rows.push(['harvest', formatDate(end.to), '', ...dayCells(days.get(end.to), reader)]);
  return table(['', 'from', 'fed by', 'level', 'air gap', 'EC'], rows, [3, 4, 5]);
}

function dayCells(day: ForecastDay | undefined, reader: Reader): readonly string[] {
  if (day === undefined) return ['', '', ''];
  const { level, airGap, EC } = dayWords(day, reader);
  return [level, airGap, EC];
}

/** Whether one fill lasts; where the use is published as a range, what the range says. */
function lastsLines(
  planned: PlantingPlan,
  stages: readonly DatedStage[],
  forecast: Forecast,
  reader: Reader,
): string | undefined {
  const { lastsCrop, runsLow, runsLowBetween, isPublishedUse, learnedUse } = forecast;
  const changes = new Set(stages.map(({ batch }) => batch)).size > 1;
  const fill = changes ? 'One fill, and one for each change of feed,' : 'One fill';
  const { earliest, latest } = runsLowBetween;
  const lasts = lastsCrop
    ? `${fill} lasts the crop.`
    : runsLow === undefined
      ? `${fill} is less than what is published for the crop, though the use that is written would not empty it.`
      : `${fill} does not last the crop: without a top-up it stands too low on **${formatDate(runsLow)}**.`;
  const range =
    !isPublishedUse || earliest === undefined
      ? undefined
      : `By the range that is published: on ${formatDate(earliest)} at the earliest, ${latest === undefined ? 'not before harvest' : `on ${formatDate(latest)}`} at the latest.`;
  return lines(lasts, range, needLine(planned, forecast, reader), learnedLine(learnedUse, reader));
}

function needLine({ fill }: PlantingPlan, { need }: Forecast, reader: Reader): string | undefined {
  if (need === undefined || need.low.kind === 'unknown') return undefined;
  const published = `${figureText(need.low, reader)} to ${figureText(need.high, reader)}`;
  const source = sources[cropRow(need.crop).source].title;
  return `Published for ${need.crop} in these days: ${published} a container (*${source}*); its fill is ${figureText(fill.volume, reader)}.`;
}

function learnedLine(learnedUse: number | undefined, reader: Reader): string | undefined {
  if (learnedUse === undefined) return undefined;
  const times = amountText({ dimension: 'number', value: learnedUse }, reader);
  return `The logged levels show ${times} times the use that was reckoned; the days ahead are forecast by it.`;
}

/** So many top-ups are told; a calendar has them all. */
const mostTopUps = 5;

function topUpsList({ topUps }: Forecast, reader: Reader): string | undefined {
  if (topUps.length === 0) return undefined;
  const told = topUps.slice(0, mostTopUps).map(topUp => `- ${topUpText(topUp, reader)}`);
  const last = topUps.at(-1);
  if (topUps.length > mostTopUps && last !== undefined) told.push(`- and so on, the last on ${formatDate(last.date)}`);
  return [`Top-ups for each container:`, '', ...told].join('\n');
}

/** On the stages of a planting: its season, and how the day on which it runs low is reckoned. */
export function stagesHover(plan: Plan, planned: PlantingPlan, reader: Reader): string | undefined {
  const season = seasonBlock(plan, planned, reader);
  const { forecast } = plantingSeasonOf(plan, planned);
  const untilLow = isForecast(forecast) ? daysUntilLowOf(forecast) : undefined;
  if (season === undefined || untilLow === undefined) return season;
  return blocks(season, explanationText(untilLow, reader), sourcesText([untilLow]));
}

/** On the air gap that is kept: how high a top-up may go. */
export function airGapHover(plan: Plan, planned: PlantingPlan, reader: Reader): string {
  const { changeLevel, changeVolume } = planned.fill;
  const { stages, forecast } = plantingSeasonOf(plan, planned);
  const known = !('kind' in stages) && isForecast(forecast) ? forecast : undefined;
  if (changeLevel.kind === 'unknown') return wantsText(changeLevel.wants);
  const [next] = known?.topUps ?? [];
  const first = known === undefined || next === undefined ? undefined : topUpFigure(known, next);
  return blocks(
    `**Top up to ${figureText(changeLevel, reader)} at most** once roots hang: ${figureText(changeVolume, reader)} in a container.`,
    explanationText(changeLevel, reader),
    known === undefined ? undefined : topUpsList(known, reader),
    first === undefined ? undefined : explanationText(first, reader),
    sourcesText(first === undefined ? [changeLevel] : [changeLevel, first]),
  );
}

/** The day that a stage begins and ends in a planting, in one line. */
export function stageDays(from: Day, to: Day): string {
  return `${formatDate(from)} to ${formatDate(to)}`;
}
