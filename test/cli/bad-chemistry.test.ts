// What no chemistry can be done with: null in the JSON with the reason and its place, a finding at the value, and the rest computed.

import { expect, test } from 'vitest';
import { planJson, waterJson } from '../../schema/plan-json.ts';
import { runCli } from './run-cli.ts';

const good = 'good: { pH: 7, alkalinity: 100 mg/L CaCO3 }';

async function planOf(waters: string, batch: string, more = '') {
  const stdin = `recipe: 1
waters:
  ${good}
  ${waters}
${more}
batches:
  a: ${batch}
  rest: { water: good, volume: 10 L }
`;
  const { out, code } = await runCli(['plan', '-', '--format', 'json'], { stdin });
  expect(code).toBeLessThan(2);
  expect(out).not.toMatch(/NaN|Infinity/u);
  const json = planJson.parse(JSON.parse(out));
  const text = await runCli(['plan', '-'], { stdin });
  expect(text.out).not.toMatch(/NaN|Infinity|undefined/u);
  const reason = (key: string) => json.unknown.find(one => one.key.join('/') === `batches/a/${key}`);
  return { json, reason };
}

test.each([
  ['pH 15', '{ pH: 15, alkalinity: 2 meq/L }', 'waters/x/pH', 'value-invalid'],
  ['a pH below 4.3 with alkalinity', '{ pH: 4, alkalinity: 2 meq/L }', 'waters/x/alkalinity', 'water-impossible'],
  ['alkalinity below zero', '{ pH: 7, alkalinity: -2 meq/L }', 'waters/x/alkalinity', 'value-invalid'],
  ['ice', '{ pH: 7, alkalinity: 2 meq/L, temperature: -5 °C }', 'waters/x/temperature', undefined],
  ['tea', '{ pH: 7, alkalinity: 2 meq/L, temperature: 90 °C }', 'waters/x/temperature', 'temperature-outside'],
  ['an ion that cannot be read', '{ pH: 7, alkalinity: 2 meq/L, ions: { Ca: much } }', 'waters/x/ions/Ca', undefined],
])('a water of %s has no pH', async (_, water, place, code) => {
  const { json, reason } = await planOf(`x: ${water}`, '{ water: x, volume: 10 L }');
  expect(json.batches.a?.predicted).toMatchObject({ pH: null, pH_in_air: null, EC_mS_per_cm: null });
  expect(json.batches.a?.final.pH).toBe(null);
  for (const key of ['predicted/pH', 'predicted/EC_mS_per_cm', 'predicted/saturation/calcite', 'final/pH']) {
    expect(reason(key)?.places.map(({ path }) => path.join('/'))).toContain(place);
  }
  expect(json.batches.rest?.predicted.pH).toBeCloseTo(7, 6);
  if (code !== undefined) expect(json.findings.map(finding => finding.code)).toContain(code);
});

test.each([
  ['a liquid acid with no density', '{ acid: { phosphoric: 12 % } }', 'density-missing'],
  ['an acid of 120 %', '{ acid: { phosphoric: 120 % }, density: 1.5 kg/L }', 'value-invalid'],
  ['an acid with no strength', '{ density: 1 kg/L }', 'adjuster-without-strength'],
  ['a base that should lower the pH', '{ base: { KOH: 5 % }, density: 1.04 kg/L }', 'adjuster-wrong-way'],
])('%s gives no amount, and the pH is there all the same', async (_, adjuster, code) => {
  const { json, reason } = await planOf(
    'x: { pH: 7, alkalinity: 2 meq/L }',
    '{ water: x, volume: 10 L, adjust: { with: down, to: 6 } }',
    `adjusters:\n  down: ${adjuster}`,
  );
  expect(json.batches.a).toMatchObject({
    predicted: { pH: expect.closeTo(7, 6) },
    adjustment: { with: 'down', to_pH: 6, exact_mL: null, firstStep_mL: null, curve: [] },
    final: { pH: null },
  });
  expect(json.batches.a?.adjustment?.cautions).toContain('Wear gloves and eye protection.');
  for (const key of ['adjustment/exact_mL', 'adjustment/firstStep_pH', 'final/pH', 'final/EC_mS_per_cm']) {
    expect(reason(key)?.wants.length).toBeGreaterThan(0);
  }
  expect(json.findings.map(finding => finding.code)).toContain(code);
});

test.each([
  ['a formula that does not parse', 'salt: { formula: Kx2NO }', 'feeds/salt/formula', 'formula-invalid'],
  ['a feed of which nothing is said', 'salt: { label: 1 g/L }', 'feeds/salt/analysis', undefined],
])('%s leaves the batch without a pH, and its dose stands', async (_, feed, place, code) => {
  const { json, reason } = await planOf(
    'x: { pH: 7, alkalinity: 2 meq/L }',
    '{ water: x, volume: 10 L, feed: { salt: 1 g/L } }',
    `feeds:\n  ${feed}`,
  );
  expect(json.batches.a?.doses.salt?.exact_g).toBe(10);
  expect(json.batches.a?.predicted.pH).toBe(null);
  expect(reason('predicted/pH')?.places.map(({ path }) => path.join('/'))).toContain(place);
  if (code !== undefined) expect(json.findings.map(finding => finding.code)).toContain(code);
});

test('an ion that is given twice counts once', async () => {
  const { json } = await planOf(
    'x: { pH: 7, alkalinity: 2 meq/L, ions: { NO3: 10 mg/L, NO3-N: 200 mg/L } }',
    '{ water: x, volume: 10 L }',
  );
  expect(json.findings.map(finding => finding.code)).toContain('ion-twice');
  expect(json.batches.a?.nitrogen_mg_per_L.nitrate).toBeCloseTo((10 * 14.007) / 62.004, 3);
});

test('a water of which no pH can be says what its report stated, unless the report cannot be', async () => {
  const stdin = `recipe: 1
waters:
  half: { pH: 7.2, EC: 0.3 mS/cm }
  never: { pH: 4, alkalinity: 2 meq/L }
`;
  const { out } = await runCli(['water', '-', '--format', 'json'], { stdin });
  const { waters } = waterJson.parse(JSON.parse(out));
  expect(waters.half).toMatchObject({ pH: 7.2, EC_mS_per_cm: 0.3, alkalinity_meq_per_L: null, CO2_mmol_per_L: null });
  expect(waters.half?.unknown.alkalinity_meq_per_L).toEqual([
    'the alkalinity (or `air: open`, where the pH was measured after standing in air)',
  ]);
  expect(waters.never).toMatchObject({ pH: null, alkalinity_meq_per_L: null, EC_mS_per_cm: null });
});
