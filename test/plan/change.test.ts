import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { snapshotOf } from '../../.ci/explore.ts';
import { type Changes, changesBetween } from '../../server/plan/change.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { rangeOf } from '../../server/syntax/place.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { recipe } from '../recipe.ts';

const bench = `recipe: 1
start: 2027-02-01
waters:
  brook: { pH: 7.4, alkalinity: 70 mg/L CaCO3 }
feeds:
  stem: { label: 2 mL/L, analysis: { N: 5 %, K2O: 6 % }, density: 1.15 kg/L, package: 250 mL, price: 9 EUR }
adjusters:
  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
tools:
  syringe: { smallest: 0.5 mL, largest: 10 mL }
containers:
  crate:
    inside: { box: { length: 30 cm, width: 20 cm, height: 20 cm } }
    net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
targets:
  leafy: { pH: 5.5..6.5, pH-aim: 5.8 }
stages:
  leaf: { lasts: 30 d, target: leafy, batch: first, uses: 50 mL/d }
plantings:
  cress: { container: crate, count: 2, fill: to net cup, stages: [leaf] }
batches:
  first: { water: brook, volume: 22 L, feed: { stem: label }, adjust: { with: down } }
log:
  - { on: 2027-02-08, planting: cress, level: 14.8 cm }
`;

/** The bench with some of its text replaced. */
function snapshot(...replaced: readonly (readonly [string, string])[]): Snapshot {
  const text = replaced.reduce((before, [from, to]) => {
    if (!before.includes(from)) throw new Error(`the bench has no ${from}`);
    return before.replaceAll(from, to);
  }, bench);
  return recipe`${text}`.snapshot();
}

const plain = snapshot();

/** Each change as a line: what it is about, and the places because of which it changed. */
function changed(...replaced: readonly (readonly [string, string])[]): string {
  return linesOf(changesBetween(plain.plan, snapshot(...replaced).plan));
}

function linesOf({ changes }: Changes): string {
  return changes
    .map(({ fact, before, after, because }) => {
      const kind = before === undefined ? '+ ' : after === undefined ? '- ' : '';
      const places = because.map(({ path, side }) => `${side === 'before' ? 'once ' : ''}${path.join('/')}`);
      return `${kind}${fact.group} ${fact.name}: ${fact.what} <- ${places.join(', ')}`;
    })
    .join('\n');
}

