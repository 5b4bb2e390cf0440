import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { planJson } from '../../server/reports/plan-json.ts';
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

/** What a grower does to entries, names and numbers, at places drawn from 0 to 1. */
const rearranging = fc.record({
  what: fc.constantFrom('double', 'remove', 'rename', 'digit'),
  at: fc.double({ min: 0, max: 0.999, noNaN: true }),
  to: fc.double({ min: 0, max: 0.999, noNaN: true }),
});

/** Every finding with all that belongs to it, and every figure of the plan. */
function allSaid(snapshot: Snapshot): unknown {
  const findings = snapshot.findings.map(({ finding, range }) => ({ ...finding, range }));
  return { findings, plan: planJson(snapshot, file => file) };
}

function editOf(
  text: string,
  { what, at, to }: { readonly what: string; readonly at: number; readonly to: number },
): { readonly from: number; readonly to: number; readonly text: string } {
  const pick = (pattern: RegExp, share: number): RegExpExecArray | undefined => {
    const all = [...text.matchAll(pattern)];
    return all[Math.floor(share * all.length)];
  };
  const name = /\b(?:spring|feed|band|mix|phase|crock|row)-\d+\b/gu;
  const entry = /^ {2}[^ \n].*\n(?: {3}.*\n)*/gmu;
  const number = pick(/\d(?= (?:mL|L|cm|mg|%|d|°C)\b)/gu, at)?.index ?? 0;
  if (what === 'digit') return { from: number, to: number, text: '1' };
  const [some, other] = what === 'rename' ? [pick(name, at), pick(name, to)] : [pick(entry, at), pick(entry, to)];
  if (some === undefined || other === undefined) return { from: 0, to: 0, text: '' };
  const end = some.index + some[0].length;
  if (what === 'double') return { from: other.index, to: other.index, text: some[0] };
  return { from: some.index, to: end, text: what === 'rename' ? other[0] : '' };
}

test('Entries doubled, taken out, renamed and changed are spoken of as if the file were opened anew', () => {
  // Some plantings are topped up, so that a forecast rests on other batches and waters than those of its stages.
  const topUps = ['batch: mix-3', 'water: spring-2', 'batch: mix-8'].map(
    (from, at) => `  - { on: 2027-03-1${at}, planting: row-${at + 1}, top-up: { ${from}, volume: 300 mL } }\n`,
  );
  const base = makeRecipe(240) + topUps.join('');
  fc.assert(
    fc.property(fc.array(rearranging, { minLength: 2, maxLength: 6 }), steps => {
      const workspace = new Workspace();
      workspace.open(uri, base);
      let text = base;
      for (const step of steps) {
        const edit = editOf(text, step);
        workspace.change(uri, [edit]);
        text = text.slice(0, edit.from) + edit.text + text.slice(edit.to);
        const anew = new Workspace();
        anew.open(uri, text);
        expect(allSaid(taken(workspace))).toEqual(allSaid(taken(anew)));
      }
    }),
    { numRuns: 25 },
  );
});

test('Whatever one number or name is made into, all that rests on it follows', () => {
  const base = makeRecipe(240);
  const workspace = new Workspace();
  workspace.open(uri, base);
  taken(workspace);
  // One entry of each kind: the first of two blocks.
  const entries = base.matchAll(/^ {2}(?:spring|feed|crock|band|phase|row|mix)-1:.*\n(?: {3}.*\n)*/gmu);
  const edits = [...entries].flatMap(({ index, 0: entry }) => {
    const numbers = [...entry.matchAll(/\d(?= |,|$|\.\.)/gmu)].map(found => index + found.index);
    const names = [...entry.matchAll(/(?<=[a-z]-)1(?!:\n|: \{ (?:lasts|pH))/gu)].map(found => index + found.index);
    return [
      ...numbers.map(at => ({ from: at, to: at, text: '1' })),
      ...names.map(at => ({ from: at, to: at + 1, text: '2' })),
    ];
  });
  expect(edits.length).toBeGreaterThan(40);
  for (const edit of edits) {
    workspace.change(uri, [edit]);
    const anew = new Workspace();
    anew.open(uri, base.slice(0, edit.from) + edit.text + base.slice(edit.to));
    expect(allSaid(taken(workspace))).toEqual(allSaid(taken(anew)));
    workspace.change(uri, [{ ...edit, to: edit.from + edit.text.length, text: base.slice(edit.from, edit.to) }]);
  }
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
