// The samples, as a grower would use them: each opens, checks as it should and plans, and the numbers that it shows stand here.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { snapshotOf } from '../.ci/explore.ts';
import { formatDate } from '../schema/date.ts';
import { sayWhat } from '../schema/findings.ts';
import { planJson as planSchema } from '../schema/plan-json.ts';
import type { Quantity } from '../schema/quantity.ts';
import { type Figure, numberOf } from '../server/plan/figure.ts';
import { formulationOf } from '../server/plan/formulate.ts';
import { isForecast, seasonOf } from '../server/plan/season.ts';
import { planJson } from '../server/reports/plan-json.ts';
import { amountText, showIn } from '../server/words/amount.ts';
import type { Snapshot } from '../server/workspace/snapshot.ts';

const folder = join(import.meta.dirname, '..', 'samples');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter(path => path.endsWith('.grow.yaml'))
  .map(path => path.replaceAll('\\', '/'))
  .sort();

const opened = new Map(files.map(file => [file, snapshotOf(join(folder, file))]));

test('there are five scenarios, two of them with a shelf', () => {
  expect(files).toEqual([
    'cistern/porch.grow.yaml',
    'ferry/galley.grow.yaml',
    'lighthouse/kitchen.grow.yaml',
    'lighthouse/shelf.grow.yaml',
    'observatory/winter.grow.yaml',
    'schoolroom/form-three.grow.yaml',
    'schoolroom/shelf.grow.yaml',
  ]);
});

describe('each sample has only the findings it is meant to have', () => {
  test.each([
    ['cistern/porch.grow.yaml', []],
    ['ferry/galley.grow.yaml', []],
    ['lighthouse/kitchen.grow.yaml', []],
    ['schoolroom/form-three.grow.yaml', []],
    ['schoolroom/shelf.grow.yaml', []],
    // The acid is weak, and still an acid.
    [
      'lighthouse/shelf.grow.yaml',
      [
        'acid-hazard: `down` is 10 % phosphoric acid. Causes skin irritation (H315). Causes serious eye irritation (H319).',
      ],
    ],
    // The beans drank more than was thought; a second top-up brings them to their harvest.
    [
      'observatory/winter.grow.yaml',
      [
        'runs-dry: `bean` stands too low on 2028-01-10, 7 days before its last stage ends. A top-up of 2.26 L on 2028-01-09 keeps it wet.',
      ],
    ],
  ])('%s', (file, expected) => {
    expect(findingsOf(snapshot(file))).toEqual(expected);
  });
});

test.each(files)('%s gives a plan that its schema accepts, and its file name nowhere else', file => {
  const printed = planJson(snapshot(file), () => file);
  expect(planSchema.parse(JSON.parse(JSON.stringify(printed)))).toMatchObject({ formatVersion: 1, file });
});

/*
 * By hand, with a label rate and percent by mass:
 *   leaf: 6 mL/L × 84 L = 504 mL, in three loads of 28 L: 168 mL each, as 165 mL by the jug and 3 mL by the syringe.
 *   N: 504 mL × 1.12 g/mL × 2.2 % = 12.419 g; in 84 L 147.84 mg/L.
 *   P: 504 × 1.12 × 0.9 % = 5.0803 g P2O5, of which 2 × 30.974 / 141.943 = 0.43643 is P: 2.2172 g, 26.4 mg/L.
 *   Ca: 504 × 1.12 × 1.3 % = 7.338 g, 87.36 mg/L, and 24 mg/L in the spring water: 111.36 mg/L.
 *   basil: pi/4 × (16 cm)² × 16.5 cm = 3.3175 L less a slice of the cup 5 mm thick and 5 to 5.17 cm wide, 0.0102 L: 3.307 L.
 */
test('lighthouse: the first batch comes to what a pencil gives', () => {
  const batch = snapshot('lighthouse/kitchen.grow.yaml').plan.batches.get('opening');
  expect(numberOf(batch?.doses.get('leaf')?.exact)).toBeCloseTo(0.504, 9);
  expect(numberOf(batch?.elements.get('N'))).toBeCloseTo(147.84, 2);
  expect(numberOf(batch?.elements.get('P'))).toBeCloseTo(26.395, 2);
  expect(numberOf(batch?.elements.get('Ca'))).toBeCloseTo(111.36, 2);
  const basil = snapshot('lighthouse/kitchen.grow.yaml').plan.plantings.get('basil');
  expect(numberOf(basil?.fill.volume)).toBeCloseTo(3.3074, 3);
});