describe('what changed, and because of which written place', () => {
  test('a volume changes what is poured, not what a litre holds', () => {
    expect(changed(['volume: 22 L', 'volume: 20 L'])).toMatchInlineSnapshot(`
      "batch first: volume <- batches/first/volume
      batch first: left after its fills <- batches/first/volume
      batch first: dose of stem <- batches/first/volume
      batch first: measuring of stem <- batches/first/volume
      batch first: down to adjust <- batches/first/volume
      batch first: down, first step <- batches/first/volume
      supply stem: used <- batches/first/volume
      supply down: used <- batches/first/volume"
    `);
  });

  test('a water report changes the acid to add', () => {
    expect(changed(['alkalinity: 70 mg', 'alkalinity: 90 mg'])).toMatchInlineSnapshot(`
      "batch first: pH as mixed <- waters/brook/alkalinity
      batch first: pH after standing in air <- waters/brook/alkalinity
      batch first: EC as mixed <- waters/brook/alkalinity
      batch first: down to adjust <- waters/brook/alkalinity
      batch first: down, first step <- waters/brook/alkalinity
      batch first: pH adjusted, after standing in air <- waters/brook/alkalinity
      batch first: EC adjusted <- waters/brook/alkalinity
      planting cress: EC on the last day <- waters/brook/alkalinity
      supply down: used <- waters/brook/alkalinity"
    `);
  });

  test('a coarser tool changes what is measured', () => {
    expect(changed(['smallest: 0.5 mL, largest: 10 mL', 'smallest: 3 mL, largest: 30 mL'])).toMatchInlineSnapshot(`
      "batch first: dose of stem <- tools/syringe/smallest, tools/syringe/largest
      batch first: measuring of stem <- tools/syringe/smallest, tools/syringe/largest
      batch first: N <- tools/syringe/smallest, tools/syringe/largest
      batch first: K <- tools/syringe/smallest, tools/syringe/largest
      batch first: pH as mixed <- tools/syringe/smallest, tools/syringe/largest
      batch first: pH after standing in air <- tools/syringe/smallest, tools/syringe/largest
      batch first: EC as mixed <- tools/syringe/smallest, tools/syringe/largest
      batch first: down to adjust <- tools/syringe/smallest, tools/syringe/largest
      batch first: down, first step <- tools/syringe/smallest, tools/syringe/largest
      batch first: pH adjusted, after standing in air <- tools/syringe/smallest, tools/syringe/largest
      batch first: EC adjusted <- tools/syringe/smallest, tools/syringe/largest
      planting cress: EC on the last day <- tools/syringe/smallest, tools/syringe/largest
      supply stem: used <- tools/syringe/smallest, tools/syringe/largest
      supply down: used <- tools/syringe/smallest, tools/syringe/largest"
    `);
  });

  test('a longer stage moves the harvest, because of the stage alone', () => {
    expect(changed(['lasts: 30 d', 'lasts: 35 d'])).toMatchInlineSnapshot(`
      "planting cress: harvest <- stages/leaf/lasts
      planting cress: level on the last day <- stages/leaf/lasts
      planting cress: EC on the last day <- stages/leaf/lasts
      task cress: harvest cress <- stages/leaf/lasts"
    `);
  });

  test('a wider crate changes its fills and what is left, because of the one measure', () => {
    expect(changed(['width: 20 cm', 'width: 21 cm'])).toMatchInlineSnapshot(`
      "batch first: left after its fills <- containers/crate/inside/box/width
      planting cress: fill of a container <- containers/crate/inside/box/width
      planting cress: all fills <- containers/crate/inside/box/width
      container crate: brimful <- containers/crate/inside/box/width
      container crate: volume to the net cup <- containers/crate/inside/box/width"
    `);
  });

  test('a new log entry is told as the entry, wherever it stands', () => {
    const entry = '  - { on: 2027-02-08';
    const before = `  - { on: 2027-02-05, planting: cress, top-up: { batch: first, volume: 2 L } }\n${entry}`;
    expect(changed([entry, before])).toMatchInlineSnapshot(`
      "planting cress: level on the last day <- log/0
      planting cress: EC on the last day <- log/0"
    `);
  });

  test('of a log entry that is written anew only what differs is told', () => {
    expect(changed(['level: 14.8 cm', 'level: 14.2 cm'])).toMatchInlineSnapshot(`
      "planting cress: level on the last day <- log/0/level
      planting cress: EC on the last day <- log/0/level"
    `);
    expect(changed(['level: 14.8 cm', 'pH: 6.1'])).toContain('<- log/0');
    expect(changed(['on: 2027-02-08', 'on: 2027-02-09'])).toContain('<- log/0, once log/0');
  });

  test('another adjuster', () => {
    const two = ['adjusters:', 'adjusters:\n  drops: { acid: { citric: 5 % }, density: 1.02 kg/L }'] as const;
    const { changes } = changesBetween(snapshot(two).plan, snapshot(two, ['with: down', 'with: drops']).plan);
    const of = (what: string) => changes.find(({ fact }) => fact.what === what);
    expect(of('adjusted with')).toMatchObject({
      before: { text: 'down' },
      after: { text: 'drops' },
      because: [{ path: ['batches', 'first', 'adjust', 'with'] }],
    });
    for (const what of ['down to adjust', 'down, first step'])
      expect(of(what)).toMatchObject({ before: {}, after: undefined });
    for (const what of ['drops to adjust', 'drops, first step'])
      expect(of(what)).toMatchObject({ before: undefined, after: {} });
  });

  test('what is made as needed changes because of what needs it, down to what a litre holds', () => {
    const needed = ['volume: 22 L', 'volume: as needed'] as const;
    const { changes } = changesBetween(snapshot(needed).plan, snapshot(needed, ['count: 2', 'count: 3']).plan);
    expect(changes.map(({ fact }) => fact.what)).toContain('N');
    for (const { because, fact } of changes) expect(because, fact.what).not.toEqual([]);
  });

  test('a feed that is dropped', () => {
    expect(changed(['feed: { stem: label }, ', ''])).toMatchInlineSnapshot(`
      "batch first: pH as mixed <- once batches/first/feed
      batch first: pH after standing in air <- once batches/first/feed
      batch first: EC as mixed <- once batches/first/feed
      batch first: down to adjust <- once batches/first/feed
      batch first: pH adjusted, after standing in air <- once batches/first/feed
      batch first: EC adjusted <- once batches/first/feed
      - batch first: dose of stem <- once batches/first/feed/stem
      - batch first: measuring of stem <- once batches/first/feed/stem
      - batch first: N <- once batches/first/feed
      - batch first: K <- once batches/first/feed
      - batch first: N as nitrate <- once batches/first/feed
      - batch first: N as ammonium <- once batches/first/feed
      - batch first: N as urea <- once batches/first/feed
      planting cress: EC on the last day <- once batches/first/feed
      supply down: used <- once batches/first/feed
      - supply stem: used <- once batches/first/feed
      - supply stem: packages <- once batches/first/feed
      - supply stem: cost <- once batches/first/feed"
    `);
  });

  test('what is written as a word is told where it changes the work', () => {
    const words: readonly (readonly [string, string])[] = [
      ['cress: { container', 'cress: { crop: cress, container'],
      ['inside: { box', 'opaque: false\n    inside: { box'],
      ['volume: 22 L', 'volume: 22 L, mix-in: tub'],
      ['  syringe:', '  tub: { holds: 30 L }\n  pipette: { smallest: 0.5 mL, largest: 10 mL }\n  syringe:'],
    ];
    const more = snapshot(...words).plan;
    const other = snapshot(
      ...words,
      ['crop: cress', 'crop: mint'],
      ['opaque: false', 'opaque: true'],
      ['mix-in: tub', 'mix-in: vat'],
      ['tub: { holds', 'vat: { holds'],
      ['pipette', 'dropper'],
      ['target: leafy', 'target: herbs'],
      ['leafy:', 'herbs:'],
      ['brook', 'tap'],
      ['down', 'acid'],
    ).plan;
    const { changes } = changesBetween(more, other);
    const told = changes.flatMap(({ fact, before, after }) =>
      before?.kind === 'text' && after?.kind === 'text'
        ? [`${fact.group} ${fact.name}: ${fact.what}: ${before.text} -> ${after.text}`]
        : [],
    );
    expect(told.join('\n')).toMatchInlineSnapshot(`
      "batch first: water: brook -> tap
      batch first: mixed in: tub -> vat
      planting cress: crop: cress -> mint
      planting cress: leaf aims at: leafy -> herbs
      container crate: lets light in: yes -> no"
    `);
    expect(changes.find(({ fact }) => fact.what === 'measuring of stem')).toMatchObject({
      before: { measured: { with: [{ tool: 'pipette' }, { tool: 'pipette' }] } },
      after: { measured: { with: [{ tool: 'dropper' }, { tool: 'dropper' }] } },
    });
  });

  test('feeds in another order are poured in another order', () => {
    const two = (feed: string) =>
      snapshot(['feeds:', 'feeds:\n  leaf: { label: 1 mL/L }'], ['feed: { stem: label }', `feed: { ${feed} }`]).plan;
    const { changes } = changesBetween(two('stem: label, leaf: label'), two('leaf: label, stem: label'));
    expect(changes).toMatchObject([
      { fact: { what: 'order of feeds' }, before: { text: 'stem, leaf' }, after: { text: 'leaf, stem' } },
    ]);
  });

  test('a stage without a day is fed by another batch all the same', () => {
    const undated = (batch: string) => snapshot(['start: 2027-02-01\n', ''], ['batch: first', `batch: ${batch}`]).plan;
    const { changes } = changesBetween(undated('first'), undated('second'));
    expect(changes.find(({ fact }) => fact.what === 'leaf is fed')).toMatchObject({
      before: { text: 'first' },
      after: { text: 'second' },
      because: [{ path: ['stages', 'leaf', 'batch'] }],
    });
  });

  test('a batch that serves no fill any more has nothing left of them, because of the stage', () => {
    const { changes } = changesBetween(plain.plan, snapshot(['batch: first', 'batch: second']).plan);
    expect(changes.find(({ fact }) => fact.what === 'left after its fills')).toMatchObject({
      after: undefined,
      because: [{ path: ['stages', 'leaf', 'batch'] }],
    });
  });

  test('a price', () => {
    expect(changed(['9 EUR', '10 EUR'])).toMatchInlineSnapshot(`"supply stem: cost <- feeds/stem/price"`);
  });
});

