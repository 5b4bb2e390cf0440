import { describe, expect, test } from 'vitest';
import { adjustmentOf, finalOf } from '../../server/plan/adjust.ts';
import { loadAdjustmentOf } from '../../server/plan/adjust-loads.ts';
import { daysUntilLowOf, topUpFigure } from '../../server/plan/day-figures.ts';
import { inputsOf, type Known } from '../../server/plan/figure.ts';
import { ionGapOf } from '../../server/plan/ion-gap.ts';
import { mixtureOf } from '../../server/plan/mixture.ts';
import { isForecast, plantingSeasonOf, seasonOf } from '../../server/plan/season.ts';
import { stateOf } from '../../server/plan/state.ts';
import { strengthOf } from '../../server/plan/strength.ts';
import { planWater } from '../../server/plan/water.ts';
import { explain, explanationText, knownText, pathText, sourcesText, whereText } from '../../server/words/figure.ts';
import { checkFigure, figureAt, isFigure } from '../check-figure.ts';
import { membersOf } from '../members-of.ts';
import { recipe } from '../recipe.ts';

const bench = recipe`
  recipe: 1
  waters:
    well: { ions: { Ca: 60 mg/L, NO3: 20 mg/L, SO4: 0.4 meq/L } }
  feeds:
    moss: { label: 2 mL/L, analysis: { N: 5 %, K2O: 6 % }, density: 1.15 kg/L }
    salt: { formula: KNO3, purity: 99 % }
  tools:
    syringe: { smallest: 0.5 mL, largest: 10 mL }
    can: { holds: 12 L }
  containers:
    jug:
      inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
      net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }
  stages: { start: { lasts: 20 d, batch: second } }
  plantings:
    mint: { container: jug, count: 3, fill: 5 mm into net cup, keep-air-gap: 4 cm, stages: [start] }
  batches:
    first:
      water: well
      volume: 20 L
      mix-in: can
      feed: { moss: 55 % of label, salt: 0.15 g/L }
    second: { volume: as needed, feed: { moss: label } }
`;

describe('a figure is explained by the formula with the numbers in place', () => {
  test.each([
    ['batches/first/volume', '20 L', 'batches › first › volume'],
    ['batches/first/loads', '2', 'loads = 20 L ÷ (12 L × 95 %), rounded up = 2'],
    ['batches/first/doses/moss/rate', '1.1 mL/L', 'rate = 55 % × 2 mL/L = 1.1 mL/L'],
    ['batches/first/doses/moss', '22 mL', 'dose = 1.1 mL/L × 20 L = 22 mL'],
    ['batches/first/doses/moss/perLoad', '11 mL', 'dose of a load = 22 mL ÷ 2 = 11 mL'],
    ['batches/first/doses/moss/poured', '22 mL', 'poured = 11 mL × 2 = 22 mL'],
    ['batches/first/doses/moss/adds/N', '63.3 mg/L', 'added = 22 mL × 1.15 kg/L × 5 % ÷ 20 L = 63.3 mg/L'],
    ['batches/first/doses/salt', '3 g', 'dose = 150 mg/L × 20 L = 3 g'],
    ['batches/first/elements/N', '88.3 mg/L', 'total = 4.52 mg/L + 63.3 mg/L + 20.6 mg/L = 88.3 mg/L'],
    ['batches/second/volume', '7 L', 'volume = 6.67 L × (1 + 5 %) = 7 L'],
    ['plantings/mint/fill/level', '14.5 cm', 'level = 14 cm + 5 mm = 14.5 cm'],
    ['plantings/mint/fill/volume', '2.22 L', 'volume = 2.23 L − 10.1 mL = 2.22 L'],
    ['plantings/mint/fill/changeLevel', '10 cm', 'level = 14 cm − 4 cm = 10 cm'],
    ['plantings/mint/together', '6.67 L', 'together = 2.22 L × 3 = 6.67 L'],
    ['containers/jug/netCupLine', '14 cm', 'line = 20 cm − 6 cm = 14 cm'],
    ['feeds/moss/atLabel/K', '115 mg/L', 'element = 2 mL/L × 1.15 kg/L × 4.98 % = 115 mg/L'],
  ])('%s is %s', (path, amount, explained) => {
    checkFigure(bench, path, amount, explained);
  });
});

test('each input says what it is, and where it is written or why it is assumed', () => {
  const { plan } = bench.snapshot();
  expect(explanationText(figureAt(plan, 'batches/first/loads'), 'metric')).toMatchInlineSnapshot(`
    "\`loads = 20 L ÷ (12 L × 95 %), rounded up = 2\`

    - volume: 20 L, batches › first › volume
    - holds: 12 L, tools › can › holds
    - fill: 95 %, assumed: room left to stir"
  `);
  expect(sourcesText([figureAt(plan, 'batches/first/elements/K')])).toContain('Standard atomic weights');
});

