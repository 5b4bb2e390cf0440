import { expect, test } from 'vitest';
import { describe as describeMore } from '../../server/answers/completion/about.ts';
import { checkCompletion, checkTaken, labelsIn, offersIn } from '../check-completion.ts';
import { recipe } from '../recipe.ts';
import { onShelf } from './on-shelf.ts';

test('an empty file begins with its version, and then with anything of the format', () => {
  expect(labelsIn(recipe`$0`)).toEqual(
    'recipe title start show use waters feeds adjusters tools containers targets stages plantings batches log'.split(
      ' ',
    ),
  );
  checkTaken(recipe`$0`, 'show', 'show: ${1|metric,us|}');
});

test('a section brings its first entry with the keys that it needs', () => {
  checkTaken(
    recipe`
      recipe: 1
      cont$0
    `,
    'containers',
    `
      recipe: 1
      containers:
        \${1:name}:
          inside: { cylinder: { diameter: \${2:14 cm}, height: \${3:20 cm} } }
    `,
  );
});

test('keys that are there are not offered again, and needed ones come first', () => {
  checkCompletion(
    onShelf(`
      batches:
        first:
          water: spring
          $0
    `),
    `
      volume | needed: How much is mixed
      mix-in | The vessel it is mixed in
      target | What it aims at
      temperature | The temperature of the batch
      …
    `,
  );
});

test('half a key among others is completed, and the line below it stays', () => {
  const half = onShelf(`
    batches:
      first:
        wa$0
        volume: 20 L
  `);
  checkCompletion(half, '«wa»\nwater | needed: The source water\n…');
  expect(labelsIn(half)).not.toContain('volume');
  expect(offersIn(half).find(({ label }) => label === 'water')?.snippet).toBe('water: ${1:spring}');
});

test('a key that has its colon is put in place without another', () => {
  checkTaken(
    recipe`
      recipe: 1
      batches:
        first:
          vol$0: 20 L
    `,
    'volume',
    `
      recipe: 1
      batches:
        first:
          volume: 20 L
    `,
  );
});

test('a name that is used and stands for nothing is offered as an entry', () => {
  const asked = recipe`
    recipe: 1
    stages:
      rooting: { lasts: 18 d, batch: opening }
    batches:
      $0
  `;
  checkCompletion(asked, 'opening | used, and not written yet\nnew batch | a new batch');
  checkTaken(
    asked,
    'opening',
    `
      recipe: 1
      stages:
        rooting: { lasts: 18 d, batch: opening }
      batches:
        opening:
          water: \${1:mains}
          volume: \${2:20 L}
    `,
  );
});

test('a word in a section becomes an entry with the keys that it needs', () => {
  checkTaken(
    recipe`
      recipe: 1
      stages:
        slow$0
    `,
    'slow',
    `
      recipe: 1
      stages:
        slow:
          lasts: \${1:18 d}
    `,
  );
});

test('the feeds of a batch are the feeds there are, each once', () => {
  checkCompletion(
    onShelf(`
      batches:
        first:
          feed: { leafy: label, $0 }
    `),
    'fruity | 3 mL/L by its label',
  );
  checkCompletion(
    onShelf(`
      batches:
        first:
          feed: { le$0 }
    `),
    '«le»\nleafy | 2 mL/L by its label\nfruity | 3 mL/L by its label',
  );
  checkTaken(
    recipe`
      recipe: 1
      feeds: { leafy: { label: 2 mL/L } }
      batches:
        first:
          feed:
            le$0
    `,
    'leafy',
    `
      recipe: 1
      feeds: { leafy: { label: 2 mL/L } }
      batches:
        first:
          feed:
            leafy: \${1:label}
    `,
  );
});

test('a map that was never closed is completed all the same', () => {
  checkCompletion(
    onShelf(`
      batches:
        first:
          feed: { fr$0
          water: spring
    `),
    '«fr»\nleafy | 2 mL/L by its label\nfruity | 3 mL/L by its label',
  );
});

test('an item of a list of groups offers its keys', () => {
  checkCompletion(
    onShelf(`
      batches:
        first:
          readings:
            - $0
    `),
    `
      add | What was added to the whole batch before this measurement
      pH | The measured pH
      EC | The measured EC at 25 °C
    `,
  );
});

test('a container takes one shape', () => {
  const inside = (text: string) => recipe`
    recipe: 1
    containers:
      crock:
        inside: { ${text} }
  `;
  expect(labelsIn(inside('$0'))).toEqual(['cylinder', 'box', 'cone', 'profile']);
  expect(labelsIn(inside('box: { length: 40 cm }, $0'))).toEqual([]);
});

test('where nothing of the format belongs, nothing is offered', () => {
  expect(labelsIn(recipe`recipe: 1 # fee$0`)).toEqual([]);
  expect(
    labelsIn(recipe`
      recipe: 1
      title: My $0
    `),
  ).toEqual([]);
  expect(
    labelsIn(recipe`
      recipe: 1
      use: [$0]
    `),
  ).toEqual([]);
});

test('more is said about the offer that is looked at', () => {
  const keys = onShelf(`
    batches:
      first:
        $0
  `);
  const volume = offersIn(keys).find(({ label }) => label === 'volume');
  expect(describeMore(keys.snapshot(), volume?.about ?? '')).toContain('as needed');
  const names = onShelf(`
    batches:
      first:
        water: $0
  `);
  expect(describeMore(names.snapshot(), offersIn(names)[0]?.about ?? '')).toContain('140 mg/L CaCO3');
});
