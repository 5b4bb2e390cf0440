import { expect, test } from 'vitest';
import { planJson } from '../../schema/plan-json.ts';
import { runCli } from './run-cli.ts';

const shelf = `recipe: 1
waters:
  brook: { pH: 7.4, alkalinity: 90 mg/L CaCO3, ions: { Ca: 40 mg/L, NO3: 12 mg/L } }
feeds:
  stem:
    label: 2 mL/L
    analysis: { N: 5 %, P2O5: 4 %, K2O: 6 %, Ca: 1 % }
    nitrogen: { nitrate: 4.2 %, ammonium: 0.8 % }
    density: 1.15 kg/L
  saltpetre: { formula: KNO3, purity: 99 % }
adjusters:
  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
tools:
  syringe: { smallest: 0.5 mL, largest: 10 mL }
  scale: { smallest: 0.1 g }
  can: { holds: 12 L }
targets:
  leafy: { pH: 5.5..6.5, pH-aim: 5.8, EC: 1.0..1.6 mS/cm, N: 120..200 mg/L, K: 100..300 mg/L }
`;
const cress = `recipe: 1
title: Cress under the stairs
start: 2027-02-01
use: [./shelf.grow.yaml]
containers:
  crate:
    opaque: true
    inside: { box: { length: 30 cm, width: 20 cm, height: 20 cm } }
    net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
stages:
  leaf: { lasts: 30 d, target: leafy, batch: first, uses: 70 mL/d }
plantings:
  cress: { crop: cress, container: crate, count: 2, plants: 4, fill: 5 mm into net cup, keep-air-gap: 4 cm, stages: [leaf] }
batches:
  first:
    water: brook
    volume: 22 L
    mix-in: can
    feed: { stem: label, saltpetre: 0.11 g/L }
    adjust: { with: down }
    readings:
      - { pH: 7.0, EC: 1.2 mS/cm }
      - { add: { down: 20 mL }, pH: 6.2 }
`;
const files = { 'cress.grow.yaml': cress, 'shelf.grow.yaml': shelf };

async function jsonOf(text: string) {
  const { out } = await runCli(['plan', '-', '--format', 'json'], { stdin: text });
  return planJson.parse(JSON.parse(out));
}

test('a plan as text, a fact on a line', async () => {
  const { code, out, err } = await runCli(['plan', 'cress.grow.yaml'], { files });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatchInlineSnapshot(`
    "Cress under the stairs

    Batch first
      water             brook
      volume            22 L
      mix in            can, 2 loads of 11 L
      target            leafy: pH 5.5..6.5, aim 5.8, EC 1..1.6 mS/cm

      feed for each load, in this order
        stem            22 mL = 2 × 10 mL syringe + 1 × 2 mL syringe
        saltpetre       1.2 g = 1 × 1.2 g scale; exact 1.21 g

      feed in all
        stem            44 mL
        saltpetre       2.4 g

      a litre then holds
        N               133 mg/L, in the band 120..200 mg/L
        P               40.2 mg/L
        K               156 mg/L, in the band 100..300 mg/L
        Ca              63 mg/L
        N as nitrate    114 mg/L
        N as ammonium   18.4 mg/L
        N as urea       0 mg/L

      solution as mixed
        pH              6.68, above the band 5.5..6.5
        pH in air       7.86, above the band 5.5..6.5
                        as it stands, CO₂ leaves it and the pH climbs: measure again then
        EC at 25 °C     1.29 mS/cm, in the band 1..1.6 mS/cm
        clouding        is near to clouding with calcium hydrogen phosphate (brushite, index -0.1)
        certainty       an estimate, as some ions are not stated: a measured pH overrules it

      readings
        no. 1           pH 7.0, predicted 6.68, EC 1.2 mS/cm
        no. 2           after 20 mL down: pH 6.2, predicted 6.15

      adjustment
        with            down
        from pH         6.2 (measured)
        to pH           5.8
        amount          about 10.1 mL, 5.05 mL in each load
        range           7.27 mL to 12.9 mL, as meter and tools err
        step 1          2.5 mL in each load, then stir and measure: about pH 6.02
        step 2          1 mL in each load, then stir and measure: about pH 5.94
        step 3          0.5 mL in each load, then stir and measure: about pH 5.9
        step 4          1 mL in each load, then stir and measure: about pH 5.8
        reckoned        Learned from one measured step: \`down\` acts as 11.3 % phosphoric acid where 12 % is written, give or take 9.89 % of that.

      caution
        Causes serious eye irritation.
        Causes skin irritation.
        Wear gloves and eye protection.
        Pour acid into water, never water into acid.
        Add a little, stir, and measure again before adding more.
        Never mix an acid with a chlorine product, such as bleach: poisonous gas forms.
        Keep it away from children and food.
        Follow the label and the safety data sheet; they overrule the recipe.
        Dispose of it by your local rules.
        The amounts are estimates; the meter decides.

      solution in the end
        pH              5.8, in the band 5.5..6.5
        pH in air       6.38, in the band 5.5..6.5
                        as it stands, CO₂ leaves it and the pH climbs: measure again then
        EC at 25 °C     1.3 mS/cm, in the band 1..1.6 mS/cm

      fills
        cress           2 × 9.27 L = 18.5 L, first fill for leaf
        left over       3.45 L

    Planting cress
      crop              cress
      container         2 × crate, 4 plants in each
      fill              9.27 L in each, up to 15.5 cm
      highest refill    11 cm, once air roots hang

      stages
        leaf            from 2027-02-01, fed by first, level 15.5 cm, air gap 0 mm, EC 1.2 mS/cm
        to              2027-03-03, level 1.46 cm, air gap 13.5 cm, EC 1.2 mS/cm

      solution in each
        plants drink    8.4 L
        lasts the crop  yes, without a top-up

    Container crate
      brimful           11.9 L
      net-cup line      15 cm, 9 L up to it

    Tasks
      2027-02-01        mix first
      2027-02-01        fill the containers of cress with first: 9.27 L in each
      2027-02-01        set the plugs of cress over the solution; a plug is ready when its first root shows
      2027-02-08        measure pH, EC and level of cress
      2027-02-15        measure pH, EC and level of cress
      2027-02-22        measure pH, EC and level of cress
      2027-03-01        measure pH, EC and level of cress
      2027-03-03        harvest cress, until 2027-03-10

    Supplies
      stem              44 mL
      saltpetre         2.4 g
      down              30.1 mL
    "
  `);
});

