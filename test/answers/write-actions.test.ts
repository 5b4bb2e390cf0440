import { expect, test } from 'vitest';
import { withChanges } from '../../server/syntax/edit.ts';
import { actionsIn, checkAction, titlesIn } from '../check-action.ts';
import { type MarkedRecipe, recipe } from '../recipe.ts';

/** All files after the action of a title. */
function after(marked: MarkedRecipe, title: string): string {
  const action = actionsIn(marked).find(one => one.title === title);
  if (action === undefined) throw new Error(`no action “${title}” among ${titlesIn(marked).join(' · ')}`);
  const own = marked.cursor?.uri;
  return marked.files
    .map(({ uri, text }) => {
      const there = action.elsewhere?.find(file => file.uri === uri)?.edits ?? [];
      return `#-- ${uri.slice(8)}\n${withChanges(text, uri === own ? action.edits : there)}`;
    })
    .join('');
}

test('the computed adjustment is written down as a reading, with its caution', () => {
  const adjusted = recipe`
    recipe: 1
    waters: { spring: { pH: 8, alkalinity: 2 meq/L } }
    adjusters: { down: { response: -0.6 pH at 0.3 mL/L } }
    batches:
      first:
        water: spring
        volume: 10 L
        adjust: { with: do$0wn, to: 7 }
  `;
  const title = titlesIn(adjusted).find(one => one.includes('as added'));
  expect(title).toMatchInlineSnapshot(
    `"Write down \`2.5 mL\` of \`down\` as added (gloves and eye protection; stir, then measure)"`,
  );
  expect(after(adjusted, title ?? '')).toMatchInlineSnapshot(`
    "#-- recipe.grow.yaml
    recipe: 1
    waters: { spring: { pH: 8, alkalinity: 2 meq/L } }
    adjusters: { down: { response: -0.6 pH at 0.3 mL/L } }
    batches:
      first:
        water: spring
        volume: 10 L
        adjust: { with: down, to: 7 }
        readings:
          - { add: { down: 2.5 mL } }
    "
  `);
});

test('the entry of a name that nothing has is added with what it needs', () => {
  checkAction(
    recipe`
      recipe: 1
      stages:
        rooting: { lasts: 3 d, batch: fir$0st }
    `,
    'Add the batch `first`',
    `
      recipe: 1
      stages:
        rooting: { lasts: 3 d, batch: first }
      batches:
        first: { water: mains, volume: 20 L }
    `,
  );
});

test('a name that may be of two kinds can be added as either', () => {
  const unknown = recipe`
    recipe: 1
    batches: { first: { volume: 2 L, readings: [{ add: { mo$0ss: 4 mL } }] } }
  `;
  expect(titlesIn(unknown).filter(title => title.startsWith('Add the'))).toEqual([
    'Add the adjuster `moss`',
    'Add the feed `moss`',
  ]);
});

test('all that an entry needs is added at once', () => {
  checkAction(
    recipe`
      recipe: 1
      batches:
        first:
          a$0ir: open
    `,
    'Add all that `first` needs',
    `
      recipe: 1
      batches:
        first:
          air: open
          water: mains
          volume: 20 L
    `,
  );
});

test('an entry moves to a file that is used, its comments and its lines with it', () => {
  const moved = recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    feeds:
      mo$0ss:
        label: 2 mL/L # by the label
        analysis:
          N: 5 %
      fern: { label: 1 mL/L }
    #-- shelf.grow.yaml
    recipe: 1
    feeds:
        salt: { formula: KNO3 }
  `;
  expect(after(moved, 'Move `moss` to shelf.grow.yaml')).toMatchInlineSnapshot(`
    "#-- recipe.grow.yaml
    recipe: 1
    use: [./shelf.grow.yaml]
    feeds:
      fern: { label: 1 mL/L }
    #-- shelf.grow.yaml
    recipe: 1
    feeds:
        salt: { formula: KNO3 }
        moss:
          label: 2 mL/L # by the label
          analysis:
            N: 5 %
    "
  `);
});

test('an entry moves into a section that is not there yet', () => {
  const moved = recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    targets: { lo$0w: { pH: 5.5..6.5 }, high: { pH: 6..7 } }
    #-- shelf.grow.yaml
    recipe: 1
  `;
  expect(after(moved, 'Move `low` to shelf.grow.yaml')).toMatchInlineSnapshot(`
    "#-- recipe.grow.yaml
    recipe: 1
    use: [./shelf.grow.yaml]
    targets: { high: { pH: 6..7 } }
    #-- shelf.grow.yaml
    recipe: 1
    targets:
      low: { pH: 5.5..6.5 }
    "
  `);
});

test('what refers to an entry that stays, or has a name that is taken, does not move', () => {
  const refers = recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    targets: { low: { pH: 5.5..6.5 } }
    stages: { roo$0ting: { lasts: 3 d, target: low } }
    #-- shelf.grow.yaml
    recipe: 1
  `;
  expect(titlesIn(refers).filter(title => title.startsWith('Move'))).toEqual([]);
  const taken = recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    targets: { lo$0w: { pH: 5.5..6.5 } }
    #-- shelf.grow.yaml
    recipe: 1
    targets: { low: { pH: 5..6 } }
  `;
  expect(titlesIn(taken).filter(title => title.startsWith('Move'))).toEqual([]);
});
