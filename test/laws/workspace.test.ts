import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { notesOf, piecesRead } from '../../server/syntax/address.ts';
import { applyChange, openDocument } from '../../server/syntax/document.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { makeRecipe } from '../bench/make-recipe.ts';
import { change, oddText, soundText } from './odd-text.ts';

const uri = 'file:///law.grow.yaml';

function taken(workspace: Workspace): Snapshot {
  const snapshot = workspace.snapshot(uri);
  if (snapshot === undefined) throw new Error('not held');
  return snapshot;
}

/** What is said of a recipe, in a form that can be compared. */
function said({ recipe, findings }: Snapshot): unknown {
  return {
    recipe,
    findings: findings.map(({ finding, range }) => ({ code: finding.code, params: finding.params, range })),
  };
}

test('A file changed says what the file opened anew says', () => {
  const base = makeRecipe(120);
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), changes => {
      const workspace = new Workspace();
      workspace.open(uri, base);
      let text = base;
      for (const one of changes) {
        const from = Math.floor(one.from * text.length);
        const to = Math.min(text.length, from + one.length);
        workspace.change(uri, [{ from, to, text: one.text }]);
        text = text.slice(0, from) + one.text + text.slice(to);
        const anew = new Workspace();
        anew.open(uri, text);
        expect(said(taken(workspace))).toEqual(said(taken(anew)));
      }
    }),
    { numRuns: 25 },
  );
});

test('What is known of names after changes is what is known of the file opened anew', () => {
  fc.assert(
    fc.property(fc.oneof(oddText, soundText), fc.array(change, { minLength: 1, maxLength: 5 }), (start, changes) => {
      let document = openDocument(start);
      let text = start;
      for (const one of changes) {
        const from = Math.floor(one.from * text.length);
        const to = Math.min(text.length, from + one.length);
        document = applyChange(document, { from, to, text: one.text });
        text = text.slice(0, from) + one.text + text.slice(to);
        // The notes of the first version are asked for too, so that the second may go wrong by remembering them.
        const anew = openDocument(text);
        const shape = (it: typeof document) => ({
          read: piecesRead(it).map(({ entry, children }) => [entry.text, ...children.map(child => child.text)]),
          notes: notesOf(it).map(({ code, range, path }) => ({ code, range, path })),
        });
        expect(shape(document)).toEqual(shape(anew));
      }
    }),
    { numRuns: 600 },
  );
});

test('Whatever number is typed, digit by digit, something is said', () => {
  const base = makeRecipe(120);
  const numbers = [...base.matchAll(/\d+(?= (?:d|mL|L|cm|mL\/d|kg\/L|%|mS\/cm|°C)\b)|(?<=count: |pH: )\d+/gu)];
  expect(numbers.length).toBeGreaterThan(40);
  for (const { index } of numbers.filter((_, at) => at % 3 === 0)) {
    const workspace = new Workspace();
    workspace.open(uri, base);
    for (const digit of '99999999999') {
      workspace.change(uri, [{ from: index, to: index, text: digit }]);
      // Findings are worked out when they are asked for.
      expect(() => taken(workspace).findings).not.toThrow();
    }
  }
});