test('US units where the recipe asks for them; tools keep their own marks', async () => {
  const us = { ...files, 'cress.grow.yaml': cress.replace('start:', 'show: us\nstart:') };
  const { out } = await runCli(['plan', 'cress.grow.yaml'], { files: us });
  expect(out).toContain('5.81 gal');
  expect(out).toContain('22 mL = 2 × 10 mL syringe + 1 × 2 mL syringe');
  expect(out).toMatch(/fill +\S+ gal in each, up to \S+ in\n/);
});

test('a plan as JSON has every key of version 1 and says what is unknown', async () => {
  const { code, out } = await runCli(['plan', 'cress.grow.yaml', '--format', 'json'], { files });
  expect(code).toBe(0);
  const json = planJson.parse(JSON.parse(out));
  expect(json).toMatchObject({ formatVersion: 1, file: 'cress.grow.yaml', title: 'Cress under the stairs' });
  const first = json.batches.first;
  expect(first).toMatchObject({
    volume_L: 22,
    loads: [{ volume_L: 11, doses: { stem: { mL: 22 }, saltpetre: { g: 1.21 } } }, { volume_L: 11 }],
    doses: {
      stem: {
        exact_mL: 44,
        measured_mL: 44,
        with: [
          { tool: 'syringe', times: 2, mL: 10 },
          { tool: 'syringe', times: 1, mL: 2 },
        ],
        error_percent: 0,
      },
      saltpetre: { exact_g: 2.42, measured_g: 2.4, with: [{ tool: 'scale', times: 1, g: 1.2 }], error_percent: -0.83 },
    },
    measured: { pH: 6.2, EC_mS_per_cm: 1.2 },
    adjustment: { with: 'down', to_pH: 5.8, cautions: expect.arrayContaining(['Wear gloves and eye protection.']) },
    readings: [
      { added: {}, measured_pH: 7 },
      { added: { down: { mL: 20 } }, measured_pH: 6.2 },
    ],
  });
  // 2.4 g of 99 % KNO3 in 22 L beside the label's potash and the water's nitrate; checked by hand from atomic weights.
  expect(first?.elements_mg_per_L.K).toBeCloseTo(2300 * 0.06 * 0.83015 + (2400 * 0.99 * 0.386717) / 22, 2);
  expect(first?.nitrogen_mg_per_L.nitrate).toBeCloseTo(
    2300 * 0.042 + (2400 * 0.99 * 0.138543) / 22 + (12 * 14.007) / 62.004,
    2,
  );
  expect(first?.nitrogen_mg_per_L).toMatchObject({ ammonium: 18.4, urea: 0 });
  expect(json.containers.crate).toMatchObject({
    brimful_L: expect.closeTo(12 - 0.0996, 3),
    netCupLine_cm: 15,
    netCupLine_L: 9,
  });
  expect(json.plantings.cress).toMatchObject({
    fill_cm: 15.5,
    perContainer: true,
    stages: [{ name: 'leaf', batch: 'first' }],
  });
});

