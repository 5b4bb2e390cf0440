import { expect, test } from 'vitest';
import { actionsIn, checkAction, titlesIn } from '../check-action.ts';
import { recipe } from '../recipe.ts';

test('a misspelt key is changed to the one that is meant', () => {
  const misspelt = recipe`
    recipe: 1
    waterz$0:
      spring: { pH: 7 } # from the hill
  `;
  checkAction(
    misspelt,
    'Change to `waters`',
    `
      recipe: 1
      waters:
        spring: { pH: 7 } # from the hill
    `,
  );
  expect(actionsIn(misspelt).find(({ kind }) => kind === 'fix')?.preferred).toBe(true);
});

test('a misspelt name is changed to the nearest', () => {
  checkAction(
    recipe`
      recipe: 1
      waters: { spring: { pH: 7 } }
      batches:
        first: { water: sprign$0, volume: 20 L }
    `,
    'Change to `spring`',
    `
      recipe: 1
      waters: { spring: { pH: 7 } }
      batches:
        first: { water: spring, volume: 20 L }
    `,
  );
});

test('a misspelt unit is mended, and nothing else of the value', () => {
  checkAction(
    recipe`
      recipe: 1
      feeds:
        leafy: { label: 2  ml/litr$0e }
        fruity: { label: 2 mLl/L }
    `,
    'Mend everything that has one sure fix',
    `
      recipe: 1
      feeds:
        leafy: { label: 2  ml/litre }
        fruity: { label: 2 mL/L }
    `,
  );
});

test('a unit that is missing is offered, those of the dimension first', () => {
  expect(
    titlesIn(recipe`
      recipe: 1
      stages:
        rooting: { lasts: 18$0 }
    `)[0],
  ).toBe('Write `18 d`');
});

test('what is missing is added', () => {
  checkAction(
    recipe`
      $0title: Shelf
    `,
    'Add `recipe: 1`',
    `
      recipe: 1
      title: Shelf
    `,
  );
});

test('every sure fix is made at once', () => {
  const several = recipe`
    recipe: 1
    waterz:
      spring: { ph: 7, temprature: 18 °C }
    feeds:
      leafy: { labell: 2 mL/L }$0
  `;
  checkAction(
    several,
    'Mend everything that has one sure fix',
    `
      recipe: 1
      waters:
        spring: { ph: 7, temprature: 18 °C }
      feeds:
        leafy: { label: 2 mL/L }
    `,
  );
});

test('a file without a sure fix has no such action', () => {
  expect(
    actionsIn(recipe`
      recipe: 1
      title: She$0lf
    `),
  ).toEqual([]);
});

const bench = recipe`
  recipe: 1
  waters: { spring: { pH: 7 } }
  feeds: { leafy: { label: 2.1 mL/L } }
  tools: { syringe: { smallest: 0.5 mL, largest: 10 mL } }
  batches:
    first:
      water: spring
      volume: 9 L
      feed: { leafy: lab$0el } # by eye
`;

test('a dose is written as what the tools measure', () => {
  checkAction(
    bench,
    'Write the measured amount, `19 mL`',
    `
      recipe: 1
      waters: { spring: { pH: 7 } }
      feeds: { leafy: { label: 2.1 mL/L } }
      tools: { syringe: { smallest: 0.5 mL, largest: 10 mL } }
      batches:
        first:
          water: spring
          volume: 9 L
          feed: { leafy: 19 mL } # by eye
    `,
  );
});

test('a dose by the label is written as an amount or as a rate', () => {
  expect(titlesIn(bench)).toEqual([
    'Write the measured amount, `19 mL`',
    'Write the amount for the batch, `18.9 mL`',
    'Write the rate, `2.1 mL/L`',
  ]);
});

test('an amount is written as a rate', () => {
  checkAction(
    recipe`
      recipe: 1
      waters: { spring: { pH: 7 } }
      feeds: { leafy: { label: 2 mL/L } }
      batches:
        first: { water: spring, volume: 20 L, feed: { leafy: 30$0 mL } }
    `,
    'Write the rate, `1.5 mL/L`',
    `
      recipe: 1
      waters: { spring: { pH: 7 } }
      feeds: { leafy: { label: 2 mL/L } }
      batches:
        first: { water: spring, volume: 20 L, feed: { leafy: 1.5 mL/L } }
    `,
  );
});

test('a dose whose batch has no volume has no amount to write', () => {
  expect(
    titlesIn(recipe`
      recipe: 1
      feeds: { leafy: { label: 2 mL/L } }
      batches:
        first: { feed: { leafy: 3 mL/L$0 } }
    `).filter(title => title.includes('amount')),
  ).toEqual([]);
});

test('a quantity is written in other units of its dimension', () => {
  const volume = recipe`
    recipe: 1
    batches:
      first: { volume: 20$0 L }
  `;
  expect(titlesIn(volume).filter(title => title.startsWith('Write'))).toEqual([
    'Write `5.283 gal`',
    'Write `21.13 qt`',
    'Write `42.27 pt`',
  ]);
  checkAction(
    volume,
    'Write `5.283 gal`',
    `
      recipe: 1
      batches:
        first: { volume: 5.283 gal }
    `,
  );
});

test('a range keeps one unit for both ends', () => {
  checkAction(
    recipe`
      recipe: 1
      targets:
        leafy: { EC: 1.0..1.6$0 mS/cm }
    `,
    'Write `1000..1600 µS/cm`',
    `
      recipe: 1
      targets:
        leafy: { EC: 1000..1600 µS/cm }
    `,
  );
});

test('of a phrase only the quantity is converted', () => {
  checkAction(
    recipe`
      recipe: 1
      plantings:
        berry: { fill: 5 mm into$0 net cup }
    `,
    'Write `0.5 cm`',
    `
      recipe: 1
      plantings:
        berry: { fill: 0.5 cm into net cup }
    `,
  );
});

test('what is no quantity, and what is none of the format, has no other unit', () => {
  expect(
    titlesIn(recipe`
      recipe: 1
      title: 20 L$0
    `),
  ).toEqual([]);
});
