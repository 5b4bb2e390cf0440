// A dose for programs: exact, as measured, with which tools. Volumes in mL, masses in g.

import { keyAt } from '../../../schema/place.ts';
import type { PlanJson } from '../../../schema/plan-json.ts';
import type { DosePlan } from '../../plan/batch.ts';
import type { DoseFigure } from '../../plan/dose.ts';
import type { Want } from '../../plan/figure.ts';
import { type Gaps, tidy } from './gaps.ts';

type DoseJson = PlanJson['batches'][string]['doses'][string];
type AmountJson = PlanJson['batches'][string]['loads'][number]['doses'][string];

export function doseJson(key: readonly (string | number)[], dose: DosePlan, gaps: Gaps): DoseJson {
  const unit = doseUnit(dose);
  const exact = gaps.number([...key, `exact_${unit}`], dose.exact, perBase[unit]);
  const { measured } = dose;
  if (measured.kind !== 'measured') {
    const wants = dose.perLoad.kind === 'unknown' ? dose.perLoad.wants : toolFor(dose, unit);
    const none = gaps.wants([...key, `measured_${unit}`], wants);
    gaps.wants([...key, 'error_percent'], wants);
    return { [`exact_${unit}`]: exact, [`measured_${unit}`]: none, with: [], error_percent: none };
  }
  return {
    [`exact_${unit}`]: exact,
    [`measured_${unit}`]: gaps.number([...key, `measured_${unit}`], dose.poured, perBase[unit]),
    with: measured.with.map(({ tool, times, amount }) => ({ tool, times, [unit]: tidy(amount * perBase[unit]) })),
    // Shown in hundredths of a per cent: what is below them is no error of measuring.
    error_percent: rounded(gaps.number([...key, 'error_percent'], dose.error, 100)),
  };
}

function toolFor({ measured }: DosePlan, unit: DoseUnit): readonly Want[] {
  const says = measured.kind === 'too-small' ? `a finer tool than ${measured.tool}` : `a tool that measures ${unit}`;
  return [{ says, at: keyAt(['tools']) }];
}

export function amountJson(
  key: readonly (string | number)[],
  unit: DoseUnit,
  figure: DoseFigure,
  gaps: Gaps,
): AmountJson {
  return { [unit]: gaps.number([...key, unit], figure, perBase[unit]) };
}

export type DoseUnit = 'mL' | 'g';

/** How many of the unit the base unit of its dimension holds: a litre 1000 mL, a gram 1 g. */
export const perBase: Readonly<Record<DoseUnit, number>> = { mL: 1000, g: 1 };

/** What a dose is measured in, known even where its amount is not; mL where nothing says. */
export function doseUnit({ dose, exact, feed }: DosePlan): DoseUnit {
  if (exact.kind === 'known') return exact.quantity.dimension === 'mass' ? 'g' : 'mL';
  const written =
    dose.kind === 'amount'
      ? dose.amount.dimension
      : dose.kind === 'rate'
        ? dose.rate.dimension
        : feed?.value.label?.dimension;
  return written === 'mass' || written === 'mass-per-volume' ? 'g' : 'mL';
}

function rounded(percent: number | null): number | null {
  return percent === null ? null : Math.round(percent * 100) / 100 + 0;
}
