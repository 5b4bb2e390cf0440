// What may cloud a solution, in words: the names of the solids, each with its index.

import { minerals } from '../chemistry/tables/minerals.ts';
import type { Clouding } from '../plan/clouding.ts';

/** `may drop calcium sulfate (gypsum, index 0.2)`; undefined where nothing is near to it. */
export function cloudingText(cloudings: readonly Clouding[]): string | undefined {
  const named = (nearness: Clouding['nearness']): string =>
    cloudings
      .filter(one => one.nearness === nearness)
      .map(({ mineral, index }) => {
        const shown = index.kind === 'known' ? `, index ${indexText(index.quantity.value)}` : '';
        return `${minerals[mineral].title} (${mineral}${shown})`;
      })
      .join(' and ');
  const over = named('over');
  const near = named('near');
  if (over !== '') return `may cloud with ${over}${near === '' ? '' : `, and is near to it with ${near}`}`;
  return near === '' ? undefined : `is near to clouding with ${near}`;
}

/** A saturation index is known to about a tenth. */
function indexText(index: number): string {
  return index.toFixed(1).replace(/^-0\.0$/u, '0.0');
}
