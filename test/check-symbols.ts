// Checks the outline of a recipe, drawn as the editor's side bar shows it.

import { type Assertion, expect } from 'vitest';
import { type RecipeSymbol, symbols } from '../server/answers/symbols.ts';
import type { MarkedRecipe } from './recipe.ts';

/** A line per symbol, indented by its depth: the name, then its detail. */
export function checkSymbols(recipe: MarkedRecipe): Assertion<string> {
  const draw = (symbol: RecipeSymbol, depth: number): string => {
    const line = `${'  '.repeat(depth)}${symbol.name}${symbol.detail === '' ? '' : `  ${symbol.detail}`}`;
    return [line, ...symbol.children.map(child => draw(child, depth + 1))].join('\n');
  };
  return expect(
    symbols(recipe.snapshot())
      .map(symbol => draw(symbol, 0))
      .join('\n'),
  );
}
