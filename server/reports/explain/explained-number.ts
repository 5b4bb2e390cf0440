// A number that can be explained, and the ways to say which is meant.

import type { Figure } from '../../plan/figure.ts';
import type { Adjuster } from '../../recipe/seen.ts';

export interface ExplainedNumber {
  /** As in the JSON: `batches/opening/doses/green/exact_mL`. */
  readonly path: string;
  /** Shorter ways to say the same: `batches/opening/doses/green`. */
  readonly also: readonly string[];
  readonly figure: () => Figure;
  /** The adjuster whose amount it is: its cautions go with it, also where nothing is known of it. */
  readonly adjuster?: { readonly value: Adjuster | undefined };
  /** Left out of lists, of which it would make most. */
  readonly isOneOfMany?: true;
}

/** A number under its keys; the other ways to say it take the place of its last key. */
export function number(
  keys: readonly string[],
  figure: () => Figure,
  lastToo: readonly string[] = [],
): ExplainedNumber {
  const above = keys.slice(0, -1);
  return { path: keys.join('/'), also: lastToo.map(last => [...above, last].filter(Boolean).join('/')), figure };
}

/** A number with whole other paths. */
export function under(
  keys: readonly string[],
  figure: ExplainedNumber['figure'],
  also: readonly (readonly string[])[],
): ExplainedNumber {
  return { path: keys.join('/'), also: also.map(other => other.join('/')), figure };
}
