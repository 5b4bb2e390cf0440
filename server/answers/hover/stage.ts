// A stage: its days in each planting that goes through it, and what its plants drink.

import { sources } from '../../../schema/sources.ts';
import { cropNamed, cropRow } from '../../plan/crops.ts';
import type { DatedStage } from '../../plan/forecast.ts';
import type { Plan, PlantingPlan } from '../../plan/plan.ts';
import { plantingSeasonOf } from '../../plan/season.ts';
import { stageUseOf } from '../../plan/stage-use.ts';
import type { Reader } from '../../words/amount.ts';
import { figureText, wantsText } from '../../words/figure.ts';
import { blocks, code } from './blocks.ts';
import { stageDays } from './season.ts';

/** In every planting that goes through it; undefined where none does. */
export function stageSeasonBlock(plan: Plan, name: string, reader: Reader): string | undefined {
  const said = [...plan.plantings.values()].flatMap(planned => {
    if (planned.planting.value.stages?.includes(name) !== true) return [];
    const { stages } = plantingSeasonOf(plan, planned);
    if ('kind' in stages) return [`- ${code(planned.planting.name)}: ${wantsText(stages.wants)}`];
    return stages
      .filter(({ stage }) => stage.name === name)
      .map(stage => `- ${code(planned.planting.name)}: ${daysAndUse(planned, stages, stage, reader)}`);
  });
  return said.length === 0 ? undefined : said.join('\n');
}

/** On a stage in a planting's list: its days there; undefined where they are not known. */
export function stageInPlanting(plan: Plan, planned: PlantingPlan, index: number, reader: Reader): string | undefined {
  const name = planned.planting.value.stages?.[index];
  if (name === undefined) return undefined;
  const { stages } = plantingSeasonOf(plan, planned);
  if ('kind' in stages) return wantsText(stages.wants);
  const stage = stages[index];
  if (stage === undefined) return undefined;
  const batch = stage.batch === undefined ? '' : `, fed by ${code(stage.batch.needs.batch.name)}`;
  return blocks(
    `**${code(name)} of ${code(planned.planting.name)}**: ${daysAndUse(planned, stages, stage, reader)}${batch}`,
  );
}

function daysAndUse(
  { planting }: PlantingPlan,
  stages: readonly DatedStage[],
  stage: DatedStage,
  reader: Reader,
): string {
  const days = stageDays(stage.from, stage.to);
  const use = stageUseOf(planting, stages, stage);
  if (use === undefined) return days;
  if (use.mid.kind === 'unknown') return `${days}. ${wantsText(use.mid.wants)}`;
  if (use.kind === 'written') return `${days}; a container drinks ${figureText(use.mid, reader)}`;
  const crop = cropNamed(planting.value.crop);
  const source = crop === undefined ? '' : ` (*${sources[cropRow(crop).source].title}*)`;
  const range = `${figureText(use.low, reader)} to ${figureText(use.high, reader)}`;
  return `${days}; by what is published${source} a container drinks ${range} on the mean, taken as ${figureText(use.mid, reader)}`;
}
