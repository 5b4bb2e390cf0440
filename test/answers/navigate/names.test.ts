import { expect, test } from 'vitest';
import { workspaceSymbols } from '../../../server/answers/navigate/workspace-symbols.ts';
import { checkDefinition, checkHighlights, checkReferences, checkRename, readersIn } from '../../check-navigation.ts';
import { recipe } from '../../recipe.ts';

test('a name leads to its entry', () => {
  checkDefinition(recipe`
    recipe: 1
    waters: { spring: { pH: 7 } }
    batches:
      first: { water: spr$0ing, volume: 20 L }
  `).toMatchInlineSnapshot(`"recipe.grow.yaml: waters: { ⟦spring⟧: { pH: 7 } }"`);
});

test('a name that is a key leads to its entry, in another file too', () => {
  checkDefinition(recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    batches:
      first: { volume: 20 L, feed: { mo$0ss: label } }
    #-- shelf.grow.yaml
    recipe: 1
    feeds:
      moss: { label: 2 mL/L }
  `).toMatchInlineSnapshot(`"shelf.grow.yaml: ⟦moss⟧: { label: 2 mL/L }"`);
});

test('what may be an adjuster or a feed is looked up in both', () => {
  checkDefinition(recipe`
    recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    batches:
      first:
        volume: 20 L
        readings: [{ add: { moss$0: 4 mL } }]
  `).toMatchInlineSnapshot(`"recipe.grow.yaml: feeds: { ⟦moss⟧: { label: 2 mL/L } }"`);
});

test('a used path leads to its file', () => {
  checkDefinition(recipe`
    recipe: 1
    use: ["./sh$0elf.grow.yaml"]
    #-- shelf.grow.yaml
    recipe: 1
  `).toMatchInlineSnapshot(`"shelf.grow.yaml: the file"`);
});

test('a key that is no name, a value that is none and a name that nothing declares lead nowhere', () => {
  checkDefinition(recipe`
    recipe: 1
    batches: { first: { vol$0ume: 20 L } }
  `).toMatchInlineSnapshot(`"nothing"`);
  checkDefinition(recipe`
    recipe: 1
    batches: { first: { volume: 2$00 L } }
  `).toMatchInlineSnapshot(`"nothing"`);
  checkDefinition(recipe`
    recipe: 1
    batches: { first: { water: spr$0ong } }
  `).toMatchInlineSnapshot(`"nothing"`);
});

test('references are found in the files that borrow the entry, from either side', () => {
  checkReferences(recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    batches:
      first: { water: spring, volume: 20 L, feed: { moss$0: label } }
      later: { volume: 2 L, from: [moss], feed: { 'moss': 2 mL/L } }
    #-- shelf.grow.yaml
    recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    #-- other.grow.yaml
    recipe: 1
    use: [./shelf.grow.yaml]
    batches: { tub: { feed: { moss: label } } }
    #-- stranger.grow.yaml
    recipe: 1
    feeds: { moss: { label: 1 mL/L } }
    batches: { tub: { feed: { moss: label } } }
  `).toMatchInlineSnapshot(`
    "shelf.grow.yaml declaration: feeds: { ⟦moss⟧: { label: 2 mL/L } }
    recipe.grow.yaml reference: first: { water: spring, volume: 20 L, feed: { ⟦moss⟧: label } }
    recipe.grow.yaml reference: later: { volume: 2 L, from: [⟦moss⟧], feed: { 'moss': 2 mL/L } }
    recipe.grow.yaml reference: later: { volume: 2 L, from: [moss], feed: { '⟦moss⟧': 2 mL/L } }
    other.grow.yaml reference: batches: { tub: { feed: { ⟦moss⟧: label } } }"
  `);
});

