import { expect, test } from 'vitest';
import { type SheetParams, type SheetResult, sheetRequest } from '../../server/protocol/requests.ts';
import { startInProcess } from './in-process.ts';

const uri = 'file:///plots/cress.grow.yaml';
const cress = 'recipe: 1\nbatches:\n  first: { water: rain, volume: 20 L, feed: { stem: label } }\n';
const stem = 'feeds: { stem: { label: 2 mL/L } }\nwaters: { rain: { pH: 6, alkalinity: 0.2 meq/L } }\n';

async function ask(about: SheetParams['about']): Promise<SheetResult> {
  const { open, connection } = await startInProcess();
  await open(uri, cress + stem);
  return connection.sendRequest<SheetResult>(sheetRequest, { uri, about });
}

test('the sheet of a batch is one page that needs nothing else', async () => {
  const result = await ask({ batch: 'first' });
  expect(result).toMatchObject({ kind: 'sheet', html: expect.stringMatching(/^<!doctype html>/u) });
  expect(result).toMatchObject({ html: expect.stringMatching(/stem<.*>40 mL</u) });
});

test('a day has a sheet too', async () => {
  const result = await ask({ day: '2027-03-01' });
  expect(result).toMatchObject({ html: expect.stringContaining('Monday, 2027-03-01') });
});

test('what there is no sheet of is said', async () => {
  expect(await ask({ batch: 'frist' })).toEqual({
    kind: 'refused',
    says: 'The recipe has no batch named frist. Did you mean first?',
  });
  expect(await ask({ day: '2027-13-01' })).toMatchInlineSnapshot(`
    {
      "kind": "refused",
      "says": "\`13\`: there are months 01 to 12.",
    }
  `);
  expect(await ask({ day: 'soon' })).toMatchInlineSnapshot(`
    {
      "kind": "refused",
      "says": "\`soon\`: a date is written year-month-day, as in 2027-02-01.",
    }
  `);
});

test('the sheet follows the text', async () => {
  const { open, change, connection } = await startInProcess();
  await open(uri, cress + stem);
  await change(uri, [{ text: cress.replace('20 L', '10 L') + stem }]);
  const result = await connection.sendRequest<SheetResult>(sheetRequest, { uri, about: { batch: 'first' } });
  expect(result).toMatchObject({ html: expect.stringMatching(/stem<.*>20 mL</u) });
});

test('of a file that is not open there is none', async () => {
  const { connection } = await startInProcess();
  const params: SheetParams = { uri, about: { batch: 'first' } };
  expect(await connection.sendRequest(sheetRequest, params)).toMatchObject({ kind: 'refused' });
});
