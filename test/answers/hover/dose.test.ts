import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { recipe } from '../../recipe.ts';

test('a dose by the label: for the batch, as measured, what it adds, how it is reckoned', () => {
  checkHover(recipe`
    recipe: 1
    feeds:
      moss: { label: 2 mL/L, analysis: { N: 5 %, K2O: 6 % }, density: 1.15 kg/L }
    tools:
      syringe: { smallest: 0.5 mL, largest: 10 mL }
    batches:
      first:
        volume: 20 L
        feed: { moss: la$0bel }
  `).toMatchInlineSnapshot(`
    "    feed: { moss: label }
                      ▔▔↑▔▔
    40 mL of moss in 20 L

    Measure 4 × 10 mL with syringe.
    Adds N 115, K 115 mg/L.

    dose = 2 mL/L × 20 L = 40 mL

    - rate: 2 mL/L, feeds › moss › label
    - volume: 20 L, batches › first › volume

    The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600

    The label of the feed overrules the recipe."
  `);
});

test('a dose in two loads, rounded to what the spoons hold', () => {
  checkHover(recipe`
    recipe: 1
    feeds:
      moss: { label: 2 mL/L }
    tools:
      spoon: { steps: [2.5 mL, 5 mL] }
      can: { holds: 10 L }
    batches:
      first:
        volume: 12 L
        mix-in: can
        feed:
          m$0oss: 50 % of label
  `).toMatchInlineSnapshot(`
    "      moss: 50 % of label
          ▔↑▔▔
    12 mL of moss in 12 L

    In 2 loads of 6 L: 6 mL each.
    Measure 5 mL with spoon: 16.7 % too little.

    dose = 1 mL/L × 12 L = 12 mL

    - rate: 1 mL/L, the rate that this share of the label comes to
    - volume: 12 L, batches › first › volume

    The grow recipe format, version 1

    The label of the feed overrules the recipe."
  `);
});

test('a dose that no tool can measure', () => {
  checkHover(recipe`
    recipe: 1
    feeds:
      moss: {}
    tools:
      syringe: { smallest: 0.5 mL, largest: 10 mL }
    batches:
      first:
        volume: 1 L
        feed: { moss: $00.2 mL/L }
  `).toMatchInlineSnapshot(`
    "    feed: { moss: 0.2 mL/L }
                      ↑▔▔▔▔▔▔▔
    0.2 mL of moss in 1 L

    Too small to measure: the finest tool measures 0.5 mL, with syringe.

    dose = 0.2 mL/L × 1 L = 0.2 mL

    - rate: 0.2 mL/L, batches › first › feed › moss
    - volume: 1 L, batches › first › volume

    The grow recipe format, version 1

    ────

    A dose too small to measure dose-below-tool

    A dose below the smallest mark is a guess; its error can be larger than the dose.

    How to mend it: Mix a larger batch, dilute the feed first, or list a finer tool.

    Common practice in the trade"
  `);
});

test('a dose says what is missing for it to be known', () => {
  checkHover(recipe`
    recipe: 1
    feeds:
      moss: { density: 1.1 kg/L }
    batches:
      first:
        feed: { moss: label$0 }
  `).toMatchInlineSnapshot(`
    "    feed: { moss: label }
                      ▔▔▔▔▔↑
    moss in first

    Not known yet; missing: the label’s rate (feeds › moss › label), the volume of the batch (batches › first › volume)."
  `);
});

test('a dose of a borrowed feed says from which file its rate comes', () => {
  checkHover(recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    batches:
      first: { volume: 5 gal, feed: { moss: label$0 } }
    #-- shelf.grow.yaml
    recipe: 1
    feeds: { moss: { label: 1 tsp/gal, analysis: { K2O: 5 % }, density: 1 kg/L } }
  `).toMatchInlineSnapshot(`
    "  first: { volume: 5 gal, feed: { moss: label } }
                                            ▔▔▔▔▔↑
    25 mL of moss in 18.9 L

    Adds K 54.8 mg/L.

    dose = 1.32 mL/L × 18.9 L = 25 mL

    - rate: 1.32 mL/L, feeds › moss › label in shelf.grow.yaml
    - volume: 18.9 L, batches › first › volume

    The grow recipe format, version 1 · AAPFCO: Statements of Uniform Interpretation and Policy (official 1993) · Prohaska, T. et al.: Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94:573-600

    The label of the feed overrules the recipe."
  `);
});
