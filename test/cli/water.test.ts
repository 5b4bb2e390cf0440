import { expect, test } from 'vitest';
import { waterJson } from '../../schema/plan-json.ts';
import { runCli } from './run-cli.ts';

const stdin = `recipe: 1
waters:
  brook: { pH: 7.4, alkalinity: 2 meq/L, EC: 400 µS/cm, ions: { Ca: 40 mg/L, NO3: 62 mg/L, SO4-S: 8 mg/L } }
  rain: { alkalinity: 0 meq/L }
`;

test('every water, with what its report states and the elements it brings', async () => {
  const { code, out } = await runCli(['water', '-'], { stdin });
  expect(code).toBe(0);
  expect(out).toMatchInlineSnapshot(`
    "Water brook
      EC as stated      0.4 mS/cm
      alkalinity        100 mg/L CaCO3, 2 meq/L

      as drawn
        pH              7.4
        pH in air       8.41
                        as it stands, CO₂ leaves it and the pH climbs: measure again then
        EC at 25 °C     0.288 mS/cm
        carbon          2.17 mmol/L
        CO₂             0.177 mmol/L
        HCO₃⁻           1.97 mmol/L
        CO₃²⁻           2.55 µmol/L
        ionic strength  3.87 mmol/L

      ions of the report
        balance         1.5 meq/L, 28 % of cations are missing; a good report is within 5 %: an ion is missing or wrong, and what follows from it is uncertain

      a litre brings
        Ca              40 mg/L
        N               14 mg/L
        S               8 mg/L

    Water rain
      alkalinity        0 mg/L CaCO3, 0 meq/L

      as drawn
        pH              5.58
        pH in air       5.58
        EC at 25 °C     1.04 µS/cm
        carbon          0.0191 mmol/L
        CO₂             0.0165 mmol/L
        HCO₃⁻           2.62 µmol/L
        CO₃²⁻           0.0000424 µmol/L
        ionic strength  2.62 µmol/L
    "
  `);
});

test('one water as JSON', async () => {
  const { out } = await runCli(['water', '-', 'brook', '--format', 'json'], { stdin });
  const { waters, file } = waterJson.parse(JSON.parse(out));
  expect(file).toBe('-');
  expect(Object.keys(waters)).toEqual(['brook']);
  expect(waters.brook).toMatchObject({
    pH: 7.4,
    alkalinity_meq_per_L: expect.closeTo(2, 9),
    isByDifference: false,
    // 2 meq of Ca against 1 of nitrate, 0.5 of sulfate and 2 of alkalinity; the share counts what is not paired.
    ionGap: { meq_per_L: expect.closeTo(-1.5, 2), percent: expect.closeTo(-28, 0), isLarge: true },
  });
  expect(waters.brook?.elements_mg_per_L).toMatchObject({ Ca: 40, S: 8, N: expect.closeTo(14.006, 2) });
});

test('every null of a water is said to be unknown', async () => {
  const { out } = await runCli(['water', '-', '--format', 'json'], { stdin });
  const { waters } = waterJson.parse(JSON.parse(out));
  for (const water of Object.values(waters)) {
    const nulls = Object.entries(water).flatMap(([key, value]) => (value === null ? [key] : []));
    expect(nulls.filter(key => key !== 'ionGap' && water.unknown[key] === undefined)).toEqual([]);
  }
});

test('a water that is not there gives 2, with the nearest name', async () => {
  const { code, out, err } = await runCli(['water', '-', 'brok'], { stdin });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toBe('tidemark: -: there is no water named brok. Did you mean brook?\n');
});