test('an entry of the same name that stands before a borrowed one is another entry', () => {
  checkReferences(recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    feeds: { moss: { label: 1 mL/L } }
    batches: { first: { feed: { moss: label } } }
    #-- shelf.grow.yaml
    recipe: 1
    feeds: { mo$0ss: { label: 2 mL/L } }
  `).toMatchInlineSnapshot(`"shelf.grow.yaml declaration: feeds: { ⟦moss⟧: { label: 2 mL/L } }"`);
});

test('the places of a name are marked in its file', () => {
  checkHighlights(recipe`
    recipe: 1
    batches:
      first: { volume: 20 L }
    stages:
      rooting: { batch: "fir$0st", lasts: 3 d }
    log:
      - { on: 2027-03-01, batch: first, pH: 6 }
      - { on: 2027-03-02, note: first }
  `).toMatchInlineSnapshot(`
    "recipe: 1
    batches:
      ⟦=:first⟧: { volume: 20 L }
    stages:
      rooting: { batch: "⟦first⟧", lasts: 3 d }
    log:
      - { on: 2027-03-01, batch: ⟦first⟧, pH: 6 }
      - { on: 2027-03-02, note: first }
    "
  `);
});

test('renaming changes the entry and what refers to it, and nothing else', () => {
  checkRename(
    recipe`
      recipe: 1
      use: [./shelf.grow.yaml]
      batches:
        first: { water: spring, volume: 20 L, feed: { "moss": label } } # moss stays
        later: { volume: 2 L, from: ['moss'] }
      #-- shelf.grow.yaml
      recipe: 1
      title: moss
      feeds:
        mo$0ss: { label: 2 mL/L }
    `,
    'fern',
  ).toMatchInlineSnapshot(`
    "#-- recipe.grow.yaml
    recipe: 1
    use: [./shelf.grow.yaml]
    batches:
      first: { water: spring, volume: 20 L, feed: { "fern": label } } # moss stays
      later: { volume: 2 L, from: ['fern'] }
    #-- shelf.grow.yaml
    recipe: 1
    title: moss
    feeds:
      fern: { label: 2 mL/L }
    "
  `);
});

test('a name that cannot be one, or that is taken, is refused with a reason', () => {
  const taken = recipe`
    recipe: 1
    adjusters: { down: { acid: { citric: 50 % } } }
    feeds:
      mo$0ss: { label: 2 mL/L }
      fern: { label: 1 mL/L }
    batches: { first: { volume: 2 L, readings: [{ add: { moss: 4 mL } }] } }
  `;
  checkRename(taken, 'Fern 2').toMatchInlineSnapshot(
    `"“Fern 2” cannot be a name: one begins with a small letter and goes on with small letters, digits and hyphens."`,
  );
  checkRename(taken, 'fern').toMatchInlineSnapshot(`"recipe.grow.yaml knows another “fern” among its feeds."`);
  checkRename(taken, 'down').toMatchInlineSnapshot(
    `"recipe.grow.yaml refers to it where the adjuster “down” could be meant as well."`,
  );
});

test('a name that a borrowing file gives to its own entry is refused', () => {
  checkRename(
    recipe`
      recipe: 1
      feeds: { mo$0ss: { label: 2 mL/L } }
      #-- user.grow.yaml
      recipe: 1
      use: [./recipe.grow.yaml]
      feeds: { fern: { label: 2 mL/L } }
    `,
    'fern',
  ).toMatchInlineSnapshot(`"user.grow.yaml knows another “fern” among its feeds."`);
});

test('a key, a number and an alias are not renamed', () => {
  checkRename(recipe`recipe: 1\nbatches: { first: { vol$0ume: 2 L } }\n`, 'size').toMatchInlineSnapshot(
    `"Only the names of entries can be changed."`,
  );
  checkRename(
    recipe`
      recipe: 1
      waters: { sp$0ring: {} }
      batches:
        first: { water: &from spring }
        later: { water: *from }
    `,
    'well',
  ).toMatchInlineSnapshot(`"recipe.grow.yaml writes “spring” through a YAML alias; write it out first."`);
});

test('entries of all files are found by letters of their name, the nearest first', () => {
  const held = recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    batches: { some-moss: { volume: 2 L }, first: { volume: 2 L } }
    #-- shelf.grow.yaml
    recipe: 1
    feeds: { moss: { label: 2 mL/L }, most-of-summer: { formula: KNO3 } }
  `;
  const workspace = held.workspace();
  const found = (query: string) =>
    workspaceSymbols(readersIn(workspace)('file:///shelf.grow.yaml'), query).map(one => `${one.section}/${one.name}`);
  expect(found('moss')).toEqual(['feeds/moss', 'batches/some-moss', 'feeds/most-of-summer']);
  expect(found('')).toHaveLength(4);
  expect(found('xyz')).toEqual([]);
});
