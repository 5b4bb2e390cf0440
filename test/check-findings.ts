// Checks that a recipe gives the findings that are marked in it, and no others.

import { expect } from 'vitest';
import { type FindingCode, sayWhat } from '../schema/findings.ts';
import { textOf } from '../server/syntax/document.ts';
import { showIn } from '../server/words/amount.ts';
import { columnsOf, drawMarks } from './draw.ts';
import type { Mark, MarkedFile, MarkedRecipe } from './recipe.ts';

/**
 * Every finding must be marked at its very range with its code and, where the mark says so, with part of its message. Files beside
 * the recipe are checked where they hold marks. `besides` leaves codes out that an example is not about.
 */
export function checkFindings(recipe: MarkedRecipe, besides: readonly FindingCode[] = []): void {
  const [first, ...others] = recipe.files;
  for (const file of [first, ...others.filter(({ marks }) => marks.length > 0)]) checkFile(recipe, file, besides);
}

function checkFile(recipe: MarkedRecipe, file: MarkedFile, besides: readonly FindingCode[]): void {
  const snapshot = recipe.snapshot(file.uri);
  const show = showIn(snapshot.recipe.show);
  const found = snapshot.findings
    .filter(({ finding }) => !besides.includes(finding.code))
    .map(({ finding, range }): Mark => {
      const mark = { ...columnsOf(snapshot.document, range), code: finding.code, says: sayWhat(finding, show) };
      const expected = file.marks.find(other => isSaidBy(other, mark));
      return expected ?? mark;
    });
  const text = textOf(snapshot.document);
  expect(drawMarks(text, found)).toBe(drawMarks(text, file.marks));
}

function isSaidBy(expected: Mark, found: Mark): boolean {
  return (
    expected.line === found.line &&
    expected.from === found.from &&
    expected.to === found.to &&
    expected.code === found.code &&
    found.says.toLowerCase().includes(expected.says.toLowerCase())
  );
}
