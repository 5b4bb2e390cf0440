// The reference cases once more, through the whole pipe: written as one recipe, opened as a file, read from its plan.

import { describe, expect, test } from 'vitest';
import { markedRecipe } from '../recipe.ts';
import { readCases } from './chemistry-cases.ts';
import { expressible } from './chemistry-inputs.ts';
import { compareRecipe } from './recipe-comparisons.ts';
import { recipeOf } from './recipes.ts';

const cases = readCases();
const snapshot = markedRecipe(recipeOf(cases)).snapshot();
const rows = compareRecipe(cases, snapshot.plan);

test('every case but blends and conductivities off 25 °C can be written as a recipe', () => {
  const left = cases.filter(given => !expressible(given));
  expect(new Set(left.map(({ topic }) => topic))).toEqual(new Set(['blend', 'standard']));
  expect(left.length).toBe(5);
});

test('nothing in the recipe is misread', () => {
  const wrong = snapshot.findings.filter(({ finding }) =>
    ['value-invalid', 'key-unknown', 'unit-unknown', 'name-unknown', 'not-computed', 'formula-invalid'].includes(
      finding.code,
    ),
  );
  expect(wrong).toEqual([]);
});

describe.each([...new Set(rows.map(({ topic }) => topic))])('%s', topic => {
  const ids = [...new Set(rows.filter(row => row.topic === topic).map(({ id }) => id))];
  test.each(ids)('%s', id => {
    const misses = rows
      .filter(row => row.id === id && !row.pass)
      .map(({ what, reference, ours, tolerance }) => `${what}: theirs ${reference}, ours ${ours}, within ${tolerance}`);
    expect(misses).toEqual([]);
  });
});
