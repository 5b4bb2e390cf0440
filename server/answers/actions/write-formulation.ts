// Writes the amounts that `solve: to target` found into the batch's `feed`, as rates: only when it is asked to.

import type { Edit } from '../../../schema/edit.ts';
import { plainNumber } from '../../../schema/number.ts';
import { valueAt } from '../../../schema/place.ts';
import type { BatchPlan } from '../../plan/batch.ts';
import { type FormulatedFeed, formulationOf } from '../../plan/formulate.ts';
import type { Cursor } from '../../syntax/cursor.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Action } from './actions.ts';

/** Anywhere in a batch that asks for a formulation. */
export function writeFormulationActions({ plan, document }: Snapshot, { path }: Cursor): readonly Action[] {
  const [section, name] = path;
  const batch = section === 'batches' ? plan.batches.get(String(name)) : undefined;
  const formulation = batch === undefined ? undefined : formulationOf(plan.scope, batch);
  if (batch === undefined || formulation?.kind !== 'formulation') return [];
  const edits = textEdits(document, editsFor(batch, formulation.amounts));
  if (edits.length === 0) return [];
  const title = `Write the amounts that meet \`${batch.needs.target?.name ?? 'the target'}\` best`;
  return [{ kind: 'rewrite', title, edits, preferred: false }];
}

function editsFor(batch: BatchPlan, amounts: readonly FormulatedFeed[]): readonly Edit[] {
  const { path, value } = batch.needs.batch;
  const into = [...path, 'feed'];
  const wanted = amounts.filter(({ perLitre }) => perLitre >= least);
  if (value.feed === undefined) {
    const doses = wanted.map(one => `${one.feed.name}: ${rateText(one)}`);
    return doses.length === 0 ? [] : [{ kind: 'insert', into: path, key: 'feed', text: `{ ${doses.join(', ')} }` }];
  }
  const { feed } = value;
  const set = wanted.map((one): Edit => {
    const { name } = one.feed;
    const text = rateText(one);
    return feed.has(name)
      ? { kind: 'replace', at: valueAt([...into, name]), text }
      : { kind: 'insert', into, key: name, text };
  });
  const kept = new Set(wanted.map(({ feed: { name } }) => name));
  // A feed that the batch has and that may not be used, or is not needed, would spoil the sum.
  const removed = [...feed.keys()]
    .filter(name => !kept.has(name))
    .map((name): Edit => ({ kind: 'remove', path: [...into, name] }));
  return [...set, ...removed];
}

/** In mL or g per litre: less than any bench measures. */
const least = 1e-5;

/** In three digits, as a bench measures. */
function rateText({ unit, perLitre }: FormulatedFeed): string {
  return `${plainNumber(Number(perLitre.toPrecision(3)))} ${unit}/L`;
}
