// One batch for programs: its doses and loads, what a litre holds, the solution as mixed and in the end, its readings.

import type { PlanJson } from '../../../schema/plan-json.ts';
import { finalOf } from '../../plan/adjust.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { numberOf } from '../../plan/figure.ts';
import { mixtureOf } from '../../plan/mixture.ts';
import { type ReadingPlan, stateOf } from '../../plan/state.ts';
import { adjustmentJson } from './adjustment.ts';
import { amountJson, doseJson, doseUnit, perBase } from './dose.ts';
import { type Gaps, tidy } from './gaps.ts';
import { type SolutionJson, solutionJson } from './solution.ts';

type BatchJson = PlanJson['batches'][string];

export function batchJson(name: string, batch: BatchPlan, gaps: Gaps): BatchJson {
  const key = ['batches', name];
  const { predicted, inAir, solved } = mixtureOf(batch);
  const final = finalOf(batch);
  const solution = (of: string, figures: typeof predicted, stood: typeof predicted): SolutionJson =>
    solutionJson(figures, stood, (under, figure, times) => gaps.number([...key, of, ...under], figure, times));
  const elements = [...batch.elements].map(
    ([element, figure]) => [element, gaps.number([...key, 'elements_mg_per_L', element], figure)] as const,
  );
  return {
    volume_L: gaps.number([...key, 'volume_L'], batch.volume),
    loads: loadsJson(key, batch, gaps),
    doses: Object.fromEntries(
      [...batch.doses].map(([feed, dose]) => [feed, doseJson([...key, 'doses', feed], dose, gaps)]),
    ),
    elements_mg_per_L: Object.fromEntries(elements),
    nitrogen_mg_per_L: {
      nitrate: gaps.number([...key, 'nitrogen_mg_per_L', 'nitrate'], batch.nitrogen.nitrate),
      ammonium: gaps.number([...key, 'nitrogen_mg_per_L', 'ammonium'], batch.nitrogen.ammonium),
      urea: gaps.number([...key, 'nitrogen_mg_per_L', 'urea'], batch.nitrogen.urea),
    },
    predicted: solution('predicted', predicted, inAir),
    estimated: solved.kind === 'solved' ? solved.estimated : gaps.wants([...key, 'estimated'], solved.wants),
    measured: measuredJson([...key, 'measured'], batch, gaps),
    adjustment: adjustmentJson([...key, 'adjustment'], batch, gaps),
    readings: stateOf(batch).readings.map((reading, index) => readingJson([...key, 'readings', index], reading, gaps)),
    final: solution('final', final.figures, final.inAir),
  };
}

/** Beyond this many loads the list says nothing that its length does not. */
const mostLoads = 1000;

function loadsJson(key: readonly string[], batch: BatchPlan, gaps: Gaps): BatchJson['loads'] {
  const at = [...key, 'loads'];
  if (batch.loads.kind === 'unknown') {
    gaps.wants(at, batch.loads.wants);
    return [];
  }
  const count = numberOf(batch.loads) ?? 0;
  if (count > mostLoads) {
    gaps.says(at, `a larger vessel: ${count} loads are not listed`);
    return [];
  }
  return Array.from({ length: count }, (_, index) => ({
    volume_L: gaps.number([...at, index, 'volume_L'], batch.loadVolume),
    doses: Object.fromEntries(
      [...batch.doses].map(([feed, dose]) => [
        feed,
        amountJson([...at, index, 'doses', feed], doseUnit(dose), dose.perLoad, gaps),
      ]),
    ),
  }));
}

/** The latest measured pH and EC; null where there is no reading of either. */
function measuredJson(key: readonly string[], batch: BatchPlan, gaps: Gaps): BatchJson['measured'] {
  const readings = (batch.needs.batch.value.readings ?? []).toReversed();
  const pH = readings.find(reading => reading?.pH !== undefined)?.pH;
  const ec = readings.find(reading => reading?.EC !== undefined)?.EC?.value;
  if (pH === undefined && ec === undefined) return null;
  const noReading = (of: string): null => gaps.says([...key, of], 'a reading of it');
  return { pH: pH ?? noReading('pH'), EC_mS_per_cm: ec ?? noReading('EC_mS_per_cm') };
}

function readingJson(
  key: readonly (string | number)[],
  { reading, predicted, measured }: ReadingPlan,
  gaps: Gaps,
): BatchJson['readings'][number] {
  const added = [...(reading?.add ?? [])].flatMap(([name, amount]) => {
    if (amount === undefined) return [];
    const unit = amount.dimension === 'mass' ? 'g' : 'mL';
    return [[name, { [unit]: tidy(amount.value * perBase[unit]) }] as const];
  });
  return {
    added: Object.fromEntries(added),
    measured_pH: numberOf(measured) ?? null,
    predicted_pH: gaps.number([...key, 'predicted_pH'], predicted),
  };
}
