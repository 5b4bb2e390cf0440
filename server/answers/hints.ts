// What stands in the text beside what is written: the dose a rate comes to, the acid an adjustment takes, the solution a fill takes
// and how long it lasts. Few and short: a hint says what the text does not. Only what stands in the range is worked out.

import { formatDate } from '../../schema/date.ts';
import { type Path, valuePart } from '../../schema/place.ts';
import { adjustmentOf } from '../plan/adjust.ts';
import type { BatchPlan, DosePlan } from '../plan/batch.ts';
import type { Plan, PlantingPlan } from '../plan/plan.ts';
import { isForecast, plantingSeasonOf } from '../plan/season.ts';
import { pairRange, rangeOf } from '../syntax/place.ts';
import { positionAt } from '../syntax/position.ts';
import type { Range } from '../syntax/tree.ts';
import { amountText, type Reader } from '../words/amount.ts';
import { figureText } from '../words/figure.ts';
import { isFelt, measuredAmountText } from '../words/measured.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { adjustmentHover } from './hover/adjustment.ts';
import { volumeHover } from './hover/batch.ts';
import { doseHover } from './hover/dose.ts';
import { fillHover } from './hover/planting.ts';
import { stagesHover } from './hover/season.ts';

export type HintKind = 'dose' | 'fill' | 'volume' | 'adjustment';

export interface Hint {
  /** Behind what it is about. */
  readonly offset: number;
  readonly text: string;
  readonly kind: HintKind;
  /** Markdown, made when it is asked for: what a hover on the text would say. */
  readonly tooltip: () => string;
}

/** The hints of the wanted kinds that stand within a range, in the order of the text. What is not wanted is not worked out. */
export function hints(
  snapshot: Snapshot,
  range: Range,
  isWanted: (kind: HintKind) => boolean = () => true,
): readonly Hint[] {
  const { plan } = snapshot;
  const found: Hint[] = [];
  const push = pusher(snapshot, range, isWanted, found);
  for (const batch of plan.batches.values()) {
    if (isNear(snapshot, ['batches', batch.needs.batch.name], range)) batchHints(snapshot, batch, push);
  }
  for (const planting of plan.plantings.values()) {
    if (isNear(snapshot, ['plantings', planting.planting.name], range)) plantingHints(snapshot, planting, push);
  }
  return found.sort((a, b) => a.offset - b.offset);
}

function batchHints(snapshot: Snapshot, batch: BatchPlan, push: Push): void {
  const reader = snapshot.recipe.show;
  const { path } = batch.needs.batch;
  push(
    [...path, 'volume'],
    'volume',
    () => volumeHint(batch, reader),
    () => volumeHover(batch, reader),
  );
  for (const dose of batch.doses.values()) {
    push(
      dose.at.path,
      'dose',
      () => doseHint(batch, dose, reader),
      () => doseHover(batch, dose, reader),
    );
  }
  const adjust = [...path, 'adjust'];
  const at = isOnOneLine(snapshot, adjust) ? adjust : [...adjust, 'with'];
  push(
    at,
    'adjustment',
    () => adjustmentHint(batch, reader),
    () => adjustmentHover(batch, reader) ?? '',
  );
}

function plantingHints(snapshot: Snapshot, planting: PlantingPlan, push: Push): void {
  const { plan, recipe } = snapshot;
  const reader = recipe.show;
  const { path, value } = planting.planting;
  const fill = value.fill === undefined ? 'container' : 'fill';
  push(
    [...path, fill],
    'fill',
    () => fillHint(planting, reader),
    () => fillHover(planting, reader),
  );
  push(
    [...path, 'stages'],
    'fill',
    () => seasonHint(plan, planting),
    () => stagesHover(plan, planting, reader) ?? '',
  );
}

