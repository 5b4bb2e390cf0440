// A tool or mixing vessel: which batches are mixed in it, and which doses are measured with it.

import type { Plan } from '../../plan/plan.ts';
import type { Reader } from '../../words/amount.ts';
import { figureText } from '../../words/figure.ts';
import { measuredText } from '../../words/measured.ts';
import { code, lines } from './blocks.ts';

export function toolBlock(name: string, { batches }: Plan, reader: Reader): string | undefined {
  const said = [...batches.values()].flatMap(({ needs, loads, loadVolume, doses }) => {
    const batch = code(needs.batch.name);
    const isMixed = needs.vessel?.name === name && loadVolume.kind === 'known';
    const mixed = `${batch} is mixed in it: ${figureText(loads, reader)} × ${figureText(loadVolume, reader)}.`;
    const measured = [...doses.values()].flatMap(({ name: feed, measured: way, perLoad }) => {
      if (way.kind !== 'measured' || perLoad.kind === 'unknown') return [];
      const how = way.with.some(({ tool }) => tool === name);
      return how ? [`${code(feed)} for ${batch}: ${measuredText(way, perLoad.quantity.dimension, reader)}.`] : [];
    });
    return isMixed ? [mixed, ...measured] : measured;
  });
  return lines(...said);
}
