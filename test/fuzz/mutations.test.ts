// Whatever is done to a recipe, nothing throws, every finding stands inside the text and can be said, every fix can be applied, and
// typing it gives what opening it gives. The seed is fixed, so that a failure can be met again.

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { findings, sayWhat } from '../../schema/findings.ts';
import { type TextChange, textOf } from '../../server/syntax/document.ts';
import { textEdits } from '../../server/syntax/edit.ts';
import { showIn } from '../../server/words/amount.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { sample, shelf } from './sample.ts';

const uri = 'file:///stairwell.grow.yaml';
const shelfUri = 'file:///shelf.grow.yaml';

/** Long enough for a busy machine; a mutation that hangs is met by it. */
const patience_ms = 120_000;

test('the recipe that is mutated is read whole', () => {
  const { findings: found, plan } = snapshotOf(opened(sample));
  const unread = found.filter(({ finding }) => findings[finding.code].from !== 'check');
  expect(unread.map(({ finding }) => finding.code)).toEqual([]);
  expect(plan.batches.get('first')?.volume.kind).toBe('known');
});

test(
  'mutations of a recipe never throw, and every finding and fix stands inside the text',
  () => {
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 6 }), mutations => {
        const workspace = opened(sample);
        for (const mutate of mutations) {
          workspace.change(uri, [mutate(textOf(snapshotOf(workspace).document))]);
          checkSnapshot(snapshotOf(workspace));
        }
      }),
      { seed: 20270301, numRuns: 150 },
    );
  },
  patience_ms,
);

test(
  'what is typed step by step is what is opened whole',
  () => {
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 8 }), mutations => {
        const workspace = opened(sample);
        for (const mutate of mutations) workspace.change(uri, [mutate(textOf(snapshotOf(workspace).document))]);
        const typed = snapshotOf(workspace);
        expect(said(typed)).toEqual(said(snapshotOf(opened(textOf(typed.document)))));
      }),
      { seed: 20270302, numRuns: 100 },
    );
  },
  patience_ms,
);

function opened(text: string): Workspace {
  const workspace = new Workspace();
  workspace.open(uri, text);
  workspace.arrived(shelfUri, { kind: 'text', text: shelf });
  return workspace;
}

function snapshotOf(workspace: Workspace): Snapshot {
  const snapshot = workspace.snapshot(uri);
  if (snapshot === undefined) throw new Error('the file is gone');
  return snapshot;
}

function checkSnapshot(snapshot: Snapshot): void {
  const { length } = snapshot.document;
  for (const { finding, range } of snapshot.findings) {
    const { from, to } = range;
    expect(0 <= from && from <= to && to <= length, `${finding.code} at ${from}..${to} of ${length}`).toBe(true);
    expect(sayWhat(finding, showIn(snapshot.recipe.show))).not.toMatch(/undefined|NaN|Infinity|\[object/u);
    for (const fix of finding.fixes ?? []) {
      let before = 0;
      for (const change of textEdits(snapshot.document, fix.edits)) {
        expect(before <= change.from && change.from <= change.to && change.to <= length, fix.title).toBe(true);
        before = change.to;
      }
    }
  }
}

function said(snapshot: Snapshot): readonly string[] {
  return snapshot.findings
    .map(({ finding, range }) => `${range.from}..${range.to} ${finding.code}: ${sayWhat(finding, showIn('metric'))}`)
    .sort();
}

type Mutate = (text: string) => TextChange;

const odd = [
  '', ' ', '\n', '\t', ':', '- ', ',', '{', '}', '[', ']', '"', "'", '#', '&a ', '*a', '---\n', '<<<<<<< mine\n', '\0', '\uFEFF', '🌿', '\r\n', '%', '..', '-1', '1e9', '999999999999',
  '0', 'L', ' mL', ' gal', 'label', 'as needed', '__proto__: ', 'x-', 'recipe: 2\n', 'null', '~', 'true', '|\n', '>-\n', '? ', '!!str ', '\\', '2027-02-30', '9 %', '  ', '100 L', '0 cm',
]; // biome-ignore format: a table

const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Takes something out, puts something in, says a piece twice, or swaps a piece for another. */
const mutation: fc.Arbitrary<Mutate> = fc.oneof(
  fc.tuple(share, fc.nat(12)).map(
    ([at, length]) =>
      (text: string) =>
        cut(text, at, length, ''),
  ),
  fc.tuple(share, fc.constantFrom(...odd)).map(
    ([at, put]) =>
      (text: string) =>
        cut(text, at, 0, put),
  ),
  fc.tuple(share, fc.nat(8), fc.constantFrom(...odd)).map(
    ([at, length, put]) =>
      (text: string) =>
        cut(text, at, length, put),
  ),
  fc.tuple(share, share, fc.integer({ min: 1, max: 80 })).map(
    ([at, from, length]) =>
      (text: string) =>
        cut(text, at, 0, piece(text, from, length)),
  ),
  fc.tuple(share, share, fc.integer({ min: 1, max: 20 })).map(
    ([at, from, length]) =>
      (text: string) =>
        cut(text, at, length, piece(text, from, length)),
  ),
  fc.tuple(share).map(
    ([at]) =>
      (text: string) =>
        cut(text, at, text.length, ''),
  ),
  fc.tuple(share, share).map(
    ([at, from]) =>
      (text: string) =>
        lineMoved(text, at, from),
  ),
);

function cut(text: string, at: number, length: number, put: string): TextChange {
  const from = Math.floor(at * text.length);
  return { from, to: Math.min(text.length, from + length), text: put };
}

function piece(text: string, at: number, length: number): string {
  const from = Math.floor(at * text.length);
  return text.slice(from, from + length);
}

/** A line of the text said again at the beginning of another. */
function lineMoved(text: string, at: number, from: number): TextChange {
  const lines = text.split('\n');
  const line = lines[Math.floor(from * (lines.length - 1))] ?? '';
  const start = text.lastIndexOf('\n', Math.floor(at * text.length)) + 1;
  return { from: start, to: start, text: `${line}\n` };
}