/** `= 40 mL`; `≈ 39.5 mL` where the tools round it; `= 2 × 20 mL` for two loads; led by the rate where the label gives it. */
function doseHint({ loads }: BatchPlan, dose: DosePlan, reader: Reader): string | undefined {
  const { exact, perLoad, measured, error, rate } = dose;
  if (exact.kind === 'unknown' || perLoad.kind === 'unknown' || loads.kind === 'unknown') return undefined;
  const { dimension } = perLoad.quantity;
  const isRounded = measured.kind === 'measured' && isFelt(error);
  const each = isRounded ? measuredAmountText(measured, dimension, reader) : amountText(perLoad.quantity, reader);
  const several = 1 < loads.quantity.value;
  if (dose.dose.kind === 'amount' && !several && !isRounded) return undefined;
  const amount = `${isRounded ? '≈' : '='} ${several ? `${amountText(loads.quantity, reader)} × ` : ''}${each}`;
  return dose.dose.kind === 'label' && rate?.kind === 'known'
    ? `${amountText(rate.quantity, reader)} ${amount}`
    : amount;
}

/** What is needed, where no volume is written; else the loads, where there are several. */
function volumeHint({ volume, loads, loadVolume, needs }: BatchPlan, reader: Reader): string | undefined {
  if (volume.kind === 'unknown') return undefined;
  const several =
    loads.kind === 'known' && 1 < loads.quantity.value
      ? `${amountText(loads.quantity, reader)} × ${figureText(loadVolume, reader)}`
      : undefined;
  const asNeeded = needs.batch.value.volume?.kind === 'as-needed' ? figureText(volume, reader) : undefined;
  const said = [asNeeded, several].filter(part => part !== undefined);
  return said.length === 0 ? undefined : `= ${said.join(' = ')}`;
}

/** `= 2.23 L` in each container, `= 3 × 2.23 L` where there are several. */
function fillHint({ fill, containers }: PlantingPlan, reader: Reader): string | undefined {
  if (fill.volume.kind === 'unknown' || containers.kind === 'unknown') return undefined;
  const many = containers.quantity.value === 1 ? '' : `${amountText(containers.quantity, reader)} × `;
  return `= ${many}${amountText(fill.volume.quantity, reader)}`;
}

/** `≈ 29.8 mL, first 14.5 mL ⚠`: the sign stands for the cautions, which its tooltip spells out. */
function adjustmentHint(batch: BatchPlan, reader: Reader): string | undefined {
  const adjustment = adjustmentOf(batch);
  if (adjustment === undefined || adjustment.exact.kind === 'unknown') return undefined;
  const { exact, firstStep } = adjustment;
  if (exact.quantity.value === 0) return '= nothing to add';
  return `≈ ${figureText(exact, reader)}, first ${figureText(firstStep, reader)} ⚠`;
}

/** `until 2027-05-19`, and where the fill does not last until then `low on 2027-03-17`. */
function seasonHint(plan: Plan, planting: PlantingPlan): string | undefined {
  const { stages, forecast } = plantingSeasonOf(plan, planting);
  const last = 'kind' in stages ? undefined : stages.at(-1);
  if (last === undefined) return undefined;
  const low = isForecast(forecast) && forecast.runsLow !== undefined ? `, low on ${formatDate(forecast.runsLow)}` : '';
  return `until ${formatDate(last.to)}${low}`;
}

type Push = (path: Path, kind: HintKind, text: () => string | undefined, tooltip: () => string) => void;

/** Adds a hint behind a value. Its text is worked out only where it is wanted and stands in the range. */
function pusher({ document }: Snapshot, range: Range, isWanted: (kind: HintKind) => boolean, into: Hint[]): Push {
  return (path, kind, text, tooltip) => {
    if (!isWanted(kind)) return;
    const at = rangeOf(document, { path, part: valuePart });
    if (at === undefined || at.from === at.to || at.to < range.from || range.to < at.to) return;
    const said = text();
    if (said !== undefined) into.push({ offset: at.to, text: said, kind, tooltip });
  };
}

function isOnOneLine({ document }: Snapshot, path: Path): boolean {
  const at = rangeOf(document, { path, part: valuePart });
  return at !== undefined && positionAt(document, at.from).line === positionAt(document, at.to).line;
}

function isNear({ document }: Snapshot, path: Path, range: Range): boolean {
  const entry = pairRange(document, path);
  return entry !== undefined && entry.from <= range.to && range.from <= entry.to;
}
