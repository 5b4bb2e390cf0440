// How many things are checked anew after an edit of one in a thousand.

import { beforeAll, beforeEach, expect, test, vi } from 'vitest';
import type { FindingCode } from '../../schema/findings.ts';
import type { Check, Look } from '../../server/checks/each.ts';
import * as names from '../../server/recipe/names.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { makeRecipe } from '../bench/make-recipe.ts';

const { looked, counted } = vi.hoisted(() => {
  const looked = { batch: 0, entry: 0, planting: 0, season: 0 };
  const counting =
    <A extends readonly unknown[], R>(at: keyof typeof looked, find: (...of: A) => R) =>
    (...of: A): R => {
      looked[at] += 1;
      return find(...of);
    };
  const countedLook = <F>(look: Look<F>): Look<F> => {
    switch (look.at) {
      case 'batch':
        return { ...look, find: counting('batch', look.find) };
      case 'entry':
        return { ...look, find: counting('entry', look.find) };
      case 'planting':
        return { ...look, find: counting('planting', look.find) };
      case 'season':
        return { ...look, find: counting('season', look.find) };
      case 'plan':
        return look;
    }
  };
  /** The same check, which counts the things that it looks at. */
  const counted = <C extends FindingCode>({ looks }: Check<C>): Check<C> => ({ looks: looks.map(countedLook) });
  return { looked, counted };
});

vi.mock(import('../../server/checks/ph-drifts.ts'), async original => ({
  phDrifts: counted((await original()).phDrifts),
}));
vi.mock(import('../../server/checks/runs-dry.ts'), async original => ({
  runsDry: counted((await original()).runsDry),
}));
vi.mock(import('../../server/checks/net-cup-dry.ts'), async original => ({
  netCupDry: counted((await original()).netCupDry),
}));
vi.mock(import('../../server/checks/analysis-over-100.ts'), async original => ({
  analysisOver100: counted((await original()).analysisOver100),
}));

const uri = 'file:///long.grow.yaml';
const text = makeRecipe(24_700);
const workspace = new Workspace();

function look(): Snapshot {
  const snapshot = workspace.snapshot(uri);
  if (snapshot === undefined) throw new Error('not held');
  expect(snapshot.findings).toBeInstanceOf(Array);
  return snapshot;
}

/** What is looked at after a text is put in behind another in one entry, and what after it is taken out again. */
function lookedAt(entry: string, behind: string, added: string) {
  const at = text.indexOf(behind, text.indexOf(`\n  ${entry}:`)) + behind.length;
  const references = vi.spyOn(names, 'referencesOf');
  Object.assign(looked, { batch: 0, entry: 0, planting: 0, season: 0 });
  workspace.change(uri, [{ from: at, to: at, text: added }]);
  look();
  const { batch, entry: entries, planting, season } = looked;
  const counts = { batch, entries, planting, season, references: references.mock.calls.length };
  references.mockRestore();
  workspace.change(uri, [{ from: at, to: at + added.length, text: '' }]);
  look();
  return counts;
}

beforeAll(() => {
  workspace.open(uri, text);
  expect(look().plan.batches.size).toBeGreaterThanOrEqual(1000);
});

beforeEach(() => {
  expect(looked.batch + looked.season).toBeGreaterThan(0);
});

test('a digit in one batch has that batch checked, and the planting that stands in it', () => {
  const { batch, entries, planting, season, references } = lookedAt('mix-500', '    volume: ', '1');
  expect({ batch, entries, planting, season }).toEqual({ batch: 1, entries: 0, planting: 0, season: 1 });
  // Once each for unknown names, for unused ones, and for what the batch mentions.
  expect(references).toBeLessThanOrEqual(3);
});

test('a digit in one feed has that feed checked, and the batches that it goes into', () => {
  const users = [...look().recipe.sections.batches.values()].filter(({ feed }) => feed?.has('feed-70')).length;
  const { batch, entries, planting } = lookedAt('feed-70', '    label: ', '1');
  expect({ batch, entries, planting }).toEqual({ batch: users, entries: 1, planting: 0 });
  expect(users).toBeLessThan(12);
});

test('a digit in one stage has the planting checked that goes through it, and the batch that serves it', () => {
  const { batch, entries, season } = lookedAt('phase-300', 'lasts: ', '1');
  expect({ batch, entries, season }).toEqual({ batch: 1, entries: 0, season: 1 });
});

test('a letter in a name that is used has one entry looked at for names', () => {
  expect(lookedAt('mix-500', 'water: spring-', '9').references).toBeLessThanOrEqual(3);
});

test('a letter in a comment has nothing checked', () => {
  const counts = lookedAt('mix-500', '# stirred by', ' x');
  expect(counts).toEqual({ batch: 0, entries: 0, planting: 0, season: 0, references: 0 });
});
