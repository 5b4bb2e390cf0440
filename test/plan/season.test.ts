// The timeline and the supplies of a plan: what is done on which day, and what it uses of each bottle.

import { describe, expect, test } from 'vitest';
import { formatDate } from '../../schema/date.ts';
import { numberOf } from '../../server/plan/figure.ts';
import { seasonOf } from '../../server/plan/season.ts';
import { costsOf } from '../../server/plan/supplies.ts';
import { type MarkedRecipe, recipe } from '../recipe.ts';

const season = (of: MarkedRecipe) => seasonOf(of.snapshot().plan);
const day = (date: Parameters<typeof formatDate>[0] | undefined) => (date === undefined ? undefined : formatDate(date));

const orchard = recipe`
  recipe: 1
  waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
  feeds:
    moss: { label: 5 mL/L, analysis: { N: 3 %, K2O: 4 % }, density: 1.1 kg/L, package: 100 mL, price: 9 EUR }
    salt: { formula: KNO3, package: 30 g, price: 4 GBP }
  adjusters: { down: { response: -0.6 pH at 0.3 mL/L, package: 250 mL, price: 7 EUR } }
  containers:
    tray:
      inside: { box: { length: 40 cm, width: 25 cm, height: 20 cm } }
      net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm }
  stages:
    young: { lasts: 14 d, batch: mild, uses: 200 mL/d }
    grown: { lasts: 21 d, batch: strong, uses: 900 mL/d }
  plantings:
    bean: { container: tray, count: 2, sow: 2027-02-15, transplant: 2027-03-01, keep-air-gap: 4 cm, stages: [young, grown] }
    pea: { container: tray, transplant: 2027-03-08, keep-air-gap: 4 cm, stages: [young] }
  batches:
    mild: { water: rain, volume: 45 L, feed: { moss: 2 mL/L }, readings: [{ pH: 6.6 }, { add: { down: 10 mL }, pH: 6.2 }], adjust: { with: down, to: 5.9 } }
    strong: { water: rain, volume: 22 L, feed: { salt: 1 g/L, moss: 5 mL/L }, readings: [{ EC: 1.2 mS/cm }] }
`;

describe('the timeline', () => {
  test('every day in order, and on one day in the order of work', () => {
    const said = season(orchard).tasks.map(
      ({ date, until, what }) => `${day(date)} ${what}${until === undefined ? '' : `, until ${day(until)}`}`,
    );
    expect(said).toMatchInlineSnapshot(`
      [
        "2027-02-15 sow bean",
        "2027-02-25 thin bean to one seedling in each plug",
        "2027-03-01 mix mild",
        "2027-03-01 fill the containers of bean with mild",
        "2027-03-01 set the plugs of bean over the solution; a plug is ready when its first root shows",
        "2027-03-08 measure pH, EC and level of bean",
        "2027-03-08 fill the containers of pea with mild",
        "2027-03-08 set the plugs of pea over the solution; a plug is ready when its first root shows",
        "2027-03-15 mix strong",
        "2027-03-15 measure pH, EC and level of bean",
        "2027-03-15 measure pH, EC and level of pea",
        "2027-03-15 change bean to strong as grown begins; leave the air roots in air",
        "2027-03-22 measure pH, EC and level of bean",
        "2027-03-22 harvest pea, until 2027-03-29",
        "2027-03-25 mix more of strong",
        "2027-03-25 top up bean with strong",
        "2027-03-29 measure pH, EC and level of bean",
        "2027-04-05 harvest bean, until 2027-04-12",
      ]
    `);
  });

  test('thirty plantings in one file keep the order in which they are written', () => {
    const names = Array.from({ length: 30 }, (_, index) => `p${String(index + 1).padStart(2, '0')}`);
    const { tasks } = season(recipe`
      recipe: 1
      start: 2027-03-01
      containers: { jar: { inside: { cylinder: { diameter: 10 cm, height: 15 cm } } } }
      stages: { leaf: { lasts: 7 d, uses: 10 mL/d } }
      plantings: { ${names.map(name => `${name}: { container: jar, fill: 12 cm, stages: [leaf] }`).join(', ')} }
    `);
    expect(tasks.filter(({ kind }) => kind === 'fill').map(({ about }) => about)).toEqual(names);
    expect(tasks.map(({ date }) => date)).toEqual([...tasks.map(({ date }) => date)].sort((a, b) => a - b));
  });

  test('a sowing without a transplanting is transplanted two weeks later', () => {
    const { plantings } = season(recipe`
      recipe: 1
      containers: { jar: { inside: { cylinder: { diameter: 10 cm, height: 15 cm } } } }
      stages: { leaf: { lasts: 7 d, uses: 10 mL/d } }
      plantings: { a: { container: jar, fill: 12 cm, sow: 2027-03-01, stages: [leaf] } }
    `);
    const stages = plantings.get('a')?.stages;
    expect(stages === undefined || 'kind' in stages ? undefined : day(stages[0]?.from)).toBe('2027-03-15');
  });

  test('lettuce is ripe six to seven weeks after sowing, where the plan ends then', () => {
    const { tasks } = season(recipe`
      recipe: 1
      containers: { jar: { inside: { cylinder: { diameter: 20 cm, height: 20 cm } } } }
      stages: { leaf: { lasts: 32 d } }
      plantings: { a: { crop: lettuce, container: jar, fill: 18 cm, sow: 2027-03-01, transplant: 2027-03-15, stages: [leaf] } }
    `);
    const harvest = tasks.find(({ kind }) => kind === 'harvest');
    expect([day(harvest?.date), day(harvest?.until)]).toEqual(['2027-04-12', '2027-04-19']);
  });
});

