import { expect, test } from 'vitest';
import { lenses } from '../../server/answers/lenses.ts';
import { textOf } from '../../server/syntax/document.ts';
import { drawRanges } from '../draw.ts';
import { recipe } from '../recipe.ts';

test('the sheet and a reading are offered at each batch, comparing once', () => {
  const snapshot = recipe`
    recipe: 1
    batches:
      first: { volume: 20 L }
      later:
        volume: 2 L
  `.snapshot();
  const labelled = lenses(snapshot).map(lens => ({
    range: lens.range,
    label: lens.kind === 'compare' ? 'compare' : `${lens.kind} of ${lens.batch}`,
  }));
  expect(drawRanges(textOf(snapshot.document), labelled)).toMatchInlineSnapshot(`
    "recipe: 1
    ⟦compare:batches⟧:
      ⟦sheet of first:⟦record-reading of first:first⟧⟧: { volume: 20 L }
      ⟦sheet of later:⟦record-reading of later:later⟧⟧:
        volume: 2 L
    "
  `);
});

test('a recipe without batches has none', () => {
  expect(lenses(recipe`recipe: 1\nwaters: { spring: { pH: 7 } }\n`.snapshot())).toEqual([]);
});
