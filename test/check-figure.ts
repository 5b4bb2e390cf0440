// Checks one figure of a plan: its amount with its unit, and the formula that gave it with the numbers in place.

import { expect } from 'vitest';
import type { Figure } from '../server/plan/figure.ts';
import { explain, wantsText } from '../server/words/figure.ts';
import type { MarkedRecipe } from './recipe.ts';

/**
 * The figure at a path of the plan, as `batches/opening/doses/green` (of a dose, its exact amount) or `containers/crock/brimful`.
 * `explained` is the statement with the numbers in place, or where a figure that no formula gave comes from; for an unknown one
 * `amount` is what is said of it.
 */
export function checkFigure(recipe: MarkedRecipe, path: string, amount: string, explained?: string): void {
  const { plan, recipe: values } = recipe.snapshot();
  const explanation = explain(figureAt(plan, path), values.show);
  if (explanation.kind === 'unknown') {
    expect(wantsText(explanation.wants)).toBe(amount);
    return;
  }
  expect(explanation.amount).toBe(amount);
  if (explained !== undefined) expect(explanation.statement ?? explanation.says).toBe(explained);
}

export function figureAt(plan: unknown, path: string): Figure {
  let at: unknown = plan;
  for (const key of path.split('/')) {
    at = at instanceof Map ? at.get(key) : Object.getOwnPropertyDescriptor(at ?? {}, key)?.value;
  }
  const found = isFigure(at) ? at : Object.getOwnPropertyDescriptor(at ?? {}, 'exact')?.value;
  if (!isFigure(found)) throw new Error(`the plan has no figure ${path}`);
  return found;
}

export function isFigure(value: unknown): value is Figure {
  if (typeof value !== 'object' || value === null || !('kind' in value)) return false;
  return (value.kind === 'known' && 'by' in value) || (value.kind === 'unknown' && 'wants' in value);
}
