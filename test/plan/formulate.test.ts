// `solve: to target`: amounts of feeds for the bands of a target, as near as labels and water allow.

import { describe, expect, test } from 'vitest';
import { numberOf } from '../../server/plan/figure.ts';
import { type Formulation, formulationOf } from '../../server/plan/formulate.ts';
import { type MarkedRecipe, recipe } from '../recipe.ts';

function formulation(of: MarkedRecipe, batch = 'tank'): Formulation {
  const { plan } = of.snapshot();
  const planned = plan.batches.get(batch);
  const found = planned === undefined ? undefined : formulationOf(plan.scope, planned);
  if (found?.kind !== 'formulation') throw new Error(JSON.stringify(found));
  return found;
}

const amountOf = (of: Formulation, name: string): number =>
  of.amounts.find(({ feed }) => feed.name === name)?.perLitre ?? Number.NaN;
const elementOf = (of: Formulation, name: string) => of.elements.find(({ element }) => element === name);

/*
 * Hoagland and Arnon 1950, California Agricultural Experiment Station Circular 347, solution 2: in a litre 1 mmol NH4H2PO4,
 * 6 mmol KNO3, 4 mmol Ca(NO3)2 and 2 mmol MgSO4.
 *   N  (1 + 6 + 8) × 14.007 = 210.1 mg/L     P 30.97     K 6 × 39.098 = 234.6
 *   Ca 4 × 40.078 = 160.3                    Mg 2 × 24.305 = 48.6        S 2 × 32.06 = 64.1
 * In grams: NH4H2PO4 0.1150, KNO3 6 × 101.10 = 0.6066, Ca(NO3)2·4H2O 4 × 236.15 = 0.9446, MgSO4·7H2O 2 × 246.47 = 0.4929.
 */
const hoagland = recipe`
  recipe: 1
  waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3, ions: { Na: 0 mg/L } } }
  feeds:
    ammonium-phosphate: { formula: NH4H2PO4 }
    saltpetre: { formula: KNO3 }
    calcium-nitrate: { formula: Ca(NO3)2·4H2O }
    bitter-salt: { formula: MgSO4·7H2O }
    table-salt: { formula: NaCl }
  targets:
    solution-2: { N: 209..211.2 mg/L, P: 30.8..31.2 mg/L, K: 233.4..235.8 mg/L, Ca: 159.5..161.1 mg/L, Mg: 48.4..48.8 mg/L, S: 63.8..64.4 mg/L }
  batches:
    tank: { water: pure, volume: 100 L, target: solution-2, solve: to target }
`;

describe('a known blend is found again', () => {
  test('Hoagland and Arnon’s solution 2, from its salts and one that it does not need', () => {
    const found = formulation(hoagland);
    expect(amountOf(found, 'ammonium-phosphate')).toBeCloseTo(0.115, 3);
    expect(amountOf(found, 'saltpetre')).toBeCloseTo(0.6066, 3);
    expect(amountOf(found, 'calcium-nitrate')).toBeCloseTo(0.9446, 3);
    expect(amountOf(found, 'bitter-salt')).toBeCloseTo(0.4929, 3);
    expect(amountOf(found, 'table-salt')).toBe(0);
    expect(found.elements.map(({ residual }) => residual)).toEqual([0, 0, 0, 0, 0, 0]);
    // Full strength stands near 2 mS/cm; the model reads a little lower.
    expect(found.EC.value).toBeGreaterThan(1.85);
    expect(found.EC.value).toBeLessThan(2.2);
  });

  test('the dose is that of the whole batch', () => {
    const dose = formulation(hoagland).amounts.find(({ feed }) => feed.name === 'saltpetre')?.dose;
    expect(numberOf(dose)).toBeCloseTo(60.66, 1);
  });

  test('the same each time', () => {
    expect(formulation(hoagland).amounts.map(one => one.perLitre)).toEqual(
      formulation(hoagland).amounts.map(one => one.perLitre),
    );
  });
});