/*
 * By hand, with rates by the gallon, salts by formula and a volume as needed:
 *   The tin: pi/4 × (6 in)² × 4.75 in = 134.30 in³ = 2.2008 L to the net cup's bottom; three of them 6.602 L.
 *   With the crate's 13.724 L and the window box's 9.555 L, and a twentieth to spare: 29.882 L × 1.05 = 31.376 L, 8.2886 US gal.
 *   calcium nitrate: 3 g/gal × 8.2886 gal = 24.866 g; the scale gives 12.4 g for each of two loads, 24.8 g in all.
 *   Ca(NO3)2·4H2O, 236.146 g/mol: 24.8 g × 98 % × 40.078 / 236.146 = 4.1248 g Ca, in 31.376 L 131.46 mg/L, and 1.5 mg/L in the rain.
 */
test('cistern: the batch of salts comes to what a pencil gives', () => {
  const { batches, plantings } = snapshot('cistern/porch.grow.yaml').plan;
  const batch = batches.get('spring');
  expect(numberOf(plantings.get('parsley')?.fill.volume)).toBeCloseTo(2.2008, 3);
  expect(numberOf(batch?.volume)).toBeCloseTo(31.376, 3);
  expect(numberOf(batch?.doses.get('calcium-nitrate')?.exact)).toBeCloseTo(24.866, 3);
  expect(numberOf(batch?.doses.get('calcium-nitrate')?.poured)).toBeCloseTo(24.8, 9);
  expect(numberOf(batch?.elements.get('Ca'))).toBeCloseTo(132.96, 2);
});

/*
 * By hand, of the flasks: pi/4 × (24 cm)² = 452.39 cm² hold 0.45239 L a centimetre.
 *   Changed on 6 December up to 24 − 6 = 18 cm: 8.1430 L. On the 16th 11.9 cm: 5.3834 L, so 2.7596 L drunk in 10 days, where
 *   230 mL/d make 2.3 L: 1.1998 times. Two days on and 2 L in: 5.3834 − 2 × 0.27596 + 2 = 6.8315 L.
 *   1.3 cm hold 0.5881 L: (6.8315 − 0.5881) ÷ 0.27596 = 22.6, so the 23rd morning stands too low, 10 January.
 */
test('observatory: the levels show what the beans drink', () => {
  const bean = seasonOf(snapshot('observatory/winter.grow.yaml').plan).plantings.get('bean')?.forecast;
  if (bean === undefined || !isForecast(bean)) throw new Error('no forecast');
  expect(bean.learnedUse).toBeCloseTo(1.1998, 4);
  const day = bean.days.find(({ date }) => formatDate(date) === '2027-12-18');
  expect(day?.volume_L).toBeCloseTo(6.8315, 4);
  expect(bean.runsLow === undefined ? undefined : formatDate(bean.runsLow)).toBe('2028-01-10');
});

/*
 * By hand: a jar holds pi/4 × (11 cm)² × 16 cm = 1.52053 L to the net cup; 32 of them 48.657 L, and a twentieth more 51.090 L.
 * sprout: 4 mL/L × 51.090 L = 204.4 mL in two loads of 102.2 mL.
 */
test('schoolroom: one batch fills the jars of thirty pupils and two more', () => {
  const first = snapshot('schoolroom/form-three.grow.yaml').plan.batches.get('first');
  expect(numberOf(first?.volume)).toBeCloseTo(51.09, 3);
  expect(numberOf(first?.loads)).toBe(2);
  expect(numberOf(first?.doses.get('sprout')?.exact)).toBeCloseTo(0.20436, 5);
});

test('ferry: the amounts in the batch are those that meet the target best, in three digits', () => {
  const { plan } = snapshot('ferry/galley.grow.yaml');
  const batch = plan.batches.get('crossing');
  const found = batch === undefined ? undefined : formulationOf(plan.scope, batch);
  if (batch === undefined || found?.kind !== 'formulation') throw new Error('no formulation');
  for (const { feed, perLitre } of found.amounts) {
    // A rate counts mg a litre.
    const written = numberOf(batch.doses.get(feed.name)?.rate) ?? 0;
    expect(written / 1000).toBeCloseTo(Number(perLitre.toPrecision(3)), 9);
  }
  expect(found.elements.every(({ residual }) => residual === 0)).toBe(true);
});

