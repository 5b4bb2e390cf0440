// One batch as it is worked at the bench: water, volume and loads, doses with their tools, what a litre then holds, its pH and EC,
// what it fills.

import type { Range } from '../../../schema/range.ts';
import { targetElements } from '../../../schema/sections/target.ts';
import { finalOf } from '../../plan/adjust.ts';
import type { BatchPlan, DosePlan } from '../../plan/batch.ts';
import { nitrogenForms } from '../../plan/elements.ts';
import { numberOf, unknown } from '../../plan/figure.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import { hasNitrogen } from '../../plan/nitrogen.ts';
import type { Serving } from '../../plan/serving.ts';
import { stateOf } from '../../plan/state.ts';
import type { Target } from '../../recipe/seen.ts';
import { type Reader, rangeText } from '../../words/amount.ts';
import { measuredAmountText, scaleText } from '../../words/measured.ts';
import { adjustLines, cautionLines, readingLines } from './adjustment.ts';
import { amountOf, block, figureText, type Lines, row } from './rows.ts';
import { against, solutionLines } from './solution.ts';

export function batchText(name: string, batch: BatchPlan, reader: Reader): Lines {
  const { value } = batch.needs.batch;
  return [
    `Batch ${name}`,
    row('water', value.water ?? 'not written'),
    row('volume', volumeText(batch, reader)),
    ...loadLines(batch, reader),
    ...targetLines(batch, reader),
    ...block(
      dosesHeading(batch),
      [...batch.doses.values()].map(dose => doseLine(dose, reader)),
    ),
    ...wholeLines(batch, reader),
    ...block('a litre then holds', elementLines(batch, reader)),
    ...block('solution as mixed', mixedLines(batch, reader)),
    ...block('readings', readingLines(batch, reader)),
    ...block('adjustment', adjustLines(batch, reader)),
    ...block('caution', cautionLines(batch)),
    ...block('solution in the end', endLines(batch, reader)),
    ...block('fills', fillLines(batch, reader)),
  ];
}

function volumeText(batch: BatchPlan, reader: Reader): string {
  const asNeeded = batch.needs.batch.value.volume?.kind === 'as-needed' && batch.volume.kind === 'known';
  return `${figureText(batch.volume, reader)}${asNeeded ? ', as needed for its fills' : ''}`;
}

function loadLines(batch: BatchPlan, reader: Reader): Lines {
  const vessel = batch.needs.batch.value['mix-in'];
  if (vessel === undefined) return [];
  const count = numberOf(batch.loads);
  if (count === undefined) return [row('mix in', `${vessel}, ${figureText(batch.loads, reader)}`)];
  const each = figureText(batch.loadVolume, reader);
  return [row('mix in', count === 1 ? `${vessel}, one load` : `${vessel}, ${count} loads of ${each}`)];
}

function targetLines(batch: BatchPlan, reader: Reader): Lines {
  const { target } = batch.needs;
  if (target === undefined) return [];
  const { pH, EC, 'pH-aim': aim } = target.value;
  const parts = [
    ...(pH === undefined ? [] : [`pH ${rangeText(pH, reader)}`]),
    ...(aim === undefined ? [] : [`aim ${aim}`]),
    ...(EC === undefined ? [] : [`EC ${rangeText(EC, reader)}`]),
  ];
  return [row('target', parts.length === 0 ? target.name : `${target.name}: ${parts.join(', ')}`)];
}

function dosesHeading(batch: BatchPlan): string {
  const order = batch.doses.size > 1 ? ', in this order' : '';
  return (numberOf(batch.loads) ?? 1) > 1 ? `feed for each load${order}` : `feed${order}`;
}