test('every null of a plan is listed as unknown, itself or what it stands in', async () => {
  const json = await jsonOf(`recipe: 1
feeds:
  bottle: { label: 2 mL/L, analysis: { N: 5 % } }
containers:
  odd: { inside: { cylinder: { diameter: 9 cm } } }
plantings:
  p: { container: odd, stages: [leaf] }
batches:
  a: { water: none, volume: 20 L, feed: { bottle: label, lost: 1 g/L } }
  b: { water: none, feed: { bottle: label }, adjust: { with: down }, readings: [{ pH: 7 }] }
`);
  const listed = json.unknown.map(({ key }) => key.join('/'));
  const nulls = pathsOfNull(json, []).filter(
    path =>
      !/^(?:title|unknown)|\/(?:measured|adjustment|batch|perLoad|learned|learnedUse|firstPackageEnds)$/u.test(path),
  );
  expect(nulls.length).toBeGreaterThan(30);
  expect(nulls.filter(path => !listed.some(key => path === key || path.startsWith(`${key}/`)))).toEqual([]);
});

test('what is missing is named with its file, its path and its line', async () => {
  const bare = { ...files, 'shelf.grow.yaml': shelf.replace('    density: 1.15 kg/L\n', '') };
  const { out } = await runCli(['plan', 'cress.grow.yaml', '--format', 'json'], { files: bare });
  const json = planJson.parse(JSON.parse(out));
  expect(json.unknown.find(({ key }) => key.join('/') === 'batches/first/elements_mg_per_L/P')).toEqual({
    key: ['batches', 'first', 'elements_mg_per_L', 'P'],
    wants: ['the density of stem'],
    places: [{ file: 'shelf.grow.yaml', path: ['feeds', 'stem', 'density'], line: 4 }],
  });
  expect(json.batches.first?.elements_mg_per_L.P).toBe(null);
  expect(json.batches.first?.elements_mg_per_L.Ca).toBe(null);
  expect(json.batches.first?.doses.stem?.measured_mL).toBe(44);
});

test('a plan with errors is printed all the same, and gives 1', async () => {
  const { code, out } = await runCli(['plan', '-'], {
    stdin: 'recipe: 1\nbatches:\n  b: { water: brok, volume: 4 L }\n',
  });
  expect(code).toBe(1);
  expect(out).toContain('volume            4 L');
  expect(out).toContain('  error name-unknown at batches/b/water: There is no water named `brok`.');
  const never = await runCli(['plan', '-', '--fail-on', 'never'], { stdin: 'recipe: 1\nx: 1\n' });
  expect(never.code).toBe(0);
});

test.each([
  ['.', 'it is a folder, and a recipe file is wanted'],
  ['gone.grow.yaml', 'there is no such file'],
])('plan of %s gives 2', async (path, says) => {
  const { code, out, err } = await runCli(['plan', path]);
  expect({ code, out, err }).toEqual({ code: 2, out: '', err: `tidemark: ${path}: ${says}\n` });
});

test.each(['', 'recipe: 1\n', '[1, 2]', '\0', '__proto__: 1\nrecipe: 1\nbatches: { __proto__: { volume: 1 L } }\n'])(
  'plan of %j is a plan',
  async stdin => {
    expect((await jsonOf(stdin)).formatVersion).toBe(1);
    expect((await runCli(['plan', '-'], { stdin })).code).toBeLessThan(2);
  },
);

test('a thimble for a pond does not list a million loads', async () => {
  const json = await jsonOf(`recipe: 1
tools: { thimble: { holds: 2 mL } }
batches: { b: { volume: 900000 L, mix-in: thimble } }
`);
  expect(json.batches.b?.loads).toEqual([]);
  expect(json.unknown.some(({ key }) => key.join('/') === 'batches/b/loads')).toBe(true);
});

test.each([
  ['an adjustment', 'adjust: { with: down }'],
  ['a reading', 'readings: [{ add: { down: 3 mL }, pH: 6 }]'],
  ['an adjuster that is not described', 'adjust: { with: mystery }'],
])('the cautions stand in the batch that names %s', async (_, line) => {
  const batch = `batches:\n  b: { water: brook, volume: 4 L, ${line} }\n`;
  const { out } = await runCli(['plan', '-'], { stdin: `${shelf}${batch}` });
  const block = out.slice(out.indexOf('Batch b'), out.indexOf('\n\n', out.indexOf('  caution\n')));
  for (const caution of ['gloves and eye protection', 'acid into water', 'chlorine', 'children', 'safety data sheet']) {
    expect(block).toContain(caution);
  }
});

test('a feed that was added is no acid', async () => {
  const batch = 'batches:\n  b: { water: brook, volume: 4 L, readings: [{ add: { stem: 3 mL }, pH: 6 }] }\n';
  const { out } = await runCli(['plan', '-'], { stdin: `${shelf}${batch}` });
  expect(out).toContain('after 3 mL stem: pH 6');
  expect(out).not.toContain('caution');
});

/** The paths of every null in a value. */
function pathsOfNull(value: unknown, path: readonly string[]): readonly string[] {
  if (value === null) return [path.join('/')];
  if (typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, below]) => pathsOfNull(below, [...path, key]));
}
