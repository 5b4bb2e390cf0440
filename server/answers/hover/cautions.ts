// The cautions in a hover: under everything that shows an amount of acid or base.

import type { Adjuster } from '../../recipe/seen.ts';
import { cautionsFor, cautionText } from '../../words/cautions.ts';

/** One paragraph, marked as a warning. */
export function cautionBlock(adjuster: Adjuster | undefined): string {
  const cautions = cautionsFor(adjuster);
  return `⚠ ${cautions.burns ? '**Burns skin and eyes.** ' : ''}${cautionText(cautions)}`;
}
