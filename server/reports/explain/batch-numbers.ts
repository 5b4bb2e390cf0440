// The numbers of a batch that can be explained.

import { adjustmentOf, finalOf } from '../../plan/adjust.ts';
import type { BatchPlan, DosePlan } from '../../plan/batch.ts';
import { nitrogenForms } from '../../plan/elements.ts';
import { unknown } from '../../plan/figure.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import { stateOf } from '../../plan/state.ts';
import { doseUnit } from '../plan-json/dose.ts';
import { type ExplainedNumber, number, under } from './explained-number.ts';
import { solutionNumbers } from './solution-numbers.ts';

export function batchNumbers(name: string, batch: BatchPlan): readonly ExplainedNumber[] {
  const at = ['batches', name];
  return [
    number([...at, 'volume_L'], () => batch.volume, ['volume']),
    number([...at, 'loads'], () => batch.loads),
    number([...at, 'load_L'], () => batch.loadVolume, ['loads/0/volume_L', 'loads/volume_L']),
    number([...at, 'left_L'], () => batch.left, ['left']),
    ...[...batch.doses].flatMap(([feed, dose]) => doseNumbers(at, feed, dose)),
    ...[...batch.elements].map(([element, figure]) =>
      under([...at, 'elements_mg_per_L', element], () => figure, [[...at, 'elements', element]]),
    ),
    ...nitrogenForms.map(form =>
      under([...at, 'nitrogen_mg_per_L', form], () => batch.nitrogen[form], [[...at, 'nitrogen', form]]),
    ),
    ...solutionNumbers(
      [...at, 'predicted'],
      () => mixtureOf(batch).predicted,
      () => mixtureOf(batch).inAir,
      at,
    ),
    ...adjustmentNumbers([...at, 'adjustment'], batch),
    ...readingNumbers([...at, 'readings'], batch),
    ...solutionNumbers(
      [...at, 'final'],
      () => finalOf(batch).figures,
      () => finalOf(batch).inAir,
    ),
  ];
}

function doseNumbers(at: readonly string[], feed: string, dose: DosePlan): readonly ExplainedNumber[] {
  const unit = doseUnit(dose);
  const keys = [...at, 'doses', feed];
  return [
    under([...keys, `exact_${unit}`], () => dose.exact, [[...keys, 'exact'], keys, [...at, 'feed', feed]]),
    under([...keys, `measured_${unit}`], () => dose.poured, [[...keys, 'measured']]),
    under([...keys, 'error_percent'], () => dose.error, [[...keys, 'error']]),
    under([...at, 'loads', '0', 'doses', feed, unit], () => dose.perLoad, [
      [...keys, 'perLoad'],
      [...at, 'loads', 'doses', feed],
    ]),
  ];
}

/** Also there where the batch asks for no adjustment, so that the answer says what is missing. */
function adjustmentNumbers(keys: readonly string[], batch: BatchPlan): readonly ExplainedNumber[] {
  if (batch.needs.batch.value.adjust === undefined) return [];
  const plan = () => adjustmentOf(batch);
  const unit = plan()?.unit ?? 'mL';
  const adjuster = { value: batch.needs.adjuster?.value };
  const amounts = (['exact', 'firstStep', 'low', 'high'] as const).map(of => ({
    ...number([...keys, `${of}_${unit}`], () => plan()?.[of] ?? unknown([]), [of, ...(of === 'exact' ? [''] : [])]),
    adjuster,
  }));
  return [
    number([...keys, 'from_pH'], () => plan()?.from ?? unknown([]), ['from']),
    number([...keys, 'to_pH'], () => plan()?.to ?? unknown([]), ['to']),
    ...amounts,
    number([...keys, 'firstStep_pH'], () => plan()?.firstStepPH ?? unknown([])),
  ];
}

function readingNumbers(keys: readonly string[], batch: BatchPlan): readonly ExplainedNumber[] {
  return stateOf(batch).readings.flatMap(({ predicted, measured }, index) => [
    number([...keys, String(index), 'predicted_pH'], () => predicted, ['', 'predicted']),
    ...(measured === undefined
      ? []
      : [number([...keys, String(index), 'measured_pH'], () => measured, ['measured', 'pH'])]),
  ]);
}
