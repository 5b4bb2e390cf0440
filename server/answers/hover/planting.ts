// A planting and its fill: the level, how much one container takes, and all of them together.

import type { PlantingPlan } from '../../plan/plan.ts';
import type { Reader } from '../../words/amount.ts';
import { explanationText, figureText, sourcesText, wantsText } from '../../words/figure.ts';
import { blocks, code, lines } from './blocks.ts';

export function fillHover(planting: PlantingPlan, reader: Reader): string {
  return blocks(`**Fill of ${code(planting.planting.name)}**`, fillBlock(planting, reader));
}

export function fillBlock({ fill, containers, together }: PlantingPlan, reader: Reader): string {
  if (fill.volume.kind === 'unknown') return wantsText(fill.volume.wants);
  const many = containers.kind === 'known' && 1 < containers.quantity.value;
  const all = many
    ? `${figureText(containers, reader)} containers together: **${figureText(together, reader)}**`
    : undefined;
  return blocks(
    lines(
      `Each container: **${figureText(fill.volume, reader)}**, to a level of ${figureText(fill.level, reader)}`,
      all,
    ),
    explanationText(fill.volume, reader),
    fill.level.kind === 'known' && fill.level.by.kind === 'step' ? explanationText(fill.level, reader) : undefined,
    sourcesText([fill.volume]),
  );
}
