import { expect, test } from 'vitest';
import { checkAction, titlesIn } from '../check-action.ts';
import { recipe } from '../recipe.ts';

const title = 'Write the amounts that meet `bloom` best';

test('the amounts that meet the target are written as rates, the rest of the batch stays', () => {
  checkAction(
    recipe`
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { saltpetre: { formula: KNO3 }, table-salt: { formula: NaCl } }
      targets: { bloom: { N: 130..150 mg/L } }
      batches:
        tank: # the big one
          water: pure
          volume: 10 L
          target: bloom
          solve: to tar$0get
    `,
    title,
    // 140 mg/L ÷ 14.007 × 101.102 = 1.0105 g/L.
    `
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { saltpetre: { formula: KNO3 }, table-salt: { formula: NaCl } }
      targets: { bloom: { N: 130..150 mg/L } }
      batches:
        tank: # the big one
          water: pure
          volume: 10 L
          target: bloom
          solve: to target
          feed: { saltpetre: 1.01 g/L }
    `,
  );
});

test('amounts that stand there are replaced one by one, and what is not needed is taken out', () => {
  checkAction(
    recipe`
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { saltpetre: { formula: KNO3 }, table-salt: { formula: NaCl }, potash: { formula: K2SO4 } }
      targets: { bloom: { N: 130..150 mg/L, S: 40..50 mg/L } }
      batches:
        tank:
          water: pure
          volume: 10 L
          target: bloom
          solve: to target
          feed:
            saltpetre: 2 g/L$0 # from last year
            table-salt: 1 g/L
    `,
    title,
    // S: 45 mg/L ÷ 32.06 × 174.26 = 0.2446 g/L.
    `
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { saltpetre: { formula: KNO3 }, table-salt: { formula: NaCl }, potash: { formula: K2SO4 } }
      targets: { bloom: { N: 130..150 mg/L, S: 40..50 mg/L } }
      batches:
        tank:
          water: pure
          volume: 10 L
          target: bloom
          solve: to target
          feed:
            saltpetre: 1.01 g/L # from last year
            potash: 0.245 g/L
    `,
  );
});

test('nothing is offered where it is not asked for, or where it cannot be solved', () => {
  const offered = titlesIn(recipe`
    recipe: 1
    waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
    feeds: { saltpetre: { formula: KNO3 } }
    targets: { bloom: { N: 130..150 mg/L } }
    batches: { tank: { water: pure, vol$0ume: 10 L, target: bloom } }
  `);
  expect(offered).not.toContain(title);
  const missing = titlesIn(recipe`
    recipe: 1
    waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
    targets: { bloom: { N: 130..150 mg/L } }
    batches: { tank: { water: pure, vol$0ume: 10 L, target: bloom, solve: to target } }
  `);
  expect(missing).not.toContain(title);
});
