// A batch is solved again only when something it depends on changed.

import { beforeEach, expect, test, vi } from 'vitest';
import { adjustmentOf, finalOf } from '../../server/plan/adjust.ts';
import { numberOf } from '../../server/plan/figure.ts';
import { Workspace } from '../../server/workspace/workspace.ts';

const solves = vi.hoisted(() => ({ count: 0 }));

vi.mock(import('../../server/chemistry/pool.ts'), async original => {
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

/** Solutions that are filled for the findings of a recipe with so many batches like this one, of whose solutions nothing is to be said. */
function solvesOfChecking(batches: number, of: string): number {
  const listed = Array.from({ length: batches }, (_, index) => `  tub-${index}: ${of}\n`).join('');
  const workspace = new Workspace();
  const head = text.slice(0, text.indexOf('batches:')).replace('pH: 5.5..6.5', 'pH: 5.5..8.5, pH-aim: 6');
  workspace.open(uri, `${head}batches:\n${listed}`);
  expect(workspace.snapshot(uri)?.findings.map(({ finding }) => finding.code)).toEqual(['acid-hazard']);
  return solves.count;
}

const mixed = 'water: mains, volume: 10 L, target: leafy, feed: { salt: 1 g/L }';

test.each([
  // As mixed and at 25 °C for its EC.
  ['as mixed', `{ ${mixed} }`, 2],
  // Beside these the amount, which gives the solution that it makes, and the side of the band's end on which that stands in air.
  ['adjusted', `{ ${mixed}, adjust: { with: down } }`, 4],
  // Anchored to the last measured pH only, and nothing that was predicted or is learned.
  [
    'after readings',
    `{ ${mixed}, adjust: { with: down }, readings: [{ pH: 7.2 }, { add: { down: 2 mL }, pH: 6.6 }] }`,
    5,
  ],
])('checking a batch %s solves no more than its findings rest on', (_, of, most) => {
  const one = solvesOfChecking(1, of);
  solves.count = 0;
  expect(solvesOfChecking(2, of) - one).toBeLessThanOrEqual(most);
});

test('batches of one temperature share the solution of their water', () => {
  const cold = (temperature: number) => `{ ${mixed.replace('mains', 'spring')}, temperature: ${temperature} °C }`;
  const waters = '  spring: { pH: 7.2, alkalinity: 90 mg/L CaCO3 }\n';
  const solved = (first: number, second: number): number => {
    solves.count = 0;
    const workspace = new Workspace();
    const head = text.slice(0, text.indexOf('batches:')).replace('feeds:', `${waters}feeds:`);
    workspace.open(uri, `${head}batches:\n  one: ${cold(first)}\n  two: ${cold(second)}\n`);
    expect(workspace.snapshot(uri)?.findings).toBeDefined();
    return solves.count;
  };
  expect(solved(17, 17)).toBe(solved(17, 18) - 1);
});
