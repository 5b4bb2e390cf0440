// A log entry: what was forecast for that day beside what was measured, and what the level shows of the use.

import { formatDate } from '../../../schema/date.ts';
import type { Forecast } from '../../plan/forecast.ts';
import type { DayEvent, ForecastDay } from '../../plan/forecast-day.ts';
import { gathered } from '../../plan/gather.ts';
import { isForecast, plantingSeasonOf } from '../../plan/season.ts';
import { standing } from '../../plan/standing.ts';
import type { LogEntry, Target } from '../../recipe/seen.ts';
import { amountText, type Reader, rangeText } from '../../words/amount.ts';
import { wantsText } from '../../words/figure.ts';
import { dayWords } from '../../words/season.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { logDetail } from '../detail.ts';
import { blocks, code, lines, plain, table } from './blocks.ts';
import { standings } from './solution.ts';

/** Undefined where there is no such entry. */
export function logHover(snapshot: Snapshot, index: number): string | undefined {
  const { recipe, plan } = snapshot;
  const entry = recipe.log[index];
  if (entry === undefined) return undefined;
  const reader = recipe.show;
  const date = entry.on === undefined ? '' : ` on ${formatDate(entry.on)}`;
  const head = `**Logged${date}**: ${plain(logDetail(entry, reader))}`;
  const planned = plan.plantings.get(entry.planting ?? '');
  if (planned === undefined || entry.on === undefined) return head;
  const { forecast } = plantingSeasonOf(plan, planned);
  if (!isForecast(forecast)) return blocks(head, `The forecast: ${wantsText(forecast.wants)}`);
  const day = forecast.days.find(({ date }) => date === entry.on);
  if (day === undefined) return blocks(head, `Outside the days of ${code(planned.planting.name)}, so no forecast.`);
  const event = day.events.find(event => 'log' in event && event.log === index);
  return blocks(
    head,
    measuredTable(entry, event, day, reader),
    toppedUpLine(event, day, reader),
    lines(...bandLines(entry, targetOn(snapshot, day), reader), learnedLine(entry, forecast, reader)),
  );
}

function measuredTable(
  entry: LogEntry,
  event: DayEvent | undefined,
  day: ForecastDay,
  reader: Reader,
): string | undefined {
  if (event?.kind !== 'measured' || entry.level === undefined) return undefined;
  const volume = (value: number): string => amountText({ dimension: 'volume', value }, reader);
  const rows = [['in a container', volume(event.reckoned_L), volume(day.volume_L)]];
  return table(['', 'forecast', 'by the level'], rows, [1, 2]);
}

function toppedUpLine(event: DayEvent | undefined, day: ForecastDay, reader: Reader): string | undefined {
  if (event?.kind !== 'logged-top-up') return undefined;
  const { airGap, EC } = dayWords(day, reader);
  const level = amountText({ dimension: 'length', value: event.level_cm }, reader);
  const salts = day.EC === undefined ? '' : ` and an EC of about ${EC}`;
  return `The top-up brings each container to ${level}, with an air gap of ${airGap}${salts}.`;
}

/** What the levels up to now show of the use. */
function learnedLine(entry: LogEntry, { learnedUse }: Forecast, reader: Reader): string | undefined {
  if (entry.level === undefined || learnedUse === undefined) return undefined;
  const times = amountText({ dimension: 'number', value: learnedUse }, reader);
  return `The logged levels together show ${times} times the expected use.`;
}

/** What the stage of a day aims at. */
function targetOn({ plan }: Snapshot, { stage }: ForecastDay): Target | undefined {
  const target = gathered(plan.scope, 'stages', stage)?.value.target;
  return gathered(plan.scope, 'targets', target)?.value;
}

/** Where the measured pH and EC stand to their bands. */
function bandLines({ pH, EC }: LogEntry, target: Target | undefined, reader: Reader): readonly string[] {
  const said = [];
  if (pH !== undefined && target?.pH !== undefined) {
    const quantity = { dimension: 'pH', value: pH } as const;
    const at = `pH ${amountText(quantity, reader)}: ${standings[standing({ quantity }, target.pH)]}`;
    said.push(`${at}, ${rangeText(target.pH, reader)}`);
  }
  if (EC !== undefined && target?.EC !== undefined) {
    said.push(
      `EC ${amountText(EC, reader)}: ${standings[standing({ quantity: EC }, target.EC)]}, ${rangeText(target.EC, reader)}`,
    );
  }
  return said;
}
