// A batch: its volume and loads, its doses in order, what a litre holds against the target, and what it serves.

import { unitOf } from '../../../schema/find-unit.ts';
import { targetElements } from '../../../schema/sections/target.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import { standing } from '../../plan/standing.ts';
import type { Scope } from '../../recipe/use.ts';
import { amountText, countIn, type Reader } from '../../words/amount.ts';
import { elementsText, elementWants } from '../../words/elements.ts';
import { explanationText, figureText, sourcesText, wantsText } from '../../words/figure.ts';
import { adjustmentBlock } from './adjustment.ts';
import { blocks, code, lines, table } from './blocks.ts';
import { formulationBlock } from './formulation.ts';
import { solutionBlock, standings } from './solution.ts';

export function batchHover(batch: BatchPlan, scope: Scope, reader: Reader): string {
  const { predicted } = mixtureOf(batch);
  return blocks(
    headline(batch, reader),
    dosesList(batch, reader),
    solutionBlock(batch, reader),
    elementsTable(batch),
    formulationBlock(batch, scope, reader),
    adjustmentBlock(batch, reader),
    servesList(batch, reader),
    sourcesText([batch.volume, ...batch.elements.values(), predicted.pH, predicted.EC]),
  );
}

/** The volume of a batch: how it is reckoned, its loads, and what it serves. */
export function volumeHover(batch: BatchPlan, reader: Reader): string {
  const { volume } = batch;
  const reckoned = volume.kind === 'unknown' || volume.by.kind !== 'given';
  return blocks(
    headline(batch, reader),
    reckoned ? explanationText(volume, reader) : undefined,
    servesList(batch, reader),
    sourcesText([volume]),
  );
}

function headline(batch: BatchPlan, reader: Reader): string {
  const { needs, volume, loads, loadVolume } = batch;
  const of = needs.batch.value.water === undefined ? '' : ` of ${code(needs.batch.value.water)}`;
  const name = `**${code(needs.batch.name)}: ${figureText(volume, reader)}**${of}`;
  if (loads.kind === 'unknown' || loads.quantity.value < 2 || loadVolume.kind === 'unknown') return name;
  const vessel = needs.vessel === undefined ? '' : ` in ${code(needs.vessel.name)}`;
  return `${name}, ${amountText(loads.quantity, reader)} loads of ${amountText(loadVolume.quantity, reader)}${vessel}`;
}

function dosesList({ doses, loads }: BatchPlan, reader: Reader): string | undefined {
  const several = loads.kind === 'known' && 1 < loads.quantity.value;
  const said = [...doses.values()].map(({ name, exact, perLoad }, index) => {
    const each = several ? `, ${figureText(perLoad, reader)} a load` : '';
    return `${index + 1}. ${code(name)}: ${figureText(exact, reader)}${each}`;
  });
  return said.length === 0 ? undefined : said.join('\n');
}

const milligrams = unitOf('mg/L');

/** A litre against the target, and what else it holds in one line. */
function elementsTable({ elements, needs }: BatchPlan): string | undefined {
  const target = needs.target?.value;
  const wanted = targetElements.filter(element => target?.[element] !== undefined);
  const rows = wanted.flatMap(element => {
    const figure = elements.get(element);
    const band = target?.[element];
    if (band === undefined) return [];
    const holds = figure?.kind === 'known' ? countIn(figure.quantity, milligrams) : '?';
    const ends = `${countIn({ ...band, value: band.low }, milligrams)}..${countIn({ ...band, value: band.high }, milligrams)}`;
    return [[element, holds, ends, figure?.kind === 'known' ? standings[standing(figure, band)] : 'not stated']];
  });
  const others = elementsText(new Map([...elements].filter(([element]) => !wanted.some(one => one === element))));
  const wants = elementWants(elements);
  return blocks(
    table(['', 'mg/L', code(needs.target?.name ?? 'target'), ''], rows, [1]),
    lines(
      others === undefined ? undefined : `${rows.length === 0 ? 'A litre holds' : 'Besides'} ${others}.`,
      wants.length === 0 ? undefined : wantsText(wants),
    ),
  );
}

function servesList({ serves, needed, left, volume }: BatchPlan, reader: Reader): string | undefined {
  if (serves.length === 0) return undefined;
  const said = serves.map(({ planting, stage, kind, perContainer, containers, total }) => {
    const many = containers.kind === 'known' && containers.quantity.value !== 1;
    const each = `${figureText(containers, reader)} × ${figureText(perContainer, reader)} = `;
    const what = kind === 'fill' ? 'first fill' : `change to ${code(stage.name)}`;
    return `- ${code(planting.name)}, ${what}: ${many ? each : ''}${figureText(total, reader)}`;
  });
  const short = left.kind === 'known' && left.quantity.value < 0;
  const rest = short ? 'short' : 'left';
  const remains = figureText(left, reader).replace(/^-/u, '');
  const sum =
    needed.kind === 'unknown' || volume.kind === 'unknown'
      ? undefined
      : `The fills take ${figureText(needed, reader)}; ${remains} ${rest}.`;
  return blocks(said.join('\n'), sum);
}
