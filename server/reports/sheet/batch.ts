// The sheet of one batch: water, feed, measuring, adjusting, filling, each with room for what the bench says.

import { formatDate } from '../../../schema/date.ts';
import { findingRow } from '../../../schema/findings.ts';
import type { Range } from '../../../schema/range.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { type Figure, numberOf } from '../../plan/figure.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import type { Plan } from '../../plan/plan.ts';
import { seasonOf } from '../../plan/season.ts';
import type { Serving } from '../../plan/serving.ts';
import { stateOf } from '../../plan/state.ts';
import type { Reading } from '../../recipe/seen.ts';
import { amountText, type Reader, rangeText } from '../../words/amount.ts';
import { findingMessage } from '../../words/finding.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { amountOf, figureText } from '../plan-text/rows.ts';
import {
  type Block,
  boxes,
  checklist,
  type Field,
  type Page,
  paragraph,
  room,
  type Section,
  table,
  write,
} from '../print/page.ts';
import { adjustSection } from './adjust.ts';
import { feedSection } from './feed.ts';
import { loadCount, mostLoads } from './loads.ts';

export function batchPage(snapshot: Snapshot, batch: BatchPlan): Page {
  const { plan, recipe } = snapshot;
  const { name } = batch.needs.batch;
  const reader = recipe.show;
  const sections = [
    ...minded(snapshot, name),
    waterSection(batch, reader),
    ...feedSection(batch, reader),
    measureSection(batch, reader),
    ...adjustSection(batch, reader),
    ...fillSection(plan, batch, reader),
    { heading: 'Notes', blocks: [write([{ label: 'Mixed on' }, { label: 'by' }, { label: 'Remarks' }])] },
  ];
  return { title: `Bench sheet: batch ${name}`, about: aboutOf(snapshot, batch), sections, foot };
}

/** What is true of every sheet. */
export const foot =
  'Amounts to pour are computed from the recipe; pH, EC and levels are estimates: the meter decides. The label of a feed overrules the recipe.';

function aboutOf({ plan, recipe }: Snapshot, { needs, serves }: BatchPlan): readonly string[] {
  const { name } = needs.batch;
  const due = seasonOf(plan).tasks.find(({ kind, about }) => kind === 'mix' && about === name);
  const plantings = [...new Set(serves.map(({ planting }) => planting.name))].join(', ');
  const facts = [
    recipe.title ?? '',
    plantings === '' ? '' : `for ${plantings}`,
    due === undefined ? '' : `due on ${formatDate(due.date)}`,
  ];
  const line = facts.filter(fact => fact !== '').join('; ');
  return line === '' ? [] : [line];
}

const mostFindings = 3;

/** Errors and warnings about the batch itself: whoever holds the sheet must know of them. */
function minded({ findings, recipe }: Snapshot, name: string): readonly Section[] {
  const about = findings.filter(
    ({ finding: { at, code } }) =>
      at.file === undefined &&
      at.path[0] === 'batches' &&
      at.path[1] === name &&
      ['error', 'warning'].includes(findingRow(code).severity),
  );
  if (about.length === 0) return [];
  const said = about
    .slice(0, mostFindings)
    .map(({ finding }) => paragraph(`${finding.code}: ${findingMessage(finding, recipe.show)}`));
  const more = about.length - said.length;
  const rest = more > 0 ? [paragraph(`and ${more} more, which tidemark check lists`)] : [];
  return [{ heading: 'Before you begin', blocks: [...said, ...rest] }];
}

function waterSection(batch: BatchPlan, reader: Reader): Section {
  const { needs, volume, loadVolume } = batch;
  const { water = 'water', 'mix-in': vessel } = needs.batch.value;
  const temperature = needs.batch.value.temperature ?? needs.water?.value.temperature;
  const what = `${water}${temperature === undefined ? '' : ` at ${amountText(temperature, reader)}`}`;
  const where = vessel === undefined ? '' : ` in ${vessel}`;
  const count = loadCount(batch);
  const steps =
    count === 1
      ? [`Begin with about nine tenths of ${figureText(volume, reader)} of ${what}${where}.`]
      : [
          `${figureText(volume, reader)} of ${what}, mixed${where} as ${count} loads of ${figureText(loadVolume, reader)}.`,
          'Begin each load with about nine tenths of its water.',
        ];
  return { heading: 'Water', blocks: [checklist(steps)] };
}

