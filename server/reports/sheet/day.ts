// The sheet of one day: its tasks with what each takes, and for every planting what its containers should show.

import { type Day, formatDate, weekday } from '../../../schema/date.ts';
import { numberOf } from '../../plan/figure.ts';
import type { Forecast } from '../../plan/forecast.ts';
import { isForecast, type PlantingSeason, seasonOf } from '../../plan/season.ts';
import type { Task } from '../../plan/timeline.ts';
import type { Reader } from '../../words/amount.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { amountOf } from '../plan-text/rows.ts';
import { boxes, checklist, type Page, paragraph, room, type Section, table, write } from '../print/page.ts';
import { takenText } from '../task-text.ts';
import { foot } from './batch.ts';

export function dayPage(snapshot: Snapshot, date: Day): Page {
  const { plan, recipe } = snapshot;
  const { tasks, plantings } = seasonOf(plan);
  const seasons = [...plantings.values()];
  const due = tasks.filter(task => task.date === date);
  return {
    title: `Bench sheet: ${weekday(date)}, ${formatDate(date)}`,
    about: recipe.title === undefined ? [] : [recipe.title],
    sections: [
      taskSection(due, tasks, date, snapshot),
      ...topUpSection(seasons, date, recipe.show),
      ...measureSection(seasons, date, recipe.show),
      { heading: 'Notes', blocks: [write([{ label: 'Done by' }, { label: 'Remarks' }])] },
    ],
    foot,
  };
}

function taskSection(due: readonly Task[], all: readonly Task[], date: Day, snapshot: Snapshot): Section {
  if (due.length > 0) return { heading: 'To do', blocks: [checklist(due.map(task => taskText(task, snapshot)))] };
  const next = all.find(task => date < task.date);
  const later = next === undefined ? '' : ` Next: ${next.what}, on ${formatDate(next.date)}.`;
  return { heading: 'To do', blocks: [paragraph(`Nothing is due on this day.${later}`)] };
}

/** A task with the amounts that it takes. */
function taskText(task: Task, snapshot: Snapshot): string {
  const taken = takenText(task, snapshot);
  const where = task.kind === 'mix' ? ', on a sheet of its own' : '';
  return `${task.what}${taken === undefined ? '' : `: ${taken}`}${where}`;
}

function topUpSection(seasons: readonly PlantingSeason[], date: Day, reader: Reader): readonly Section[] {
  const rows = seasons.flatMap(({ plan, forecast }) =>
    isForecast(forecast)
      ? forecast.topUps
          .filter(topUp => topUp.date === date)
          .map(topUp => topUpRow(plan.planting.name, numberOf(plan.containers) ?? 1, topUp, reader))
      : [],
  );
  if (rows.length === 0) return [];
  const columns = [
    { name: 'planting' },
    { name: 'containers', align: 'right' },
    { name: 'into each', align: 'right' },
    { name: 'of' },
    { name: 'never above', align: 'right' },
    { name: 'done' },
  ] as const;
  return [
    { heading: 'Top-ups, by the forecast', blocks: [table('What each container is topped up with', columns, rows)] },
  ];
}

function topUpRow(
  name: string,
  count: number,
  { volume_L, level_cm, with: kind, batch }: Forecast['topUps'][number],
  reader: Reader,
) {
  return [
    name,
    String(count),
    `about ${amountOf(volume_L, 'volume', reader)}`,
    kind === 'water' ? 'water' : (batch ?? 'solution'),
    amountOf(level_cm, 'length', reader),
    boxes(count, `${name} topped up`),
  ];
}

/** What should be found in each container that stands filled, with room for what is. */
function measureSection(seasons: readonly PlantingSeason[], date: Day, reader: Reader): readonly Section[] {
  const rows = seasons.flatMap(({ plan, forecast }) => {
    const day = isForecast(forecast) ? forecast.days.find(one => one.date === date) : undefined;
    return day === undefined ? [] : [measureRow(plan.planting.name, day, reader)];
  });
  if (rows.length === 0) return [];
  const columns = [
    { name: 'planting' },
    { name: 'stage' },
    { name: 'level to expect', align: 'right' },
    { name: 'level' },
    { name: 'EC to expect', align: 'right' },
    { name: 'EC' },
    { name: 'pH' },
  ] as const;
  return [
    {
      heading: 'Measure',
      blocks: [
        table('What the containers should show, and what they do', columns, rows),
        paragraph(
          'What is to be expected is an estimate. Write down what you find with tidemark log: the forecast then goes on from it.',
        ),
      ],
    },
  ];
}

function measureRow(name: string, { stage, level_cm, EC }: Forecast['days'][number], reader: Reader) {
  return [
    name,
    stage,
    amountOf(level_cm, 'length', reader),
    room(`level of ${name}`),
    EC === undefined ? 'no estimate' : amountOf(EC, 'conductivity', reader),
    room(`EC of ${name}`),
    room(`pH of ${name}`),
  ];
}