describe('names', () => {
  test('an entry with another name and nothing else is renamed', () => {
    const { changes, renames } = changesBetween(plain.plan, snapshot(['first', 'opening']).plan);
    expect({ changes, renames }).toEqual({
      changes: [],
      renames: [{ group: 'batch', before: 'first', after: 'opening' }],
    });
  });

  test('an entry with another name and another volume is another entry', () => {
    const other = snapshot(['first', 'opening'], ['volume: 22 L', 'volume: 21 L']);
    const { changes, renames } = changesBetween(plain.plan, other.plan);
    expect(renames).toEqual([]);
    expect(changes.filter(({ fact }) => fact.name === 'first').every(({ after }) => after === undefined)).toBe(true);
    expect(changes.filter(({ fact }) => fact.name === 'opening').every(({ before }) => before === undefined)).toBe(
      true,
    );
  });
});

describe('laws', () => {
  const edits: readonly (readonly [string, string])[] = [
    ['volume: 22 L', 'volume: as needed'],
    ['alkalinity: 70 mg', 'alkalinity: 5 mg'],
    ['stem: label', 'stem: 50 % of label'],
    ['density: 1.15 kg/L, ', ''],
    ['count: 2', 'count: 3'],
    ['level: 14.8 cm', 'level: 14 cm'],
    ['phosphoric: 12 %', 'phosphoric: 10 %'],
    ['start: 2027-02-01', 'start: 2027-02-03'],
    ['depth: 5 cm', 'depth: 4 cm'],
  ];

  test.each(['lighthouse/kitchen.grow.yaml', 'cistern/porch.grow.yaml'])('%s has no changes against itself', file => {
    const sample = () => snapshotOf(join(import.meta.dirname, '../../samples', file))?.plan as Plan;
    const { changes, renames, same } = changesBetween(sample(), sample());
    expect({ changes, renames }).toEqual({ changes: [], renames: [] });
    expect(same.length).toBeGreaterThan(40);
  });

  test.each(edits)('%s, now %s: every place is written on its side, and there is one', (...edit) => {
    const other = snapshot(edit);
    const { changes } = changesBetween(plain.plan, other.plan);
    expect(changes.length).toBeGreaterThan(0);
    for (const { fact, because } of changes) {
      expect(because, `${fact.name} ${fact.what}`).not.toEqual([]);
      for (const { path, side } of because) {
        const { document } = side === 'before' ? plain : other;
        expect(rangeOf(document, { path, part: { kind: 'value' } }), path.join('/')).toBeDefined();
      }
    }
  });

  test.each(edits)('%s, now %s: the way back is the same way', (...edit) => {
    const other = snapshot(edit);
    const there = changesBetween(plain.plan, other.plan).changes;
    const back = changesBetween(other.plan, plain.plan).changes;
    const key = ({ fact }: (typeof there)[number]) => `${fact.group} ${fact.name} ${fact.what}`;
    expect(back.map(key).sort()).toEqual(there.map(key).sort());
    for (const change of there) {
      const same = back.find(one => key(one) === key(change));
      expect(same).toMatchObject({ before: change.after, after: change.before });
      const paths = (one: typeof same) => one?.because.map(({ path }) => path.join('/')).sort();
      expect(paths(same)).toEqual(paths(change));
    }
  });
});

test('a value that moves to a used file is the same value', () => {
  const shelf = 'recipe: 1\nwaters:\n  brook: { pH: 7.4, alkalinity: 70 mg/L CaCO3 }\n';
  const workspace = new Workspace();
  const text = bench.replace(/waters:\n.*\n/u, 'use: [./shelf.grow.yaml]\n');
  workspace.open('file:///recipe.grow.yaml', text);
  workspace.open('file:///shelf.grow.yaml', shelf);
  const moved = workspace.snapshot('file:///recipe.grow.yaml');
  expect(changesBetween(plain.plan, moved?.plan as Plan).changes).toEqual([]);
});
