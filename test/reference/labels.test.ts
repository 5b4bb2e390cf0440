// Published label arithmetic through the whole pipe: a recipe with the feed, the dose and the volume, and what a litre then holds.

import { expect, test } from 'vitest';
import { parseQuantity } from '../../schema/quantity.ts';
import { isElement } from '../../server/chemistry/tables/elements.ts';
import { numberOf } from '../../server/plan/figure.ts';
import { recipe } from '../recipe.ts';
import { expectNear, type ReferenceRow, referenceRows } from '../reference-rows.ts';

interface LabelRow extends ReferenceRow {
  readonly what: string;
  readonly feed: string;
  readonly dose: string;
  readonly volume: string;
  /** By element, in the unit of the publication. */
  readonly expect: Readonly<Record<string, string>>;
}

test.each(referenceRows<LabelRow>('labels'))('$id: $what', row => {
  const { plan } = recipe`
    recipe: 1
    feeds: { bag: ${row.feed} }
    batches: { tub: { volume: ${row.volume}, feed: { bag: ${row.dose} } } }
  `.snapshot();
  const elements = plan.batches.get('tub')?.elements;
  expect([...(elements?.keys() ?? [])]).toEqual(expect.arrayContaining(Object.keys(row.expect)));
  for (const [symbol, written] of Object.entries(row.expect)) {
    const theirs = parseQuantity(written, ['mass-per-volume']);
    if (!isElement(symbol) || theirs.kind !== 'read') throw new Error(`${row.id} expects what cannot be read`);
    expectNear(numberOf(elements?.get(symbol)) ?? Number.NaN, theirs.value.value, row.tolerance);
  }
});

test('nothing is added that the label does not state', () => {
  const { plan } = recipe`
    recipe: 1
    feeds: { bag: { analysis: { K2O: 50 % } } }
    batches: { tub: { volume: 10 L, feed: { bag: 1 g/L } } }
  `.snapshot();
  expect([...(plan.batches.get('tub')?.elements.keys() ?? [])]).toEqual(['K']);
});