function measureSection(batch: BatchPlan, reader: Reader): Section {
  const { predicted, solved } = mixtureOf(batch);
  const { readings, pH } = stateOf(batch);
  const measured = (batch.needs.batch.value.readings ?? []).flatMap(reading => readingText(reading, reader));
  const isRough = solved.kind === 'solved' && solved.estimated;
  const target = batch.needs.target?.value;
  const count = loadCount(batch);
  const size = figureText(count === 1 ? batch.volume : batch.loadVolume, reader);
  const expected = readings.some(reading => reading.measured !== undefined) ? pH : predicted.pH;
  const hints = [
    { label: 'pH', hint: hintText(expected, target?.pH, reader) },
    { label: 'EC', hint: hintText(predicted.EC, target?.EC, reader) },
  ];
  const blocks: readonly Block[] = [
    checklist([`Make up ${count === 1 ? '' : 'each load '}to ${size} with water, stir well, then measure.`]),
    ...(measured.length === 0 ? [] : [paragraph(`In the recipe already: ${measured.join('; ')}.`)]),
    ...(count > 1 && count <= mostLoads ? loadFields(count, hints) : [write(hints)]),
    ...(isRough ? [paragraph('The labels or the water report leave ions open, so this pH is a rough estimate.')] : []),
  ];
  return { heading: 'Stir and measure', blocks };
}

/** A line for each load, under what is to be expected of all. */
function loadFields(count: number, hints: readonly Required<Field>[]): readonly Block[] {
  const expected = hints.map(({ label, hint }) => `${label} ${hint}`).join('; ');
  const columns = [{ name: 'load', align: 'right' }, ...hints.map(({ label }) => ({ name: label }))] as const;
  const rows = Array.from({ length: count }, (_, at) => [
    String(at + 1),
    ...hints.map(({ label }) => room(`${label} of load ${at + 1}`)),
  ]);
  return [paragraph(`Expect ${expected}.`), table('What each load measures', columns, rows)];
}

/** `about 5.9, wanted 5.5..6.5`. */
function hintText(figure: Figure, band: Range | undefined, reader: Reader): string {
  const about = figure.kind === 'known' ? `about ${amountText(figure.quantity, reader)}` : 'no estimate';
  return band === undefined ? about : `${about}, wanted ${rangeText(band, reader)}`;
}

function readingText(reading: Reading | undefined, reader: Reader): readonly string[] {
  const added = [...(reading?.add ?? [])].flatMap(([name, amount]) =>
    amount === undefined ? [] : [`after ${amountText(amount, reader)} ${name}`],
  );
  const measured = [
    ...(reading?.pH === undefined ? [] : [`pH ${reading.pH}`]),
    ...(reading?.EC === undefined ? [] : [`EC ${amountText(reading.EC, reader)}`]),
  ];
  return added.length + measured.length === 0 ? [] : [[...added, ...measured].join(' ')];
}

function fillSection(plan: Plan, batch: BatchPlan, reader: Reader): readonly Section[] {
  if (batch.serves.length === 0) return [];
  const left = numberOf(batch.left);
  const rest =
    left !== undefined && left < 0
      ? `The batch falls short by ${amountOf(-left, 'volume', reader)}.`
      : `Left over: ${figureText(batch.left, reader)}.`;
  const columns = [
    { name: 'planting' },
    { name: 'containers', align: 'right' },
    { name: 'into each', align: 'right' },
    { name: 'up to', align: 'right' },
    { name: 'filled' },
  ] as const;
  const rows = batch.serves.map(serving => fillRow(plan, serving, reader));
  return [{ heading: 'Fill', blocks: [table('What each container takes', columns, rows), paragraph(rest)] }];
}

function fillRow(plan: Plan, { planting, kind, containers, perContainer }: Serving, reader: Reader) {
  const fill = plan.plantings.get(planting.name)?.fill;
  const level = kind === 'fill' ? fill?.level : fill?.changeLevel;
  const count = numberOf(containers) ?? 1;
  return [
    kind === 'fill' ? planting.name : `${planting.name}, emptied first`,
    figureText(containers, reader),
    figureText(perContainer, reader),
    level === undefined ? '' : figureText(level, reader),
    boxes(count, `${planting.name} filled`),
  ];
}
