// A batch is solved again only when something it depends on changed.

import { beforeEach, expect, test, vi } from 'vitest';
import { adjustmentOf, finalOf } from '../../server/plan/adjust.ts';
import { numberOf } from '../../server/plan/figure.ts';
import { Workspace } from '../../server/workspace/workspace.ts';

const solves = vi.hoisted(() => ({ count: 0 }));

vi.mock(import('../../server/chemistry/speciate.ts'), async original => {
  const real = await original();
  return {
    ...real,
    poolOf: (...args: Parameters<typeof real.poolOf>) => {
      solves.count += 1;
      return real.poolOf(...args);
    },
  };
});

const uri = 'file:///shelf/herbs.grow.yaml';

const text = `recipe: 1
waters:
  mains: { pH: 7.6, alkalinity: 120 mg/L CaCO3, temperature: 20 °C }
feeds:
  salt: { formula: KNO3 }
adjusters:
  down: { acid: { phosphoric: 10 % }, density: 1.053 kg/L }
targets:
  leafy: { pH: 5.5..6.5, EC: 0.5..3 mS/cm }
batches:
  cress: # on the sill
    water: mains
    volume: 10 L
    target: leafy
    feed: { salt: 1 g/L }
    adjust: { with: down }
  mint:
    water: mains
    volume: 5 L
    target: leafy
    feed: { salt: 1 g/L }
    adjust: { with: down }
`;

beforeEach(() => {
  solves.count = 0;
});

/** Opens the text and asks for all of both batches; then edits, asks again, and gives the solves that this took. */
function solvesAfter(find: string, put: string): number {
  const workspace = new Workspace();
  workspace.open(uri, text);
  askAll(workspace);
  expect(solves.count).toBeGreaterThan(0);
  solves.count = 0;
  const from = text.indexOf(find);
  workspace.change(uri, [{ from, to: from + find.length, text: put }]);
  askAll(workspace);
  return solves.count;
}

function askAll(workspace: Workspace): void {
  for (const batch of workspace.snapshot(uri)?.plan.batches.values() ?? []) {
    const adjustment = adjustmentOf(batch);
    const { figures, inAir } = finalOf(batch);
    for (const figure of [adjustment?.exact, adjustment?.low, adjustment?.firstStepPH, figures.EC, inAir.pH]) {
      expect(numberOf(figure)).toBeDefined();
    }
  }
}

test('a comment solves nothing again', () => {
  expect(solvesAfter('# on the sill', '# on the window sill')).toBe(0);
});

test('nothing that no solution depends on solves anything', () => {
  expect(solvesAfter('recipe: 1\n', 'recipe: 1\ntitle: Sill\n')).toBe(0);
});

test('an edit of one batch leaves the other as it is', () => {
  const one = solvesAfter('volume: 5 L', 'volume: 6 L');
  solves.count = 0;
  const both = solvesAfter('salt: { formula: KNO3 }', 'salt: { formula: NaNO3 }');
  expect(one).toBeGreaterThan(0);
  expect(both).toBeGreaterThanOrEqual(2 * one);
});
