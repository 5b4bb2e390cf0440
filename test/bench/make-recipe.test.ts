import { expect, test } from 'vitest';
import { findings } from '../../schema/findings.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { makeRecipe } from './make-recipe.ts';

test('a drawn recipe is of the length asked for, in order, and the same for the same seed', () => {
  for (const lines of [1000, 5000]) {
    const text = makeRecipe(lines);
    expect(Math.abs(text.split('\n').length - lines)).toBeLessThan(lines * 0.05);
    const workspace = new Workspace();
    workspace.open('file:///drawn.grow.yaml', text);
    const found = workspace.snapshot('file:///drawn.grow.yaml')?.findings ?? [];
    expect(found.filter(({ finding }) => findings[finding.code].severity === 'error')).toEqual([]);
    expect(found.length).toBeLessThan(lines / 20);
  }
  expect(makeRecipe(1000, 3)).toBe(makeRecipe(1000, 3));
  expect(makeRecipe(1000, 3)).not.toBe(makeRecipe(1000, 4));
});
