// What all supplies cost together, and which of them are acids or bases. Apart, since both prints of the supplies ask for it.

import type { Money } from '../../schema/texts/money.ts';
import type { Supply } from '../plan/supplies.ts';
import type { Adjuster } from '../recipe/seen.ts';

/** The known costs, a sum for each currency: currencies never add up. */
export function totalCosts(supplies: readonly Supply[]): readonly Money[] {
  const sums = new Map<string, number>();
  for (const { cost } of supplies) {
    if (cost !== undefined) sums.set(cost.currency, (sums.get(cost.currency) ?? 0) + cost.amount);
  }
  return [...sums].map(([currency, amount]) => ({ amount, currency }));
}

/** The adjuster that a supply is; undefined for a feed. */
export function adjusterOf({ kind, of }: Supply): Adjuster | undefined {
  return kind === 'adjuster' ? (of.value as Adjuster) : undefined;
}