describe('supplies', () => {
  const { supplies } = season(orchard);

  /*
   * bean: 2 trays. Fill 15 L each, change to 11 L each on 15 March, 0.9 L a day. 11 − 10 × 0.9 = 2 L on 25 March, and 1.1 L the day
   * after would be below 1.3 L: 9 L each, up to the gap. 2 L again on 4 April, and 1.1 L at harvest the day
   * after, which is let be.
   * At 1.2 mS/cm a litre that is drunk takes what it holds, so each top-up is solution.
   * mild: 30 L for bean and 15 L for pea: 45 L, mixed once. moss 90 mL.
   * strong: 22 L + 18 L = 40 L: salt 40 g, moss 200 mL.
   */
  test('fills, changes and top-ups count', () => {
    expect(numberOf(supplies.get('moss')?.uses)).toBeCloseTo(0.09 + 0.2, 9);
    expect(numberOf(supplies.get('salt')?.uses)).toBeCloseTo(40, 9);
  });

  test('packages are whole, and cost what they cost', () => {
    expect(numberOf(supplies.get('moss')?.packages)).toBe(3);
    expect(supplies.get('moss')?.cost).toEqual({ amount: 27, currency: 'EUR' });
    expect(numberOf(supplies.get('salt')?.packages)).toBe(2);
    expect(supplies.get('salt')?.cost).toEqual({ amount: 8, currency: 'GBP' });
  });

  test('the day on which the first package is not enough', () => {
    // moss: 90 mL for mild on 1 March, 110 mL more for strong on 15 March; 100 mL to a package.
    expect(day(supplies.get('moss')?.firstPackageEnds)).toBe('2027-03-15');
    // salt: 22 g on 15 March, 18 g more on 25 March; 30 g to a package.
    expect(day(supplies.get('salt')?.firstPackageEnds)).toBe('2027-03-25');
    expect(supplies.get('down')?.firstPackageEnds).toBeUndefined();
  });

  test('of an adjuster: what readings say was added, and what is still asked for', () => {
    // 10 mL were added; from 6.2 to 5.9 takes by its response 0.3 ÷ 2 per mL/L × 45 L = 6.75 mL, or what was learned from the reading.
    expect(numberOf(supplies.get('down')?.uses)).toBeGreaterThan(0.01);
    expect(supplies.get('down')?.kind).toBe('adjuster');
  });

  test('amounts in different currencies are not added', () => {
    expect(costsOf(supplies.values())).toEqual([
      { amount: 34, currency: 'EUR' },
      { amount: 8, currency: 'GBP' },
    ]);
  });

  test('what is dosed by volume here and by mass there is said, not added', () => {
    const { supplies: mixed } = season(recipe`
      recipe: 1
      waters: { rain: { alkalinity: 0 mg/L CaCO3 } }
      feeds: { moss: { analysis: { N: 3 % }, density: 1.1 kg/L } }
      batches:
        a: { water: rain, volume: 10 L, feed: { moss: 2 mL/L } }
        b: { water: rain, volume: 10 L, feed: { moss: 2 g/L } }
    `);
    expect(mixed.get('moss')?.uses).toMatchObject({
      kind: 'unknown',
      wants: [{ says: 'doses of moss that are all by volume or all by mass' }],
    });
  });
});
