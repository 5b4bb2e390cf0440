// A dose: how much for the batch, for each load, as measured, and what it adds to a litre.

import type { BatchPlan, DosePlan } from '../../plan/batch.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { elementsText, elementWants } from '../../words/elements.ts';
import { explanationText, sourcesText, wantsText } from '../../words/figure.ts';
import { errorText, isFelt, measuredText, scaleText } from '../../words/measured.ts';
import { blocks, code, lines } from './blocks.ts';

export function doseHover(batch: BatchPlan, dose: DosePlan, reader: Reader): string {
  const { exact, rate } = dose;
  const name = code(dose.name);
  if (exact.kind === 'unknown') return blocks(`**${name}** in ${code(batchName(batch))}`, wantsText(exact.wants));
  const volume = batch.volume.kind === 'known' ? ` in ${amountText(batch.volume.quantity, reader)}` : '';
  const written = exact.by.kind === 'given' && rate === undefined;
  return blocks(
    `**${amountText(exact.quantity, reader)} of ${name}**${volume}`,
    lines(loadsLine(batch, dose, reader), measuredLine(dose, reader), addsLine(dose)),
    written ? undefined : explanationText(exact, reader),
    sourcesText([exact, ...dose.adds.values()]),
    dose.dose.kind === 'label' ? 'The label of the feed overrules the recipe.' : undefined,
  );
}

function batchName(batch: BatchPlan): string {
  return batch.needs.batch.name;
}

function loadsLine({ loads, loadVolume }: BatchPlan, { perLoad }: DosePlan, reader: Reader): string | undefined {
  if (loads.kind === 'unknown' || loads.quantity.value < 2) return undefined;
  if (loadVolume.kind === 'unknown' || perLoad.kind === 'unknown') return undefined;
  const each = amountText(perLoad.quantity, reader);
  return `In ${amountText(loads.quantity, reader)} loads of ${amountText(loadVolume.quantity, reader)}: **${each}** each.`;
}

function measuredLine({ measured, perLoad, error }: DosePlan, reader: Reader): string | undefined {
  if (perLoad.kind === 'unknown') return undefined;
  const { dimension } = perLoad.quantity;
  if (measured.kind === 'too-small') {
    const smallest = scaleText({ dimension, value: measured.smallest }, reader);
    return `Too small to measure: the finest tool measures ${smallest}, with ${code(measured.tool)}.`;
  }
  const how = measuredText(measured, dimension, reader);
  const off = isFelt(error) ? errorText(error, reader) : undefined;
  return how === undefined ? undefined : `Measure ${how}${off === undefined ? '' : `: ${off}`}.`;
}

function addsLine({ adds }: DosePlan): string | undefined {
  const known = elementsText(adds);
  if (known !== undefined) return `Adds ${known}.`;
  const wants = elementWants(adds);
  return wants.length === 0 ? undefined : `Elements: ${wantsText(wants)}`;
}