test('what is missing is told with its place', () => {
  const bare = recipe`
    recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    batches: { first: { feed: { moss: label } } }
  `;
  checkFigure(
    bare,
    'batches/first/doses/moss',
    'Not known yet; missing: the volume of the batch (batches › first › volume).',
  );
});

test('places are told as a person reads them', () => {
  expect(pathText(['batches', 'first', 'readings', 1, 'pH'])).toBe('batches › first › readings › no. 2 › pH');
  const at = { path: ['feeds', 'moss'], part: { kind: 'value' }, file: 'file:///a%20b/my%20shelf.grow.yaml' } as const;
  expect(whereText(at)).toBe('feeds › moss in my shelf.grow.yaml');
});

test('every number printed is one of the figure', () => {
  const figures = [...computedIn(bench.snapshot().plan)];
  expect(figures.length).toBeGreaterThan(40);
  for (const figure of figures) onlyItsOwnNumbers(figure);
});

test('so is every number of the chemistry and of the season', () => {
  const { plan } = recipe`
    recipe: 1
    waters: { brook: { pH: 7.6, alkalinity: 110 mg/L CaCO3, temperature: 15 °C, ions: { Ca: 40 mg/L } } }
    feeds: { salt: { formula: KNO3 } }
    adjusters: { down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L, package: 1 L } }
    containers: { tub: { inside: { box: { length: 20 cm, width: 20 cm, height: 20 cm } } } }
    stages: { start: { lasts: 20 d, batch: first, uses: 300 mL/d } }
    plantings: { cress: { container: tub, fill: 12 cm, transplant: 2027-02-01, stages: [start] } }
    batches:
      first:
        water: brook
        volume: 20 L
        feed: { salt: 0.4 g/L }
        adjust: { with: down, to: 5.8 }
        readings: [{ pH: 7.4 }, { add: { down: 5 mL }, pH: 7 }]
    log: [{ on: 2027-02-05, planting: cress, level: 9 cm }]
  `.snapshot();
  const batch = plan.batches.get('first');
  const season = plan.plantings.get('cress');
  if (batch === undefined || season === undefined) throw new Error('no plan');
  const { forecast } = plantingSeasonOf(plan, season);
  if (!isForecast(forecast)) throw new Error('no forecast');
  const { water, adjuster } = batch.needs;
  const all = [
    mixtureOf(batch).predicted,
    mixtureOf(batch).inAir,
    stateOf(batch).readings,
    adjustmentOf(batch),
    loadAdjustmentOf(batch),
    finalOf(batch),
    water && planWater(water).carbon,
    water && ionGapOf(planWater(water)),
    adjuster && strengthOf(adjuster),
    daysUntilLowOf(forecast),
    forecast.topUps.map(topUp => topUpFigure(forecast, topUp)),
    seasonOf(plan).supplies,
  ];
  const figures = [...computedIn(all)];
  expect(figures.length).toBeGreaterThan(60);
  for (const figure of figures) onlyItsOwnNumbers(figure);
});

function onlyItsOwnNumbers(figure: Known): void {
  const { by } = figure;
  const explained = explain(figure, 'metric');
  if (by.kind !== 'step' || explained.kind === 'unknown') throw new Error('no step');
  const amounts = [figure, ...inputsOf(by)].flatMap(input =>
    input.kind === 'known' ? [knownText(input, 'metric')] : [],
  );
  for (const { amount } of explained.inputs) expect(amounts).toContain(amount);
  const constants = by.formula.statement.match(/\d+(?:\.\d+)?/gu) ?? [];
  const mayStand = [...amounts, ...explained.account.map(({ amount }) => amount), ...constants];
  const left = mayStand
    .sort((a, b) => b.length - a.length)
    .reduce((text, amount) => text.replaceAll(amount, ''), explained.statement ?? '');
  expect(left, explained.statement).not.toMatch(/\d/u);
}

/** Every figure of a plan that a formula gave, and every such figure that it rests on, each once. */
function* computedIn(value: unknown, seen = new Set<unknown>()): Generator<Known> {
  if (typeof value !== 'object' || value === null || seen.has(value)) return;
  seen.add(value);
  if (isFigure(value)) {
    if (value.kind === 'unknown' || value.by.kind !== 'step') return;
    yield value;
    for (const input of inputsOf(value.by)) yield* computedIn(input, seen);
    return;
  }
  for (const member of membersOf(value)) yield* computedIn(member, seen);
}
