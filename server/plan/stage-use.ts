// What the plants of a container drink in a stage of a planting, on the mean of its days.

import { daysBetween } from '../../schema/date.ts';
import type { Planting } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import type { DatedStage } from './forecast.ts';
import { type UseRate, useRateOver } from './use-rate.ts';

/** Undefined where the planting has no stages. */
export function stageUseOf(
  planting: Sourced<Planting>,
  stages: readonly DatedStage[],
  stage: DatedStage,
): UseRate | undefined {
  const [first] = stages;
  const last = stages[stages.length - 1];
  if (first === undefined || last === undefined) return undefined;
  const since = (day: DatedStage['from']): number => daysBetween(first.from, day);
  return useRateOver(planting, stage.stage, { from: since(stage.from), to: since(stage.to), days: since(last.to) });
}
