import { expect, test } from 'vitest';
import { type ReviewParams, type ReviewResult, reviewRequest } from '../../server/protocol/requests.ts';
import { startInProcess } from './in-process.ts';

const uri = 'file:///plots/cress.grow.yaml';
const shelf = 'file:///plots/shelf.grow.yaml';
const cress = 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches:\n  first: { volume: 20 L, feed: { stem: label } }\n';
const feeds = 'recipe: 1\nfeeds:\n  stem: { label: 2 mL/L }\n';

async function ask(texts: ReviewParams['texts'], now = cress): Promise<ReviewResult> {
  const { open, connection } = await startInProcess();
  await open(shelf, feeds);
  await open(uri, now);
  return connection.sendRequest<ReviewResult>(reviewRequest, { uri, before: 'the last commit', texts });
}

test('the old texts of used files are asked for', async () => {
  expect(await ask([{ uri, text: cress }])).toEqual({ kind: 'wants', uris: [shelf] });
});

test('with all of them there is a review, against the text as it is typed', async () => {
  const texts = [
    { uri, text: cress },
    { uri: shelf, text: feeds.replace('2 mL/L', '1 mL/L') },
  ];
  expect(await ask(texts, cress.replace('20 L', '10 L'))).toMatchInlineSnapshot(`
    {
      "kind": "review",
      "text": "the last commit -> now
    1 value changes, 10 stay the same.

    cress.grow.yaml

      batch first
        volume  20 L -> 10 L  -10 L (-50 %)  [1]

      Because
        [1] batches › first › volume: 20 L, now 10 L (cress.grow.yaml:4)

    Computed values are estimates; labels and meters decide.
    ",
    }
  `);
});

test('a used file that was not there then is no reason to ask again', async () => {
  const result = await ask([
    { uri, text: cress },
    { uri: shelf, text: null },
  ]);
  expect(result).toMatchObject({ kind: 'review', text: expect.stringMatching(/dose of stem +not known +-> 40 mL/u) });
});

test('a recipe that was not there then is new', async () => {
  expect(await ask([{ uri, text: null }])).toMatchObject({ text: expect.stringContaining('This recipe is new') });
});

test('a file that is not open is not known', async () => {
  const { connection } = await startInProcess();
  expect(await connection.sendRequest(reviewRequest, { uri, before: 'x', texts: [] })).toEqual({ kind: 'unknown' });
});
