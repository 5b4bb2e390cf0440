import { test } from 'vitest';
import { checkFolding, checkLinks, checkSelection, checkTokens } from '../../check-layout.ts';
import { recipe } from '../../recipe.ts';

test('sections, entries, braces over lines and blocks of comments fold', () => {
  checkFolding(recipe`
    # A shelf of herbs.
    # Begun in spring.

    # Alone.
    recipe: 1
    waters:
      spring: { pH: 7 } # short
      well:
        pH: 7.2
        ions: {
          Ca: 40 mg/L,
        }

    log:
      - { on: 2027-03-01,
          pH: 6 }
      # What follows
      # is a note.
      - note: |
          long
          text
  `).toMatchInlineSnapshot(`
    "# A shelf of herbs. ⋯ 1 comment
    waters: ⋯ 6
      well: ⋯ 4
        ions: { ⋯ 2
    log: ⋯ 7
      - { on: 2027-03-01, ⋯ 1
      # What follows ⋯ 1 comment
      - note: | ⋯ 2"
  `);
});

test('comments between and inside entries fold, each block whole', () => {
  checkFolding(recipe`
    recipe: 1
    waters:
      # The spring
      # behind the house.
      spring:
        # Measured
        # in May.
        pH: 7
      # The well
      # is deep.
      well: { pH: 7 }

    # Feeds
    # of the shelf.
    feeds: {}
  `).toMatchInlineSnapshot(`
    "waters: ⋯ 9
      # The spring ⋯ 1 comment
      spring: ⋯ 3
        # Measured ⋯ 1 comment
      # The well ⋯ 1 comment
    # Feeds ⋯ 1 comment"
  `);
});

test('broken text folds as far as it can be read', () => {
  checkFolding(recipe`
    waters:
      spring: { pH: [
      well:
        pH: 7
  `).toMatchInlineSnapshot(`
    "waters: ⋯ 3
      well: ⋯ 1"
  `);
});

test('a selection grows from a unit to the file', () => {
  checkSelection(recipe`
    recipe: 1
    batches:
      first:
        volume: "20 $0L"
        air: open
    log: []
  `).toMatchInlineSnapshot(`
    "L
    20 L
    "20 L"
    volume: "20 L"
    volume: "20 L"⏎    air: open
    first:⏎    volume: "20 L"⏎    air: open
    batches:⏎  first:⏎    volume: "20 L"⏎    air: open
    batches:⏎  first:⏎    volume: "20 L"⏎    air: open⏎
    recipe: 1⏎batches:⏎  first:⏎    volume: "20 L"⏎    air: open⏎log: []⏎"
  `);
});

test('a selection in braces and on a key', () => {
  checkSelection(recipe`
    recipe: 1
    waters: { spring: { p$0H: 7 } }
  `).toMatchInlineSnapshot(`
    "pH
    pH: 7
    { pH: 7 }
    spring: { pH: 7 }
    { spring: { pH: 7 } }
    waters: { spring: { pH: 7 } }
    recipe: 1⏎waters: { spring: { pH: 7 } }⏎"
  `);
});

test('a selection begins with a comment, and on nothing with what is round it', () => {
  checkSelection(recipe`
    recipe: 1 # the $0first
  `).toMatchInlineSnapshot(`
    "# the first
    recipe: 1 # the first⏎"
  `);
});

test('words are told apart', () => {
  checkTokens(recipe`
    recipe: 1
    start: 2027-02-01
    show: metric
    use: [./shelf.grow.yaml]
    waters:
      mains: { pH: 7.8, alkalinity: 140 mg/L CaCO3, ions: { Ca: 46 mg/L } }
    feeds:
      moss: { label: 2 mL/L, price: 18 EUR, formula: KNO3, x-shop: 3 L }
    adjusters:
      thumb: { response: -0.6 pH at 0.3 mL/L }
    targets:
      low: { pH: 5.5..6.5, EC: 0.8..1.2 mS/cm }
    plantings:
      mint: { fill: 5 mm into net cup, count: 3 }
    batches:
      first: { water: mains, volume: as needed, feed: { "moss": 50 % of label }, air: closed }
      later: { volume: 1 1/2 gal, nonsense: 3 L }
  `).toMatchInlineSnapshot(`
    "⟦key:recipe⟧: ⟦num:1⟧
    ⟦key:start⟧: ⟦dat:2027-02-01⟧
    ⟦key:show⟧: ⟦wor:metric⟧
    ⟦key:use⟧: [./shelf.grow.yaml]
    ⟦sec:waters⟧:
      ⟦dec:mains⟧: { ⟦key:pH⟧: ⟦num:7.8⟧, ⟦key:alkalinity⟧: ⟦num:140⟧ ⟦uni:mg/L CaCO3⟧, ⟦key:ions⟧: { ⟦key:Ca⟧: ⟦num:46⟧ ⟦uni:mg/L⟧ } }
    ⟦sec:feeds⟧:
      ⟦dec:moss⟧: { ⟦key:label⟧: ⟦num:2⟧ ⟦uni:mL/L⟧, ⟦key:price⟧: ⟦num:18⟧ ⟦uni:EUR⟧, ⟦key:formula⟧: KNO3, x-shop: 3 L }
    ⟦sec:adjusters⟧:
      ⟦dec:thumb⟧: { ⟦key:response⟧: ⟦num:-0.6⟧ ⟦uni:pH⟧ ⟦wor:at⟧ ⟦num:0.3⟧ ⟦uni:mL/L⟧ }
    ⟦sec:targets⟧:
      ⟦dec:low⟧: { ⟦key:pH⟧: ⟦num:5.5⟧⟦ope:..⟧⟦num:6.5⟧, ⟦key:EC⟧: ⟦num:0.8⟧⟦ope:..⟧⟦num:1.2⟧ ⟦uni:mS/cm⟧ }
    ⟦sec:plantings⟧:
      ⟦dec:mint⟧: { ⟦key:fill⟧: ⟦num:5⟧ ⟦uni:mm⟧ ⟦wor:into⟧ ⟦wor:net⟧ ⟦wor:cup⟧, ⟦key:count⟧: ⟦num:3⟧ }
    ⟦sec:batches⟧:
      ⟦dec:first⟧: { ⟦key:water⟧: ⟦ref:mains⟧, ⟦key:volume⟧: ⟦wor:as needed⟧, ⟦key:feed⟧: { "⟦ref:moss⟧": ⟦num:50⟧ ⟦uni:%⟧ ⟦wor:of⟧ ⟦wor:label⟧ }, ⟦key:air⟧: ⟦wor:closed⟧ }
      ⟦dec:later⟧: { ⟦key:volume⟧: ⟦num:1 1/2⟧ ⟦uni:gal⟧, nonsense: 3 L }
    "
  `);
});

test('used files are links, unless the path is not a relative one', () => {
  checkLinks(recipe`
    recipe: 1
    use: ['./my shelf.grow.yaml', ../two.grow.yaml, /root.grow.yaml]
  `).toMatchInlineSnapshot(`
    "./my shelf.grow.yaml → file:///my%20shelf.grow.yaml
    ../two.grow.yaml → file:///two.grow.yaml"
  `);
});
