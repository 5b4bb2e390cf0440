// The quantity or range under the cursor, written in other units of what it measures.

import type { Dimension } from '../../../schema/dimensions.ts';
import { words } from '../../../schema/field.ts';
import { type Unit, unitsFor } from '../../../schema/find-unit.ts';
import { plainNumber } from '../../../schema/number.ts';
import { convert, parseQuantity } from '../../../schema/quantity.ts';
import { parseRange } from '../../../schema/range.ts';
import { recipe } from '../../../schema/recipe.ts';
import { schemaAt } from '../../recipe/form.ts';
import type { Cursor } from '../../syntax/cursor.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';

export function convertUnitActions({ document, recipe: { show } }: Snapshot, cursor: Cursor): readonly Action[] {
  const { path, scalar, on } = cursor;
  if (on !== 'value' || scalar === undefined) return [];
  const schema = schemaAt(recipe, path);
  const written = schema === undefined ? undefined : readWritten(scalar.tree.text, words.get(schema)?.dimensions ?? []);
  if (written === undefined) return [];
  const { dimension, unit, ends, slice } = written;
  const others = unitsFor(dimension, show).filter(other => other.symbol !== unit.symbol && !other.rare);
  return others
    .map(other => ({ other, numbers: ends.map(value => numberIn(dimension, value, other)) }))
    .filter(({ numbers }) => numbers.every(isHandy))
    .slice(0, mostOffers)
    .map(({ other, numbers }) => {
      const text = `${numbers.map(plainNumber).join('..')} ${other.symbol}`;
      const edits = textEdits(document, [{ kind: 'replace', at: { path, part: { kind: 'slice', ...slice } }, text }]);
      return { kind: 'rewrite', title: `Write \`${text}\``, edits, preferred: false };
    });
}

const mostOffers = 3;

interface Written {
  readonly dimension: Dimension;
  readonly unit: Unit;
  /** One value, or both ends of a range, in the base unit. */
  readonly ends: readonly number[];
  /** Where it stands in what the scalar says: a phrase such as `into net cup` may follow. */
  readonly slice: { readonly from: number; readonly to: number };
}

function readWritten(text: string, accepted: readonly Dimension[]): Written | undefined {
  const to = /^[^a-z]*\S+(?= into )/.exec(text)?.[0].length ?? text.length;
  const amount = text.slice(0, to);
  const slice = { from: 0, to };
  const quantity = parseQuantity(amount, accepted);
  if (quantity.kind === 'read') {
    const { dimension, value } = quantity.value;
    return { dimension, unit: quantity.unit, ends: [value], slice };
  }
  for (const dimension of accepted) {
    const range = amount.includes('..') ? parseRange(amount, dimension) : undefined;
    if (range?.kind === 'read')
      return { dimension, unit: range.unit, ends: [range.value.low, range.value.high], slice };
  }
  return undefined;
}

/** Four digits change an amount by less than any tool can measure. */
function numberIn(dimension: Dimension, value: number, unit: Unit): number {
  return Number(convert({ dimension, value }, unit).toPrecision(4));
}

/** Whether a number is one that a person would write. */
function isHandy(number: number): boolean {
  return number === 0 || (0.01 <= Math.abs(number) && Math.abs(number) < 10_000);
}
