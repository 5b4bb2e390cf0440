// What the plants of one container drink from transplanting to the end of the last stage: a range, where it is published as one.

import { daysBetween } from '../../schema/date.ts';
import { assumed, type Figure, formula } from './figure.ts';
import type { DatedStage } from './forecast.ts';
import type { PlantingPlan } from './plan.ts';
import { stageUseOf } from './stage-use.ts';
import type { UseBound } from './use-rate.ts';

export interface LifeUse {
  readonly low: Figure<'volume'>;
  readonly mid: Figure<'volume'>;
  readonly high: Figure<'volume'>;
}

export function lifeUseOf({ planting }: PlantingPlan, stages: readonly DatedStage[]): LifeUse {
  const rates = stages.flatMap(stage => stageUseOf(planting, stages, stage) ?? []);
  const days = stages.map(({ stage, from, to }) =>
    assumed({ dimension: 'duration', value: daysBetween(from, to) }, `the days of ${stage.name}`, 'tidemark-design'),
  );
  const of = (bound: UseBound) => lifeUsed({ uses: rates.map(rate => rate[bound]), days });
  return { low: of('low'), mid: of('mid'), high: of('high') };
}

export const lifeUsed = formula({
  id: 'life-used',
  says: 'what the plants of one container drink over all stages',
  statement: 'drunk = sum of use × days',
  source: 'tidemark-design',
  takes: { uses: ['volume-per-time'], days: ['duration'] },
  gives: 'volume',
  evaluate: ({ uses, days }) => uses.reduce((sum, use, index) => sum + (use / 1000) * (days[index] ?? 0), 0),
});
