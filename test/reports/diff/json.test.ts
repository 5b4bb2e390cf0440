import { expect, test } from 'vitest';
import { diffJson } from '../../../schema/diff-json.ts';
import { reviewJson } from '../../../server/reports/diff/json.ts';
import { type Pair, review, type Side } from '../../../server/reports/diff/review.ts';
import { recipe } from '../../recipe.ts';

const bench = `recipe: 1
start: 2027-02-01
waters: { brook: { pH: 7.4, alkalinity: 70 mg/L CaCO3 } }
feeds: { stem: { label: 2 mL/L, analysis: { N: 5 % }, density: 1.15 kg/L, package: 1 L, price: 9 EUR } }
adjusters: { down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L } }
tools: { syringe: { smallest: 0.5 mL, largest: 10 mL } }
containers: { crate: { inside: { box: { length: 30 cm, width: 20 cm, height: 20 cm } }, net-cup: { depth: 5 cm } } }
stages: { leaf: { lasts: 30 d, batch: first, uses: 50 mL/d } }
plantings: { cress: { crop: cress, container: crate, count: 2, fill: to net cup, stages: [leaf] } }
batches:
  first: { water: brook, volume: 22 L, feed: { stem: label }, adjust: { with: down, to: 5.8 } }
`;

/** What `diff --format json` prints, held to what is promised: nothing less and nothing more. */
function printed(...pairs: readonly Pair[]) {
  const json: unknown = JSON.parse(reviewJson(review('before', 'after', pairs)));
  const held = diffJson.parse(json);
  expect(held).toEqual(json);
  return held;
}

function side(text: string): Side {
  return { kind: 'recipe', file: 'a.grow.yaml', snapshot: recipe`${text}`.snapshot(), nameFile: () => 'a.grow.yaml' };
}

const edited = (from: string, to: string): Pair => {
  expect(bench).toContain(from);
  return { before: side(bench), after: side(bench.replace(from, to)) };
};

test.each([
  ['nothing', '22 L', '22 L'],
  ['a number', '22 L', '17 L'],
  ['a number that is not known any more', 'density: 1.15 kg/L, ', ''],
  ['a date', '2027-02-01', '2027-02-03'],
  ['a price', '9 EUR', '9 USD'],
  ['a text', 'crop: cress', 'crop: mint'],
  ['a way to measure', 'largest: 10 mL', 'largest: 20 mL'],
  ['a name', 'crate', 'crate'],
  ['a text that cannot be read', 'batches:\n', 'batches: [\n'],
  ['conflict marks', 'batches:\n', '<<<<<<< HEAD\nbatches:\n'],
])('the JSON is as promised where %s changes', (_, from, to) => {
  printed(edited(from, to));
});

test('so it is for recipes that are new, gone, moved, renamed or not to be read', () => {
  const here = side(bench);
  const absent: Side = { kind: 'absent' };
  const unread: Side = { kind: 'unread', file: 'b.grow.yaml', says: 'it cannot be read' };
  const { files, counts } = printed(
    { before: absent, after: here },
    { before: here, after: absent },
    { before: here, after: unread },
    { before: here, after: here, was: 'old.grow.yaml' },
    { before: here, after: side(bench.replaceAll('first', 'opening')) },
  );
  expect(files.map(({ state }) => state)).toEqual(['added', 'removed', 'unread', 'compared', 'compared']);
  expect(files[4]?.renames).toEqual([{ group: 'batch', before: 'first', after: 'opening' }]);
  expect(counts).toMatchObject({ added: 1, removed: 1, unread: 1, changed: 0 });
});

test('texts and ways to measure stand as texts, with no unit and no difference', () => {
  const [file] = printed(edited('crop: cress', 'crop: mint')).files;
  expect(file?.changes).toMatchObject([
    { group: 'planting', what: 'crop', before: 'cress', after: 'mint', unit: null, change: null, percent: null },
  ]);
  const [tool] = printed(edited('largest: 10 mL', 'largest: 20 mL')).files;
  expect(tool?.changes).toMatchObject([
    { what: 'measuring of stem', before: '4 × 10 mL and 4 mL with syringe', after: '2 × 20 mL and 4 mL with syringe' },
  ]);
});

test('one filling of a dose is told by its tool alone, since the dose stands beside it', () => {
  const small = bench.replace('volume: 22 L', 'volume: 4 L');
  const before = side(small);
  expect(
    printed({ before, after: side(small.replace('stem: label', 'stem: 1.5 mL/L')) }).files[0]?.changes.map(
      ({ what }) => what,
    ),
  ).not.toContain('measuring of stem');
  const [file] = printed({ before, after: side(small.replace('syringe', 'pipette')) }).files;
  expect(file?.changes).toMatchObject([{ before: 'once, with syringe', after: 'once, with pipette' }]);
});

test('what does not fit the promise is seen', () => {
  expect(diffJson.safeParse({ formatVersion: 1, before: '', after: '', untouched: 0, files: [] }).success).toBe(false);
});
