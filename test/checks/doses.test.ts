import { expect, test } from 'vitest';
import { textOf } from '../../server/syntax/document.ts';
import { checkFindings } from '../check-findings.ts';
import { drawApplied } from '../draw.ts';
import { recipe } from '../recipe.ts';

test('a dose at the label’s rate is no finding, by whichever way it is written', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { green: { label: 1 tsp/gal, formula: KNO3, density: 1 kg/L } }
    batches:
      a: { water: mains, volume: 2 gal, feed: { green: label } }
      b: { water: mains, volume: 2 gal, feed: { green: 2 tsp } }
      c: { water: mains, volume: 2 gal, feed: { green: 5 mL/gal } }
      d: { water: mains, volume: 2 gal, feed: { green: 100 % of label } }
  `);
});

test('more than the label is found as a rate, a percent, and an amount for the batch', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { green: { label: 2 mL/L, formula: KNO3, density: 1 kg/L }, salt: { label: 1 g/L, formula: KNO3 } }
    batches:
      a: { water: mains, volume: 10 L, feed: { green: 2.01 mL/L } }
      #                                               ^^^^^^^^^ label-rate-exceeded: 2.01 mL/L of \`green\` is 100.5 % of the label’s 2 mL/L.
      b: { water: mains, volume: 10 L, feed: { green: 150 % of label } }
      #                                               ^^^^^^^^^^^^^^ label-rate-exceeded: is 150 %
      c: { water: mains, volume: 10 L, feed: { green: 40 mL, salt: 12 g } }
      #                                               ^^^^^ label-rate-exceeded: 4 mL/L of \`green\` is 200 %
      #                                                            ^^^^ label-rate-exceeded: 1.2 g/L of \`salt\` is 120 %
  `);
});

test('amounts are said in the reader’s units', () => {
  checkFindings(recipe`
    recipe: 1
    show: us
    waters: { mains: { pH: 7.8 } }
    feeds: { green: { label: 1 tsp/gal, formula: KNO3, density: 1 kg/L } }
    batches:
      a: { water: mains, volume: 2 gal, feed: { green: 10 mL/gal } }
      #                                                ^^^^^^^^^ label-rate-exceeded: 2 tsp/gal of \`green\` is 200 % of the label’s 1 tsp/gal.
  `);
});

test('a rounding of five percent is not worth a word, a larger one is, either way', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { green: { label: 5 mL/L, formula: KNO3, density: 1 kg/L } }
    tools: { spoon: { steps: [5 mL] } }
    batches:
      a: { water: mains, volume: 10 L, feed: { green: 4.8 mL/L } }
      b: { water: mains, volume: 2 L, feed: { green: 3.9 mL/L } }
      #                                              ^^^^^^^^ dose-rounded: 10 mL of \`green\` in place of 7.8 mL, 28.2 % more
      c: { water: mains, volume: 2 L, feed: { green: 3.6 mL/L } }
      #                                              ^^^^^^^^ dose-rounded: 5 mL of \`green\` in place of 7.2 mL, 30.6 % less
  `);
});

test('what is mixed in loads is measured load by load', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { iron: { label: 20 mg/L, analysis: { Fe: 6 % } } }
    tools: { scales: { smallest: 0.3 g }, can: { holds: 10 L } }
    batches:
      a: { water: mains, volume: 30 L, feed: { iron: label } }
      b: { water: mains, volume: 30 L, mix-in: can, feed: { iron: label } }
      #                                                           ^^^^^ dose-below-tool: 0.15 g of \`iron\`
  `);
});

test('a dose of nothing needs no tool', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { iron: { label: 20 mg/L, analysis: { Fe: 6 % } } }
    tools: { scales: { smallest: 0.5 g } }
    batches: { a: { water: mains, volume: 30 L, feed: { iron: 0 g } } }
  `);
});

test('a feed is for its stages, and a batch that feeds two is found for the other one', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds:
      bloom: { label: 2 mL/L, formula: KNO3, density: 1 kg/L, for: [bearing, ripening] }
      plain: { label: 2 mL/L, formula: KNO3, density: 1 kg/L, for: [] }
    stages:
      rooting: { lasts: 18 d, batch: opening }
      bearing: { lasts: 70 d, batch: opening }
      ripening: { lasts: 10 d, batch: last }
    batches:
      opening: { water: mains, volume: 20 L, feed: { bloom: label, plain: label } }
      #                                              ^^^^^ feed-wrong-stage: for \`bearing\` or \`ripening\`, and this batch feeds the stage \`rooting\`
      last: { water: mains, volume: 20 L, feed: { bloom: label } }
  `);
});

test('a vessel is offered where a tool that holds nothing is mixed in', () => {
  const snapshot = recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    tools: { spoon: { steps: [5 mL] }, can: { holds: 12 L } }
    batches: { a: { water: mains, volume: 30 L, mix-in: spoon } }
  `.snapshot();
  const fixes = snapshot.findings.flatMap(({ finding }) => finding.fixes ?? []);
  expect(fixes.map(fix => fix.title)).toEqual(['Mix in `can`']);
  expect(drawApplied(textOf(snapshot.document), fixes[0]?.edits ?? [])).toContain('mix-in: can }');
});
