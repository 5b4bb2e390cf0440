import { expect, test } from 'vitest';
import { explainJson } from '../../schema/explain-json.ts';
import { planJson } from '../../schema/plan-json.ts';
import { runCli } from './run-cli.ts';

const shelf = `recipe: 1
waters:
  brook: { pH: 7.4, alkalinity: 90 mg/L CaCO3, ions: { Ca: 40 mg/L, NO3: 12 mg/L } }
feeds:
  stem: { label: 2 mL/L, analysis: { N: 5 %, P2O5: 4 %, K2O: 6 % }, nitrogen: { nitrate: 5 % }, density: 1.15 kg/L }
adjusters:
  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
targets:
  leafy: { pH: 5.5..6.5, pH-aim: 5.8 }
`;
const cress = `recipe: 1
start: 2027-02-01
use: [./shelf.grow.yaml]
containers:
  crate:
    inside: { box: { length: 30 cm, width: 20 cm, height: 20 cm } }
    net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
stages:
  leaf: { lasts: 10 d, target: leafy, batch: first, uses: 70 mL/d }
plantings:
  cress: { container: crate, fill: to net cup, stages: [leaf] }
batches:
  first:
    water: brook
    volume: 22 L
    temperature: 19 °C
    feed: { stem: 50 % of label }
    adjust: { with: down }
    readings:
      - { pH: 7.0 }
`;
const files = { 'cress.grow.yaml': cress, 'shelf.grow.yaml': shelf };

async function explained(path: string): Promise<string> {
  const { code, out, err } = await runCli(['explain', 'cress.grow.yaml', path], { files });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return out;
}

test('a dose is walked back to the lines it rests on', async () => {
  expect(await explained('batches/first/doses/stem')).toMatchInlineSnapshot(`
    "batches/first/doses/stem/exact_mL: 22 mL
      the dose for the whole batch
      dose = 1 mL/L × 22 L = 22 mL
        rate 1 mL/L: the rate that this share of the label comes to
          rate = 50 % × 2 mL/L = 1 mL/L
            share 50 %: batches › first › feed › stem, cress.grow.yaml:17
            label 2 mL/L: feeds › stem › label, shelf.grow.yaml:5
        volume 22 L: batches › first › volume, cress.grow.yaml:15

    Sources
      The grow recipe format, version 1
    "
  `);
});

test('a level by its formulas, down to a written depth', async () => {
  expect(await explained('plantings/cress/fill')).toMatchInlineSnapshot(`
    "plantings/cress/fill_L: 9 L
      the solution in one container
      volume = 9 L − 0 mL = 9 L
        level 15 cm: the level at which the solution touches the net cup
          line = 20 cm − 5 cm = 15 cm
            height 20 cm: containers › crate › inside › box › height, cress.grow.yaml:6
            depth 5 cm: containers › crate › net-cup › depth, cress.grow.yaml:7
        · inside up to the level: 9 L
        · displaced by the net cup: 0 mL

    Sources
      Volumes of cylinder, box, frustum and prismatoid (elementary geometry)
      The grow recipe format, version 1
    "
  `);
});

test('the adjustment starts from what was measured, and brings its cautions', async () => {
  expect(await explained('batches/first/adjustment/exact')).toMatchInlineSnapshot(`
    "batches/first/adjustment/exact_mL: 23.3 mL
      the amount that brings the batch to the pH
      amount where the charges balance at the aim, × 22 L: 23.3 mL
        from 7.0: batches › first › readings › no. 1 › pH, cress.grow.yaml:20
        to 5.8: targets › leafy › pH-aim, shelf.grow.yaml:9
        volume 22 L: batches › first › volume, cress.grow.yaml:15
        share 12 %: adjusters › down › acid › phosphoric, shelf.grow.yaml:7
        density 1.06 kg/L: adjusters › down › density, shelf.grow.yaml:7

    Sources
      Parkhurst, D.L. and Appelo, C.A.J.: Description of input and examples for PHREEQC version 3. USGS Techniques and Methods 6-A43; database phreeqc.dat

    Caution
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
    "
  `);
});

test('a pH tells its forms of carbon and the temperature that was assumed', async () => {
  const out = await explained('waters/brook/pH');
  expect(out).toMatch(/^waters\/brook\/pH: 7\.4\n/u);
  expect(out).toContain('alkalinity 90 mg/L CaCO3: waters › brook › alkalinity, shelf.grow.yaml:3\n');
  expect(out).toContain('temperature 20 °C: assumed: where no temperature is written\n');
  expect(out).toContain('· HCO₃⁻: 1.');
  expect(out).toContain('\nSources\n');
});

test('what stands twice is told once', async () => {
  const out = await explained('batches/first/elements_mg_per_L/K');
  expect(out.match(/dose = 2 mL\/L/gu)?.length ?? 0).toBeLessThanOrEqual(1);
  const { out: pH } = await runCli(['explain', 'cress.grow.yaml', 'batches/first/pH'], { files });
  expect(pH).toContain(', as above\n');
});

