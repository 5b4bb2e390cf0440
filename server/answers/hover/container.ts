// A container: how much it holds, brimful and to the net cup, and how much a centimetre of level is.

import type { ContainerPlan } from '../../plan/container.ts';
import type { Reader } from '../../words/amount.ts';
import { explanationText, figureText, sourcesText, wantsText } from '../../words/figure.ts';
import { blocks, lines } from './blocks.ts';

export function containerBlock(container: ContainerPlan, reader: Reader): string {
  const { brimful, netCupLine, netCupVolume, centimetre } = container;
  if (brimful.kind === 'unknown') return wantsText(brimful.wants);
  const cup =
    netCupLine.kind === 'known'
      ? `To the net cup: ${figureText(netCupVolume, reader)}, at a level of ${figureText(netCupLine, reader)}`
      : undefined;
  return blocks(
    lines(`Brimful: ${figureText(brimful, reader)}`, cup, `A centimetre of level: ${figureText(centimetre, reader)}`),
    netCupVolume.kind === 'known' ? explanationText(netCupVolume, reader) : explanationText(brimful, reader),
    sourcesText([netCupVolume, brimful]),
  );
}