describe('what it may not do', () => {
  test('a label is never exceeded, and is named as the reason', () => {
    const found = formulation(recipe`
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { moss: { label: 2 mL/L, analysis: { N: 3 % }, density: 1.1 kg/L } }
      targets: { leafy: { N: 120..160 mg/L } }
      batches: { tank: { water: pure, volume: 10 L, target: leafy, solve: to target } }
    `);
    // 2 mL/L × 1.1 g/mL × 3 % = 66 mg/L.
    expect(amountOf(found, 'moss')).toBeCloseTo(2, 9);
    expect(found.amounts[0]?.atLabel).toBe(true);
    expect(elementOf(found, 'N')).toMatchObject({ why: 'the label of moss allows no more' });
    expect(elementOf(found, 'N')?.residual).toBeCloseTo(66 - 120, 6);
  });

  test('only the feeds in `from` are used', () => {
    const found = formulation(recipe`
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { saltpetre: { formula: KNO3 }, potash: { formula: K2SO4 } }
      targets: { bloom: { K: 200..220 mg/L, N: 100..140 mg/L } }
      batches: { tank: { water: pure, volume: 10 L, target: bloom, solve: to target, from: [potash] } }
    `);
    expect(found.amounts.map(({ feed }) => feed.name)).toEqual(['potash']);
    expect(elementOf(found, 'N')).toMatchObject({ value: 0, why: 'none of these feeds brings N' });
  });

  test('the EC band weighs more than the elements', () => {
    const found = formulation(recipe`
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { saltpetre: { formula: KNO3 } }
      targets: { leafy: { N: 200..220 mg/L, EC: 0.5..0.7 mS/cm } }
      batches: { tank: { water: pure, volume: 10 L, target: leafy, solve: to target } }
    `);
    expect(found.EC.value).toBeGreaterThan(0.5);
    expect(found.EC.value).toBeLessThan(0.72);
    expect(elementOf(found, 'N')?.why).toBe('more of saltpetre would bring too much of something else');
  });

  test('what the water alone brings too much of is said to be the water’s', () => {
    const found = formulation(recipe`
      recipe: 1
      waters: { hard: { pH: 7.5, alkalinity: 150 mg/L CaCO3, ions: { Ca: 140 mg/L } } }
      feeds: { saltpetre: { formula: KNO3 } }
      targets: { leafy: { K: 50..80 mg/L, Ca: 60..100 mg/L } }
      batches: { tank: { water: hard, volume: 10 L, target: leafy, solve: to target } }
    `);
    expect(elementOf(found, 'Ca')).toMatchObject({
      residual: 40,
      why: 'the water alone brings more Ca than the band allows',
    });
    expect(elementOf(found, 'K')?.residual).toBe(0);
  });

  test('two that come together: what is too much came along', () => {
    const found = formulation(recipe`
      recipe: 1
      waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
      feeds: { saltpetre: { formula: KNO3 } }
      targets: { odd: { K: 10..12 mg/L, N: 100..120 mg/L } }
      batches: { tank: { water: pure, volume: 10 L, target: odd, solve: to target } }
    `);
    expect(elementOf(found, 'K')?.why).toBe('it comes along with what else is needed of saltpetre');
    expect(elementOf(found, 'N')?.why).toBe('more of saltpetre would bring too much of something else');
  });
});

test('what is missing is said, and nothing is asked where `solve` is not written', () => {
  const of = recipe`
    recipe: 1
    waters: { pure: { pH: 7, alkalinity: 0 mg/L CaCO3 } }
    feeds: { moss: { label: 2 mL/L, analysis: { N: 3 % } } }
    batches:
      tank: { water: pure, volume: 10 L, solve: to target }
      other: { water: pure, volume: 10 L }
  `;
  const { plan } = of.snapshot();
  const [tank, other] = [plan.batches.get('tank'), plan.batches.get('other')];
  const missing = tank === undefined ? undefined : formulationOf(plan.scope, tank);
  expect(missing).toMatchObject({
    kind: 'unknown',
    wants: [{ says: 'a target' }, { says: 'the density of moss' }, { says: 'feeds with an analysis or a formula' }],
  });
  expect(other === undefined ? 'no batch' : formulationOf(plan.scope, other)).toBeUndefined();
});
