import { expect, test } from 'vitest';
import { checkCompletion, checkTaken, labelsIn, offersIn } from '../check-completion.ts';
import { recipe } from '../recipe.ts';
import { onShelf } from './on-shelf.ts';

test('names are offered where one refers, with what they stand for', () => {
  checkCompletion(
    onShelf(`
      batches:
        first:
          adjust: { with: $0 }
    `),
    'down | phosphoric acid 12 %',
  );
});

test('a borrowed name says where it is from', () => {
  checkCompletion(
    recipe`
      recipe: 1
      use: [./shelf.grow.yaml]
      waters:
        own: { pH: 7 }
      batches:
        first:
          water: $0
      #-- shelf.grow.yaml
      recipe: 1
      waters:
        rain: { pH: 6 }
    `,
    'own | pH 7\nrain | pH 6 (from shelf.grow.yaml)',
  );
});

test('a list of names offers those that are not in it', () => {
  checkCompletion(
    onShelf(`
      plantings:
        berry: { stages: [rooting, $0] }
    `),
    'bearing | 70 d',
  );
  checkCompletion(
    onShelf(`
      plantings:
        berry: { stages: [ro$0] }
    `),
    '«ro»\nrooting | 18 d\nbearing | 70 d',
  );
});

test('an item on a line of its own brings its dash, where it has none', () => {
  const line = (text: string) => recipe`
    recipe: 1
    stages: { rooting: { lasts: 18 d } }
    plantings:
      berry:
        stages:
          ${text}
  `;
  for (const text of ['$0', '- $0', '-$0']) {
    checkTaken(
      line(text),
      'rooting',
      `
        recipe: 1
        stages: { rooting: { lasts: 18 d } }
        plantings:
          berry:
            stages:
              - rooting
      `,
    );
  }
});

test('a value right behind its colon gets its blank', () => {
  checkTaken(
    recipe`
      recipe: 1
      tools: { can: { holds: 12 L } }
      batches:
        first:
          mix-in:$0
    `,
    'can',
    `
      recipe: 1
      tools: { can: { holds: 12 L } }
      batches:
        first:
          mix-in: can
    `,
  );
});

test('behind a number come the units of what is measured', () => {
  const volume = (show: string) => recipe`
    recipe: 1
    show: ${show}
    batches:
      first:
        volume: 20 $0
  `;
  checkCompletion(volume('metric'), '«20 »\n20 L | a volume\n20 mL | a volume\n…');
  expect(labelsIn(volume('us'))[0]).toBe('20 gal');
  expect(labelsIn(volume('metric'))).not.toContain('20 cm');
});

test('a range has one unit for both ends', () => {
  checkCompletion(
    recipe`
      recipe: 1
      targets:
        leafy: { EC: 1.0..1.6 m$0 }
    `,
    '«1.0..1.6 m»\n1.0..1.6 mS/cm | a conductivity\n…',
  );
});

test('a number that is in quotes is completed with them', () => {
  const quoted = recipe`
    recipe: 1
    batches:
      first:
        volume: "20 $0"
  `;
  checkCompletion(quoted, '«"20 "»\n20 L | a volume\n…');
  expect(offersIn(quoted)[0]?.filter).toBe('"20 L');
});

test('phrases take over the number that is typed', () => {
  checkCompletion(
    onShelf(`
      batches:
        first:
          feed: { leafy: 30 % of l$0 }
    `),
    '«30 % of l»\n30 % of label\nlabel\n50 % of label',
  );
  checkCompletion(
    onShelf(`
      plantings:
        berry:
          fill: 8 cm in$0
    `),
    '«8 cm in»\n8 cm into net cup\nto net cup\n5 mm into net cup',
  );
  expect(
    labelsIn(
      onShelf(`
      batches:
        first:
          feed: { leafy: 30$0 }
    `),
    ),
  ).toContain('30 % of label');
});

test('fixed words are offered, and examples while nothing is typed', () => {
  checkCompletion(
    recipe`
      recipe: 1
      plantings:
        berry: { fill: $0 }
    `,
    'to net cup\n5 mm into net cup\n12 cm | example',
  );
  checkCompletion(
    recipe`
      recipe: 1
      containers:
        crock: { opaque: $0 }
    `,
    'true\nfalse',
  );
});

test('a group on one line is made of the names there are', () => {
  const batch = (key: string) =>
    onShelf(`
    batches:
      first:
        ${key}: $0
  `);
  checkCompletion(batch('adjust'), '{ with: down }');
  checkCompletion(batch('feed'), '{ leafy: label }\n{ fruity: label }');
  checkCompletion(
    onShelf(`
      plantings:
        berry:
          stages: $0
    `),
    '[rooting]\n[bearing]',
  );
});
