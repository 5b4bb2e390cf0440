import { expect, test } from 'vitest';
import { checkFindings } from '../check-findings.ts';
import { recipe } from '../recipe.ts';

test('a pure salt stated in oxides may add up to more than 100 % where chloride takes the place of oxygen', () => {
  // Potassium chloride: K 52.4 %, stated as K2O 63.2 %, and Cl 47.6 %. Potassium sulfate in oxides is 100 % exactly.
  checkFindings(recipe`
    recipe: 1
    feeds:
      muriate: { analysis: { K2O: 63.2 %, Cl: 47.6 % } }
      sulfate: { analysis: { K2O: 54.1 %, SO3: 45.9 % } }
      doubtful: { analysis: { K2O: 54.1 %, SO3: 46.9 % } }
      #                     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ analysis-over-100: add up to 101 %
  `);
});

test('an element stated as oxide and as such counts once, and nitrogen by its forms counts too', () => {
  checkFindings(recipe`
    recipe: 1
    feeds:
      twice: { analysis: { P2O5: 52 %, P: 22.7 %, K2O: 34 %, K: 28 % } }
      forms: { analysis: { K2O: 46 % }, nitrogen: { nitrate: 35 %, ammonium: 30 % } }
      #                  ^^^^^^^^^^^^^ analysis-over-100: add up to 111 %
  `);
});

test('what an adjuster holds adds up to 100 % at most', () => {
  checkFindings(recipe`
    recipe: 1
    adjusters:
      down: { acid: { citric: 5 %, acetic: 4 % }, density: 1.03 kg/L }
      sour: { acid: { citric: 60 %, acetic: 55 % }, density: 1.2 kg/L }
      #             ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ analysis-over-100: 115 %
      #                       ^^^^ acid-hazard
      #                                     ^^^^ acid-hazard
  `);
});

test('forms of nitrogen may miss the total by what rounding to tenths can do', () => {
  checkFindings(recipe`
    recipe: 1
    feeds:
      a: { analysis: { N: 5 % }, nitrogen: { nitrate: 3.3 %, ammonium: 1.2 %, urea: 0.3 % } }
      b: { analysis: { N: 5 % }, nitrogen: { nitrate: 3.3 %, ammonium: 1.1 %, urea: 0.3 % } }
      #                                    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ nitrogen-mismatch: 4.7 %
      c: { nitrogen: { nitrate: 3.3 % } }
  `);
});

test('a formula is underlined where it is wrong', () => {
  checkFindings(recipe`
    recipe: 1
    feeds:
      a: { formula: CaSO4·2H2O }
      b: { formula: MgSo4.7H2O }
      #               ^^ formula-invalid: \`So\`: no element has this symbol
      c: { formula: "Ca(NO3" }
      #                ^ formula-invalid: this bracket is not closed
      d: { formula: kno3 }
      #             ^ formula-invalid: a symbol begins with a capital letter
  `);
});

test('an ion and its element are one, two ions are not', () => {
  checkFindings(recipe`
    recipe: 1
    waters:
      a: { ions: { NO3: 13 mg/L, NH4-N: 1 mg/L, SO4-S: 7 mg/L } }
      b: { ions: { SO4-S: 7 mg/L, SO4: 22 mg/L } }
      #            ^^^^^ ion-twice: only \`SO4\` counts
  `);
});

// Limits of Regulation (EC) No 1272/2008, Annex VI: phosphoric acid from 10 % irritates, from 25 % burns; nitric from 5 % burns.
test.each([
  ['phosphoric: 5 %', []],
  ['phosphoric: 15 %', ['H315', 'H319']],
  ['phosphoric: 30 %', ['H314', 'H290', 'H302']],
  ['nitric: 10 %', ['H314', 'H290']],
])('an acid says what its bottle says: %s', (acid, codes) => {
  const { findings } = recipe`
    recipe: 1
    adjusters: { down: { acid: { ${acid} } } }
  `.snapshot();
  const said = findings.flatMap(({ finding }) =>
    finding.code === 'acid-hazard' ? finding.params.statements.map(statement => statement.code) : [],
  );
  expect(said).toEqual(codes);
});

test('a weak base that the law does not class is no hazard', () => {
  checkFindings(recipe`
    recipe: 1
    adjusters: { up: { base: { KHCO3: 20 % } } }
  `);
});

test('a known response is strength enough', () => {
  checkFindings(recipe`
    recipe: 1
    adjusters: { down: { response: -0.6 pH at 0.3 mL/L } }
  `);
});
