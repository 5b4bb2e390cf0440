import { expect, test } from 'vitest';
import { suppliesJson as contract } from '../../schema/supplies-json.ts';
import { plainPaint } from '../../server/reports/print/paint.ts';
import { suppliesJson } from '../../server/reports/supplies-json.ts';
import { suppliesText } from '../../server/reports/supplies-text.ts';
import { recipe } from '../recipe.ts';

const season = recipe`
  recipe: 1
  title: Stairwell greens
  waters:
    brook: { pH: 7.8, alkalinity: 140 mg/L CaCO3 }
  feeds:
    green: { label: 10 mL/L, package: 250 mL, price: 9 EUR, analysis: { N: 3 % }, density: 1.1 kg/L }
    iron: { package: 1 oz, price: 12 USD, analysis: { Fe: 6 % } }
    salt: { label: 0.1 g/L, formula: KCl }
  adjusters:
    down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
  containers:
    crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } }, net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm } }
  stages:
    young: { lasts: 20 d, batch: first, uses: 20 mL/d }
    old: { lasts: 20 d, batch: second, uses: 20 mL/d }
  plantings:
    basil: { container: crock, transplant: 2027-03-20, stages: [young, old] }
  batches:
    first: { water: brook, volume: 20 L, feed: { green: label, salt: label }, adjust: { with: down, to: 7 } }
    second: { water: brook, volume: 20 L, feed: { green: label, iron: 2 g } }
`;

test('what the plan uses, in packages, and when the first of them ends', () => {
  // 20 L × 10 mL/L in each of two batches: 400 mL, of which a bottle of 250 mL ends when the second is mixed, 20 days on.
  expect(suppliesText(season.snapshot(), 'a.grow.yaml', plainPaint).split('\n  !')[0]).toMatchInlineSnapshot(`
    "Supplies: Stairwell greens
      supply    uses          packages    cost  first package ends
      ------  ------  ----------------  ------  ------------------
      green   400 mL        2 × 250 mL  18 EUR  2027-04-09
      salt       2 g  size not written
      iron       2 g        1 × 28.3 g  12 USD  lasts
      down    4.1 mL  size not written
      Together 18 EUR and 12 USD, for 2 of 4 supplies."
  `);
});

test('an acid is never listed without its cautions', () => {
  const text = suppliesText(season.snapshot(), 'a.grow.yaml', plainPaint).replaceAll('\n  ! ', ' ');
  expect(text).toMatch(/down: Causes .*Wear gloves and eye protection\. Pour acid into water/);
});

test('as JSON, by the contract', () => {
  const json = suppliesJson(season.snapshot(), () => 'a.grow.yaml');
  expect(contract.parse(JSON.parse(JSON.stringify(json)))).toEqual(json);
  expect(json.supplies.green).toEqual({
    kind: 'feed',
    uses_mL: 400,
    package_mL: 250,
    packages: 2,
    cost: '18 EUR',
    firstPackageEnds: '2027-04-09',
    cautions: [],
  });
  expect(json.supplies.iron).toMatchObject({ uses_g: 2, package_g: 28.349523125, packages: 1, firstPackageEnds: null });
  expect(json.supplies.down?.cautions.length).toBeGreaterThan(5);
  expect(json.cost).toEqual(['18 EUR', '12 USD']);
});

test('every null number of the JSON is said to be unknown', () => {
  const { supplies, unknown } = suppliesJson(season.snapshot(), () => 'a.grow.yaml');
  expect(supplies.salt?.packages).toBeNull();
  expect(unknown).toContainEqual(
    expect.objectContaining({
      key: ['supplies', 'salt', 'packages'],
      wants: [expect.stringContaining('a package of salt')],
    }),
  );
});

test('a recipe that uses nothing says so', () => {
  expect(suppliesText(recipe`recipe: 1`.snapshot(), 'a.grow.yaml', plainPaint)).toBe(
    'Supplies: a.grow.yaml\n  No batch uses a feed or an adjuster.\n',
  );
});
