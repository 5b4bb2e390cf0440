// Laws of every plan, tried on the samples: a step run again gives its own figure, and an edit leaves alone what it does not touch.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { snapshotOf } from '../../.ci/explore.ts';
import { type Figure, inputsOf, type Known, runAgain, stepsOf } from '../../server/plan/figure.ts';
import { formulas } from '../../server/plan/formulas.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { membersOf } from '../members-of.ts';

const samples = join(import.meta.dirname, '..', '..', 'samples');

describe.each(['lighthouse/kitchen.grow.yaml', 'cistern/porch.grow.yaml'])('%s', file => {
  const figures = figuresIn(snapshotOf(join(samples, file))?.plan);

  test('a step run again from its inputs gives its figure', () => {
    const differing = figures.flatMap(({ quantity, by }) => {
      if (by.kind !== 'step') return [];
      const again = runAgain(by);
      const value = typeof again === 'number' ? again : again.reason;
      return value === quantity.value ? [] : [`${by.formula.id}: ${quantity.value}, then ${value}`];
    });
    expect(figures.length).toBeGreaterThan(50);
    expect(differing).toEqual([]);
  });

  test('every step is of a formula that the reference page lists, and gives its dimension', () => {
    const steps = new Set(figures.flatMap(stepsOf));
    expect(steps.size).toBeGreaterThan(50);
    expect([...steps].filter(({ formula }) => formulas.get(formula.id) !== formula)).toEqual([]);
    for (const { quantity, by } of figures) if (by.kind === 'step') expect(quantity.dimension).toBe(by.formula.gives);
  });

  test('no figure rests on an unknown one, and none is no number', () => {
    for (const { quantity, by } of figures) {
      expect(Number.isFinite(quantity.value)).toBe(true);
      if (by.kind === 'step') expect(inputsOf(by).filter(({ kind }) => kind === 'unknown')).toEqual([]);
    }
  });
});

describe('an edit leaves alone what it does not touch', () => {
  const uri = 'file:///samples/porch.grow.yaml';
  const text = readFileSync(join(samples, 'cistern', 'porch.grow.yaml'), 'utf8').replace(
    /\nlog:/,
    '  second: { water: cistern, volume: 5 L, feed: { saltpetre: 1 g/gal } }\n\nlog:',
  );

  /** The plan before and after one replacement in the text. */
  function edited(before: string, instead: string) {
    const workspace = new Workspace();
    workspace.open(uri, text);
    const plan = workspace.snapshot(uri)?.plan;
    const from = text.indexOf(before);
    expect(from).toBeGreaterThan(0);
    workspace.change(uri, [{ from, to: from + before.length, text: instead }]);
    return { plan, after: workspace.snapshot(uri)?.plan };
  }

  test('a changed comment changes no plan', () => {
    const { plan, after } = edited('# stirred long', '# stirred for long');
    expect(plan).toBeDefined();
    expect(after).toBe(plan);
  });

  test('a changed dose plans its own batch again, and no other', () => {
    const { plan, after } = edited('saltpetre: 1.3 g/gal', 'saltpetre: 1.4 g/gal');
    expect(after?.batches.get('spring')).not.toBe(plan?.batches.get('spring'));
    expect(after?.batches.get('second')).toBe(plan?.batches.get('second'));
    expect(after?.plantings.get('kale')?.fill).toBe(plan?.plantings.get('kale')?.fill);
    expect(after?.containers.get('tin')).toBe(plan?.containers.get('tin'));
  });

  test('a changed container plans again what stands in it, and the batch that fills it', () => {
    const { plan, after } = edited('diameter: 6 in', 'diameter: 6.5 in');
    expect(after?.plantings.get('parsley')?.fill).not.toBe(plan?.plantings.get('parsley')?.fill);
    expect(after?.plantings.get('kale')?.fill).toBe(plan?.plantings.get('kale')?.fill);
    expect(after?.batches.get('spring')).not.toBe(plan?.batches.get('spring'));
    expect(after?.batches.get('second')).toBe(plan?.batches.get('second'));
  });
});

/** Every known figure inside a plan, and those that it came from. */
function figuresIn(plan: unknown): readonly Known[] {
  const seen = new Set<object>();
  const found: Known[] = [];
  const visit = (at: unknown): void => {
    if (typeof at !== 'object' || at === null || seen.has(at)) return;
    seen.add(at);
    if (isFigure(at) && at.kind === 'known') found.push(at);
    for (const value of membersOf(at)) visit(value);
  };
  visit(plan);
  return found;
}

function isFigure(at: object): at is Figure {
  return 'kind' in at && ((at.kind === 'known' && 'by' in at) || (at.kind === 'unknown' && 'wants' in at));
}
