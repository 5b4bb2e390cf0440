import { describe, expect, test } from 'vitest';
import { mostCharacters, reviewMark, reviewMarkdown } from '../../../server/reports/diff/markdown.ts';
import { reviewHtml } from '../../../server/reports/diff/page.ts';
import { type Review, review, type Side } from '../../../server/reports/diff/review.ts';
import { reviewText } from '../../../server/reports/diff/text.ts';
import { recipe } from '../../recipe.ts';

/** A review of two texts of one recipe. */
function reviewOf(before: string, after: string): Review {
  const side = (text: string): Side => ({
    kind: 'recipe',
    file: 'a.grow.yaml',
    snapshot: recipe`${text}`.snapshot(),
    nameFile: () => 'a.grow.yaml',
  });
  return review('before', 'after', [{ before: side(before), after: side(after) }]);
}

/** What the text print says between its head and its last line. */
function said(before: string, after: string): string {
  return reviewText(reviewOf(before, after)).split('\n').slice(3, -3).join('\n');
}

const acid = `recipe: 1
waters: { brook: { pH: 7.4, alkalinity: 70 mg/L CaCO3 } }
adjusters: { down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L } }
batches:
  first: { water: brook, volume: 20 L, adjust: { with: down, to: 5.8 } }
`;

describe('what is shown', () => {
  test('an amount of acid goes with its cautions', () => {
    expect(said(acid, acid.replace('to: 5.8', 'to: 6.2'))).toMatchInlineSnapshot(`
      "a.grow.yaml

        batch first
          down to adjust                      15.9 mL     -> 10.9 mL      -5 mL (-31 %)  [1]
          down, first step                    7.93 mL     -> 5.45 mL      -2.48 mL (-31 %)  [1]
          pH adjusted                         5.8         -> 6.2          +0.4  [1]
          pH adjusted, after standing in air  6.81        -> 7.47         +0.66  [1]
          EC adjusted                         0.119 mS/cm -> 0.124 mS/cm  +0.005 mS/cm (+3.8 %)  [1]

        supply down
          used                                15.9 mL     -> 10.9 mL      -5 mL (-31 %)  [1]

        Because
          [1] batches › first › adjust › to: 5.8, now 6.2 (a.grow.yaml:5)

        Caution with acid and base
          Causes serious eye irritation.
          Causes skin irritation.
          Wear gloves and eye protection.
          Pour acid into water, never water into acid.
          Add a little, stir, and measure again before adding more.
          Never mix an acid with a chlorine product, such as bleach: poisonous gas
          forms.
          Keep it away from children and food.
          Follow the label and the safety data sheet; they overrule the recipe.
          Dispose of it by your local rules.
          The amounts are estimates; the meter decides."
    `);
  });

  test('what cannot be seen is not shown', () => {
    const { files } = reviewOf(acid, acid.replace('20 L', '20.000001 L'));
    expect(files[0]?.rows).toEqual([]);
    expect(files[0]?.unchanged.length).toBeGreaterThan(5);
  });

  test('a number that becomes known, and why', () => {
    const feed = (density: string) =>
      `recipe: 1\nfeeds: { stem: { label: 2 mL/L, analysis: { K2O: 6 % }${density} } }\nbatches: { first: { volume: 20 L, feed: { stem: label } } }\n`;
    expect(said(feed(''), feed(', density: 1.15 kg/L'))).toMatchInlineSnapshot(`
      "a.grow.yaml

        batch first
          K  not known -> 115 mg/L  [1]

        Because
          [1] feeds › stem › density: now 1.15 kg/L (a.grow.yaml:2)

        Findings
          - information not-computed at feeds › stem › density: Not computed: what \`stem\` brings of each element. What is missing is the density of stem."
    `);
  });

  test('amounts in the units of the new recipe; a reader of US units is not told of millilitres', () => {
    expect(said(acid, acid.replace('recipe: 1', 'recipe: 1\nshow: us').replace('20 L', '6 gal'))).toContain('6 gal');
  });

  test('dates move by days', () => {
    const cress = (lasts: string) =>
      `recipe: 1\nstart: 2027-02-01\nstages: { leaf: { lasts: ${lasts} } }\nplantings: { cress: { stages: [leaf] } }\n`;
    expect(said(cress('30 d'), cress('5 weeks'))).toMatchInlineSnapshot(`
      "a.grow.yaml

        planting cress
          harvest        2027-03-03 -> 2027-03-08  +5 d  [1]

        tasks of cress
          harvest cress  2027-03-03 -> 2027-03-08  +5 d  [1]

        Because
          [1] stages › leaf › lasts: 30 d, now 5 weeks (a.grow.yaml:3)"
    `);
  });

  test('an entry that only has another name', () => {
    expect(reviewText(reviewOf(acid, acid.replace('first:', 'opening:')))).toContain(
      'The batch first is now called opening.',
    );
  });
});

describe('one comment', () => {
  const many = (count: number, volume: number): string =>
    `recipe: 1\nbatches:\n${Array.from({ length: count }, (_, at) => `  b-${at}: { volume: ${volume} L }\n`).join('')}`;

  test('begins with the mark by which it is found again', () => {
    expect(reviewMarkdown(reviewOf(acid, acid)).startsWith(`${reviewMark}\n`)).toBe(true);
  });

  test('never outgrows what a forge accepts: what is folded goes first, then rows from the end', () => {
    const text = reviewMarkdown(reviewOf(many(1500, 20), many(1500, 21)));
    expect(text.length).toBeLessThanOrEqual(mostCharacters);
    expect(text.length).toBeGreaterThan(mostCharacters - 500);
    expect(text).not.toContain('<details>');
    expect(text).toContain('| batch b-0 | volume | 20 L | 21 L | +1 L (+5 %) | (1) |');
    const rows = text.match(/^\| batch /gmu)?.length ?? 0;
    expect(text).toContain(`_… and ${1500 - rows} more lines: \`tidemark diff\` shows all._`);
    expect(text.match(/^- \(\d+\) /gmu)?.length).toBe(rows);
  });

  test.each([200, 500, 1000, 5000, 20_000])('in at most %d characters', most => {
    const text = reviewMarkdown(reviewOf(many(60, 20), many(60, 21)), most);
    expect(text.length).toBeLessThanOrEqual(most);
    expect(text).toContain('60 values change');
  });

  test('what stands in a recipe is neither markup nor a call to anybody', () => {
    const name = (water: string) => acid.replace('water: brook', `water: "${water}"`);
    const text = reviewMarkdown(reviewOf(acid, name('<b>@everyone</b> | [x](y) `z`')));
    expect(text).not.toMatch(/<b>|@everyone|\[x\]\(y\)/u);
    expect(text).toContain('@<!-- -->everyone');
    expect(reviewHtml(reviewOf(acid, name('<b>x</b>')))).not.toContain('<b>x');
  });
});