test('what is missing is named with its place', async () => {
  const bare = { ...files, 'shelf.grow.yaml': shelf.replace(', density: 1.15 kg/L', '') };
  const { code, out } = await runCli(['explain', 'cress.grow.yaml', 'batches/first/predicted/pH'], { files: bare });
  expect(code).toBe(0);
  expect(out).toBe(
    'batches/first/predicted/pH: not known\n  missing: the density of stem (feeds › stem › density, shelf.grow.yaml:5)\n',
  );
});

test('an adjuster of which nothing is known brings its cautions all the same', async () => {
  const mystery = { ...files, 'cress.grow.yaml': cress.replace('with: down', 'with: mystery, to: 6') };
  const { out } = await runCli(['explain', 'cress.grow.yaml', 'batches/first/adjustment/exact'], { files: mystery });
  expect(out).toContain('not known');
  expect(out).toContain('  Wear gloves and eye protection.\n');
});

test.each([
  'batches/first/volume',
  'batches/first/volume_L',
  'BATCHES/first/Volume',
  '/batches/first/feed/stem/',
  'batches/first/doses/stem/exact_mL',
  'batches/first/elements/N',
  'batches/first/nitrogen_mg_per_L/nitrate',
  'batches/first/predicted/saturation/calcite',
  'batches/first/final/pH_in_air',
  'batches/first/EC',
  'batches/first/readings/0/predicted_pH',
  'batches/first/readings/0/measured_pH',
  'waters/brook/CO2_mmol_per_L',
  'waters/brook/ionGap',
  'containers/crate/netCupLine_L',
  'plantings/cress/fill_cm',
  'plantings/cress/days/2027-02-04/level_cm',
  'plantings/cress/days/3/volume_L',
  'supplies/stem/uses_mL',
  'supplies/down',
])('%s is a number', async path => {
  expect(await explained(path)).not.toMatch(/^[^\n]*not known/u);
});

test('every number that is listed is explained, and is the number of the plan', async () => {
  const { out: list } = await runCli(['explain', 'cress.grow.yaml'], { files });
  const { out } = await runCli(['plan', 'cress.grow.yaml', '--format', 'json'], { files });
  const plan = planJson.parse(JSON.parse(out));
  const paths = list.trimEnd().split('\n');
  expect(paths.length).toBeGreaterThan(60);
  let compared = 0;
  for (const path of paths) {
    const answer = await runCli(['explain', 'cress.grow.yaml', path, '--format', 'json'], { files });
    const json = explainJson.parse(JSON.parse(answer.out));
    expect(json.path).toBe(path);
    const printed = valueAt(plan, path.split('/'));
    if (typeof printed !== 'number' || json.number.kind === 'unknown') continue;
    compared += 1;
    const unit = json.number.unit;
    const times = /_mL$|\/mL$/u.test(path)
      ? 1000
      : /percent$/u.test(path)
        ? 100
        : /mol_per_L$/u.test(path) && unit === 'mmol/L'
          ? 1e-3
          : 1;
    expect(json.number.value * times, path).toBeCloseTo(printed, 2);
  }
  expect(compared).toBeGreaterThan(40);
}, 60_000);

test.each([
  ['batches/first/adj', ['batches/first/adjustment/from_pH', 'batches/first/adjustment/to_pH']],
  ['batches/frist/volume', ['batches/first/volume']],
  ['plantings/cress', ['plantings/cress/fill_L', 'plantings/cress/fill_cm']],
  ['waters/brook/nothing', ['waters/brook/pH']],
])('%s gives 2 and names the nearest', async (path, near) => {
  const { code, out, err } = await runCli(['explain', 'cress.grow.yaml', path], { files });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(`cress.grow.yaml: there is no number ${path}. Nearest are:\n`);
  for (const one of near) expect(err).toContain(`  ${one}\n`);
});

test('a path that is like none points to the list', async () => {
  const { code, err } = await runCli(['explain', 'cress.grow.yaml', 'zzz'], { files });
  expect(code).toBe(2);
  expect(err).toBe(
    'tidemark: cress.grow.yaml: there is no number zzz. `tidemark explain cress.grow.yaml` lists all numbers.\n',
  );
});

test('a recipe that is not there gives 2', async () => {
  const { code, err } = await runCli(['explain', 'gone.grow.yaml', 'batches/a/pH']);
  expect({ code, err }).toEqual({ code: 2, err: 'tidemark: gone.grow.yaml: there is no such file\n' });
});

test('from standard input', async () => {
  const { out } = await runCli(['explain', '-', 'waters/brook/pH'], { stdin: shelf });
  expect(out).toContain('-:3\n');
});

function valueAt(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined),
    value,
  );
}