test('lighthouse shows these numbers', () => {
  expect(numbersOf(snapshot('lighthouse/kitchen.grow.yaml'))).toMatchInlineSnapshot(`
    "opening: 84 L in 3 loads of 28 L
      leaf: 504 mL, a load 168 mL, poured 504 mL
      N 148 mg/L, P 26.4 mg/L, K 169 mg/L, Ca 111 mg/L, Mg 27.5 mg/L, S 20.5 mg/L, Fe 2.02 mg/L, Mn 0.403 mg/L, Zn 0.269 mg/L, Cu 0.0672 mg/L, B 0.269 mg/L, Mo 0.0403 mg/L, Cl 11 mg/L, Na 9 mg/L
    later: 28 L in 1 loads of 28 L
      fruit: 224 mL, a load 224 mL, poured 224 mL
      N 155 mg/L, P 43.8 mg/L, K 244 mg/L, Ca 133 mg/L, Mg 40.5 mg/L, S 44.7 mg/L, Fe 2.28 mg/L, Mn 0.547 mg/L, Zn 0.365 mg/L, Cu 0.073 mg/L, B 0.365 mg/L, Mo 0.0456 mg/L, Cl 42.9 mg/L, Na 9 mg/L
    basil: 3.31 L up to 16.5 cm
    chard: 38.3 L up to 19 cm
    cucumber: 15.5 L up to 28 cm"
  `);
});

test('cistern shows these numbers, in the units of its reader', () => {
  expect(numbersOf(snapshot('cistern/porch.grow.yaml'))).toMatchInlineSnapshot(`
    "spring: 8.29 gal in 2 loads of 4.14 gal
      calcium-nitrate: 24.9 g, a load 12.4 g, poured 24.8 g
      saltpetre: 10.8 g, a load 5.39 g, poured 10.8 g
      bitter-salt: 12.4 g, a load 6.22 g, poured 12.4 g
      potassium-phosphate: 4.97 g, a load 2.49 g, poured 5 g
      traces: 0.995 g, a load 0.497 g, poured 1 g
      N 139 mg/L, P 35.9 mg/L, K 177 mg/L, Ca 133 mg/L, Mg 38.6 mg/L, S 50.9 mg/L, Fe 1.91 mg/L, Mn 0.765 mg/L, Zn 0.382 mg/L, Cu 0.0956 mg/L, B 0.382 mg/L, Mo 0.0478 mg/L, Cl 1.4 mg/L, Na 1 mg/L
    kale: 2.52 gal up to 5 in
    pak-choi: 3.63 gal up to 6 in
    parsley: 2.33 qt up to 4.75 in"
  `);
});

function snapshot(file: string): Snapshot {
  const found = opened.get(file);
  if (found === undefined) throw new Error(`${file} does not open`);
  return found;
}

function findingsOf({ findings, recipe }: Snapshot): readonly string[] {
  return findings.map(({ finding }) => `${finding.code}: ${sayWhat(finding, showIn(recipe.show ?? 'metric'))}`);
}

/** What is shown of every batch and planting, a line each. */
function numbersOf({ plan, recipe }: Snapshot): string {
  const say = (figure: Figure): string =>
    figure.kind === 'unknown' ? 'unknown' : amountText(figure.quantity as Quantity, recipe.show ?? 'metric');
  const batches = [...plan.batches].flatMap(([name, batch]) => [
    `${name}: ${say(batch.volume)} in ${say(batch.loads)} loads of ${say(batch.loadVolume)}`,
    ...[...batch.doses].map(
      ([feed, dose]) => `  ${feed}: ${say(dose.exact)}, a load ${say(dose.perLoad)}, poured ${say(dose.poured)}`,
    ),
    `  ${[...batch.elements].map(([element, figure]) => `${element} ${say(figure)}`).join(', ')}`,
  ]);
  const fills = [...plan.plantings].map(([name, { fill }]) => `${name}: ${say(fill.volume)} up to ${say(fill.level)}`);
  return [...batches, ...fills].join('\n');
}
