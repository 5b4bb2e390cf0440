import { expect, test } from 'vitest';
import { suppliesJson } from '../../schema/supplies-json.ts';
import { runCli } from './run-cli.ts';

const stdin = `recipe: 1
waters: { brook: { pH: 7 } }
feeds: { green: { label: 2 mL/L, package: 1 L, price: 18 EUR } }
batches: { opening: { water: brook, volume: 20 L, feed: { green: label } } }
`;

test('as text', async () => {
  const { code, out, err } = await runCli(['supplies', '-'], { stdin });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatch(/^Supplies: -\n[\s\S]*green +40 mL +1 × 1 L +18 EUR +lasts\n {2}Together 18 EUR\.\n$/);
});

test('as JSON', async () => {
  const { out } = await runCli(['supplies', '-', '--format', 'json'], { stdin });
  const { file, supplies } = suppliesJson.parse(JSON.parse(out));
  expect(file).toBe('-');
  expect(supplies.green).toMatchObject({ uses_mL: 40, packages: 1, cost: '18 EUR' });
});
