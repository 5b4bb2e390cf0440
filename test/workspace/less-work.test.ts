import { expect, test, vi } from 'vitest';
import * as figures from '../../server/plan/figure.ts';
import * as readings from '../../server/recipe/read.ts';
import { planJson } from '../../server/reports/plan-json.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { makeRecipe } from '../bench/make-recipe.ts';

// What is counted here is what is worked out after one keystroke: it must not grow with the file.

const uri = 'file:///long.grow.yaml';

interface Held {
  readonly look: () => Snapshot;
  /** Puts a text in behind another, the first of its kind in the file. */
  readonly put: (behind: string, text: string) => void;
}

function held(lines: number): Held {
  const text = makeRecipe(lines);
  const workspace = new Workspace();
  workspace.open(uri, text);
  const look = (): Snapshot => {
    const snapshot = workspace.snapshot(uri);
    if (snapshot === undefined) throw new Error('not held');
    // Plan and findings are worked out when somebody asks: without asking, nothing would be counted.
    expect(snapshot.findings).toBeInstanceOf(Array);
    return snapshot;
  };
  look();
  return {
    look,
    put: (behind, added) => {
      const at = text.indexOf(behind) + behind.length;
      workspace.change(uri, [{ from: at, to: at, text: added }]);
    },
  };
}

function changed<K, V>(before: ReadonlyMap<K, V>, after: ReadonlyMap<K, V>): readonly K[] {
  return [...after].flatMap(([key, value]) => (before.get(key) === value ? [] : [key]));
}

test('a letter in a comment changes nothing that is computed', () => {
  const { look, put } = held(1000);
  const before = look();
  put('# stirred by', ' x');
  const after = look();
  expect(after).not.toBe(before);
  expect(after.recipe).toBe(before.recipe);
  expect(after.plan).toBe(before.plan);
});

test('a digit in a batch has that batch worked out, and no other', () => {
  const { look, put } = held(1000);
  const before = look();
  put('    volume: ', '1');
  const { plan } = look();
  expect(changed(before.plan.batches, plan.batches)).toEqual(['mix-1']);
  expect(plan.plantings).toBe(before.plan.plantings);
  expect(plan.containers).toBe(before.plan.containers);
  expect(plan.feeds).toBe(before.plan.feeds);
});

test('a digit in a feed has the batches worked out that it goes into', () => {
  const { look, put } = held(1000);
  const before = look();
  put('    label: ', '1');
  const { plan, recipe } = look();
  const users = [...recipe.sections.batches].flatMap(([name, { feed }]) => (feed?.has('feed-1') ? [name] : []));
  expect(changed(before.plan.batches, plan.batches)).toEqual(users);
});

test('a batch aims at what the stage aims at that it feeds, after an edit too', () => {
  const { look, put } = held(1000);
  const aim = () => look().plan.batches.get('mix-1')?.needs.target?.name;
  expect(aim()).toMatch(/^band-/);
  put('target: band-', '99');
  expect(aim()).toBeUndefined();
});

test.each([
  ['a water', 'water: rain', '  rain: { pH: 6.5, EC: 0.'],
  ['a batch', 'batch: spare', '  hard: { pH: 7.5, alkalinity: 20 mg/L CaCO3, ions: { Ca: '],
])('%s that only a top-up names changes what is foreseen', (_, from, behind) => {
  const text = `${makeRecipe(120)
    .replace(
      'waters:\n',
      'waters:\n  rain: { pH: 6.5, EC: 0.3 mS/cm }\n  hard: { pH: 7.5, alkalinity: 20 mg/L CaCO3, ions: { Ca: 9 mg/L } }\n',
    )
    .replace(
      'batches:\n',
      'batches:\n  spare: { water: hard, volume: 10 L }\n',
    )}  - { on: 2027-03-05, planting: row-1, top-up: { ${from}, volume: 500 mL } }\n`;
  const held = new Workspace();
  held.open(uri, text);
  const before = foreseen(held);
  const at = text.indexOf(behind) + behind.length;
  held.change(uri, [{ from: at, to: at, text: '9' }]);
  const anew = new Workspace();
  anew.open(uri, text.replace(behind, `${behind}9`));
  expect(foreseen(held)).toEqual(foreseen(anew));
  expect(foreseen(held)).not.toEqual(before);
});

function foreseen(workspace: Workspace): unknown {
  const snapshot = workspace.snapshot(uri);
  return snapshot && planJson(snapshot, file => file).plantings;
}

test('only the entry that is typed in is read again, however long the file is', () => {
  const reads = vi.spyOn(readings, 'read');
  const counts = [1000, 5000].map(lines => {
    const { look, put } = held(lines);
    reads.mockClear();
    put('    volume: ', '1');
    look();
    return reads.mock.calls.length;
  });
  expect(counts[0]).toBeGreaterThan(0);
  expect(counts[1]).toBe(counts[0]);
  reads.mockRestore();
});

test('what is computed after a keystroke does not grow with the file', () => {
  const steps = vi.spyOn(figures, 'given');
  const counts = [1000, 5000].map(lines => {
    const { look, put } = held(lines);
    steps.mockClear();
    put('    volume: ', '1');
    look();
    return steps.mock.calls.length;
  });
  expect(counts[0]).toBeGreaterThan(0);
  expect(counts[1]).toBe(counts[0]);
  steps.mockRestore();
});
