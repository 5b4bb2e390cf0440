// One cause, one finding: what hangs on something that could not be read is not found as well.

import { test } from 'vitest';
import { checkFindings } from '../check-findings.ts';
import { recipe } from '../recipe.ts';

test('a label that cannot be read is not missing too', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds:
      green: { label: 2 mL/litter, formula: KNO3, density: 1 kg/L }
      #                    ^^^^^^ unit-unknown
    batches: { opening: { water: mains, volume: 20 L, feed: { green: label } } }
  `);
});

test('an entry that cannot be read is not unknown where it is named', () => {
  checkFindings(recipe`
    recipe: 1
    waters:
      mains: 7.8
      #      ^^^ value-invalid
    batches: { opening: { water: mains, volume: 20 L } }
  `);
});

test('an impossible container is one finding, however many plantings and batches hang on it', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    containers:
      urn: { inside: { profile: [{ at: 0 cm, area: 60 cm2 }] } }
      #                         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ container-impossible: two heights at least
    stages: { rooting: { lasts: 18 d, batch: opening } }
    plantings:
      berry: { container: urn, fill: 12 cm, stages: [rooting] }
      melon: { container: urn, fill: 12 cm, stages: [rooting] }
    batches: { opening: { water: mains, volume: as needed } }
  `);
});

test('cups that do not fit by the number of plants leave no second finding for the fill', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    containers:
      crock:
        inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
        net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }
    stages: { rooting: { lasts: 18 d, batch: opening } }
    plantings:
      berry: { container: crock, plants: 6, stages: [rooting] }
      #                                  ^ net-cup-too-wide: 6 net cups
    batches: { opening: { water: mains, volume: as needed } }
  `);
});

test('a formula that is none is not a feed without content', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds:
      salt: { formula: KNO3(, label: 1 g/L }
      #                    ^ formula-invalid: this bracket is not closed
    batches: { opening: { water: mains, volume: 20 L, feed: { salt: label } } }
  `);
});

test('one missing label is one finding, however many batches use it', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds:
      green: { formula: KNO3 }
    # ^^^^^ not-computed: the dose of \`green\` in \`opening\`. What is missing is the label’s rate
    batches:
      opening: { water: mains, volume: 20 L, feed: { green: label } }
      later: { water: mains, volume: 10 L, feed: { green: 50 % of label } }
  `);
});

test('what a borrowed entry lacks is said where it is used', () => {
  checkFindings(recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    waters: { mains: { pH: 7.8 } }
    batches:
      opening: { water: mains, volume: 20 L, feed: { green: 2 mL/L } }
      #                                                     ^^^^^^ not-computed: the density of green
    #-- shelf.grow.yaml
    recipe: 1
    feeds: { green: { analysis: { N: 5 % } } }
  `);
});

test('a tool that cannot be read does not make every dose too small for the others', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { green: { label: 1 mL/L, formula: KNO3, density: 1 kg/L } }
    tools:
      syringe: { smallest: 0.5 ml3 }
      #                        ^^^ unit-unknown
      spoon: { steps: [15 mL] }
    batches: { opening: { water: mains, volume: 3 L, feed: { green: label } } }
  `);
});

test('an adjuster whose strength cannot be read is not without one', () => {
  checkFindings(recipe`
    recipe: 1
    adjusters:
      down: { acid: { phosphorus: 12 % } }
      #               ^^^^^^^^^^ key-unknown: did you mean \`phosphoric\`?
      up: { base: { KOH: 5 g } }
      #                    ^ unit-mismatch
  `);
});