/** `green  20 mL = 2 × 10 mL syringe`, and the exact dose where it is another. */
function doseLine({ name, perLoad, measured }: DosePlan, reader: Reader): string {
  if (perLoad.kind === 'unknown' || measured.kind === 'no-tool') return row(name, figureText(perLoad, reader), 2);
  const { dimension, value } = perLoad.quantity;
  if (measured.kind === 'too-small') {
    const finest = `${scaleText({ dimension, value: measured.smallest }, reader)} ${measured.tool}`;
    return row(name, `${figureText(perLoad, reader)}, less than the finest tool measures: ${finest}`, 2);
  }
  const total = measuredAmountText(measured, dimension, reader);
  // Beside millilitres the exact dose stands in millilitres too.
  const exact = amountOf(value, dimension, total.endsWith(' mL') ? 'metric' : reader);
  const ways = measured.with.map(({ tool, times, amount, step }) => {
    return `${times} × ${scaleText({ dimension, value: amount }, reader, step)} ${tool}`;
  });
  return row(name, `${total} = ${ways.join(' + ')}${exact === total ? '' : `; exact ${exact}`}`, 2);
}

/** What is poured in all, where it takes more than one load. */
function wholeLines(batch: BatchPlan, reader: Reader): Lines {
  if ((numberOf(batch.loads) ?? 1) < 2) return [];
  return block(
    'feed in all',
    [...batch.doses.values()].map(dose => row(dose.name, figureText(dose.poured, reader), 2)),
  );
}

function elementLines(batch: BatchPlan, reader: Reader): Lines {
  const target = batch.needs.target?.value;
  const elements = [...batch.elements].map(([element, figure]) =>
    row(element, against(figure, bandOf(target, element), reader), 2),
  );
  if (!hasNitrogen(batch.nitrogen)) return elements;
  const gaps = nitrogenForms.flatMap(form => {
    const figure = batch.nitrogen[form];
    return figure.kind === 'unknown' ? figure.wants : [];
  });
  if (gaps.length > 0 && nitrogenForms.every(form => batch.nitrogen[form].kind === 'unknown')) {
    return [...elements, row('N by its forms', figureText(unknown(gaps), reader), 2)];
  }
  const forms = nitrogenForms.map(form => row(`N as ${form}`, figureText(batch.nitrogen[form], reader), 2));
  return [...elements, ...forms];
}

function bandOf(target: Target | undefined, element: string): Range<'mass-per-volume'> | undefined {
  const key = targetElements.find(one => one === element);
  return key === undefined ? undefined : target?.[key];
}

function mixedLines(batch: BatchPlan, reader: Reader): Lines {
  const { predicted, inAir, solved } = mixtureOf(batch);
  const isGuess = solved.kind === 'solved' && solved.estimated;
  return [
    ...solutionLines({ figures: predicted, inAir }, batch.needs.target?.value, reader),
    ...(isGuess ? [row('certainty', 'an estimate, as some ions are not stated: a measured pH overrules it', 2)] : []),
  ];
}

/** After readings and adjustment; nothing where there are none, or where it is not known. */
function endLines(batch: BatchPlan, reader: Reader): Lines {
  const isMoved = batch.needs.batch.value.adjust !== undefined || stateOf(batch).readings.length > 0;
  const final = finalOf(batch);
  if (!isMoved || final.figures.pH.kind === 'unknown') return [];
  return solutionLines(final, batch.needs.target?.value, reader);
}

function fillLines(batch: BatchPlan, reader: Reader): Lines {
  if (batch.serves.length === 0) return [];
  const left = batch.left.kind === 'known' ? batch.left.quantity.value : undefined;
  const rest =
    left !== undefined && left < 0
      ? row('short by', amountOf(-left, 'volume', reader), 2)
      : row('left over', figureText(batch.left, reader), 2);
  return [...batch.serves.map(serving => servingLine(serving, reader)), rest];
}

function servingLine({ planting, stage, kind, containers, perContainer, total }: Serving, reader: Reader): string {
  const when = kind === 'fill' ? 'first fill' : 'change';
  const count = figureText(containers, reader);
  const each = figureText(perContainer, reader);
  const fact =
    perContainer.kind === 'unknown'
      ? each
      : `${count} × ${each} = ${figureText(total, reader)}, ${when} for ${stage.name}`;
  return row(planting.name, fact, 2);
}
