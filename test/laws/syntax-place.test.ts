import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { Edit } from '../../schema/edit.ts';
import type { Path } from '../../schema/place.ts';
import { absolutePath, find, notesOf, piecesRead } from '../../server/syntax/address.ts';
import { placeAt } from '../../server/syntax/cursor.ts';
import { type Document, openDocument } from '../../server/syntax/document.ts';
import { textEdits } from '../../server/syntax/edit.ts';
import { nearestRange, rangeOf } from '../../server/syntax/place.ts';
import { unitOffsets } from '../../server/syntax/slice.ts';
import type { Tree } from '../../server/syntax/tree.ts';
import { oddText, soundText } from './odd-text.ts';

// Laws run hundreds of texts each: on a busy machine that takes longer than one example may.
vi.setConfig({ testTimeout: 60_000 });

const anyText = fc.oneof(oddText, soundText);

test('Whatever the text and wherever the cursor, what stands there lies inside the text', () => {
  fc.assert(
    fc.property(anyText, text => {
      const document = openDocument(text);
      for (let at = 0; at <= text.length; at++) {
        const cursor = placeAt(document, at);
        if (cursor === undefined) continue;
        const { from, to } = cursor.replaces;
        const why = JSON.stringify({ text, at, from, to });
        expect(0 <= from && from <= at && at <= to && to <= text.length, why).toBe(true);
        expect(text.slice(from, at), why).toBe(cursor.typed);
      }
    }),
    { numRuns: 400 },
  );
});

test('The path of each value of a file leads back to it', () => {
  fc.assert(
    fc.property(soundText, text => {
      const document = openDocument(text);
      const read = new Set(piecesRead(document).flatMap(({ entry, children }) => [entry, ...children]));
      for (const [index, entry] of document.entries.entries()) {
        if (!read.has(entry)) continue;
        walk(entry.tree, [], (tree, path) => {
          if (path.length === 0) return;
          const absolute = absolutePath(document, index, path);
          const found = find(document, absolute);
          if (entry.opens === undefined) expect(found?.tree, JSON.stringify({ text, absolute })).toBe(tree);
          const range = rangeOf(document, { path: absolute, part: { kind: 'value' } });
          if (tree.kind === 'scalar') expect(range?.from).toBe((document.starts[index] ?? 0) + tree.range.from);
        });
      }
    }),
    { numRuns: 400 },
  );
});

test('Ranges of places lie inside the text, of slices inside their value, whether anything stands there or not', () => {
  fc.assert(
    fc.property(anyText, fc.nat(30), fc.nat(30), (text, from, length) => {
      const document = openDocument(text);
      const check = (path: Path) => {
        const value = rangeOf(document, { path, part: { kind: 'value' } });
        const slice = rangeOf(document, { path, part: { kind: 'slice', from, to: from + length } });
        const near = nearestRange(document, { path: [...path, 'nothing'], part: { kind: 'key' } });
        expect(near.from <= near.to && near.to <= text.length).toBe(true);
        if (value === undefined || slice === undefined) return;
        expect(
          value.from <= slice.from && slice.from <= slice.to && slice.to <= value.to,
          JSON.stringify({ text, path, value, slice }),
        ).toBe(true);
        expect(value.to <= text.length).toBe(true);
      };
      for (const path of paths(document)) check(path);
      for (const note of notesOf(document)) expect(note.range.to <= text.length).toBe(true);
    }),
    { numRuns: 400 },
  );
});

test('The units of plain and quoted scalars are all found in the text', () => {
  let undone = 0;
  const quoted = fc.string({
    unit: fc.constantFrom('a', "'", '"', '\\', ' ', '\n', 'é', '🌱', '\t', '\u2028', '#', ':'),
    maxLength: 12,
  });
  fc.assert(
    fc.property(
      fc.oneof(
        soundText,
        quoted.map(said => `k: ${JSON.stringify(said)}\n`),
        quoted.map(said => `k: '${said.replaceAll(/\s+/g, ' ').replaceAll("'", "''")}'\n`),
      ),
      text => {
        for (const entry of openDocument(text).entries) {
          walk(entry.tree, [], tree => {
            if (tree.kind !== 'scalar' || tree.style === 'block') return;
            const offsets = unitOffsets(entry.text, tree);
            expect(offsets?.length, JSON.stringify({ text, tree })).toBe(tree.text.length + 1);
            undone++;
          });
        }
      },
    ),
    { numRuns: 800 },
  );
  expect(undone).toBeGreaterThan(800);
});

test('No edit at any path of any text fails, and its changes lie inside the text', () => {
  const places = fc.array(fc.oneof(fc.constantFrom('s', 't', 'a', 'b', 'k', 'l', 'vol', '__proto__'), fc.nat(2)), {
    maxLength: 3,
  });
  fc.assert(
    fc.property(anyText, places, (text, path) => {
      const document = openDocument(text);
      const edits: Edit[] = [
        { kind: 'replace', at: { path, part: { kind: 'value' } }, text: '1' },
        { kind: 'rename', path, key: 'x' },
        { kind: 'insert', into: path, key: 'x', text: '1' },
        { kind: 'append', to: path, text: '1' },
        { kind: 'remove', path },
      ];
      for (const change of edits.flatMap(edit => textEdits(document, [edit]))) {
        expect(
          0 <= change.from && change.from <= change.to && change.to <= text.length,
          JSON.stringify({ text, change }),
        ).toBe(true);
      }
    }),
    { numRuns: 1000 },
  );
});

function walk(tree: Tree, path: Path, visit: (tree: Tree, path: Path) => void): void {
  visit(tree, path);
  if (tree.kind === 'list') for (const [at, item] of tree.items.entries()) walk(item, [...path, at], visit);
  if (tree.kind !== 'map') return;
  const seen = new Set<string>();
  for (const { key, value } of tree.pairs) {
    if (!seen.has(key.text)) walk(value, [...path, key.text], visit);
    seen.add(key.text);
  }
}

function paths(document: Document): readonly Path[] {
  const found: Path[] = [];
  for (const [index, entry] of document.entries.entries())
    walk(entry.tree, [], (_, path) => found.push(absolutePath(document, index, path)));
  return found;
}
