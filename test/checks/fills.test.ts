import { expect, test } from 'vitest';
import { textOf } from '../../server/syntax/document.ts';
import { checkFindings } from '../check-findings.ts';
import { drawApplied } from '../draw.ts';
import { recipe } from '../recipe.ts';

// A box of 30 cm by 40 cm takes 1.2 L a centimetre.

test('a batch that just covers its fills is no finding', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    containers: { trough: { inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } } } }
    stages: { rooting: { lasts: 18 d, batch: opening } }
    plantings: { mint: { container: trough, count: 2, fill: 10 cm, stages: [rooting] } }
    batches: { opening: { water: mains, volume: 24 L } }
  `);
});

test('a batch covers the changes of other plantings as well as the first fills', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    containers:
      trough:
        inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } }
        net-cup: { depth: 5 cm, top: 5 cm, bottom: 5 cm }
    stages:
      rooting: { lasts: 18 d, batch: opening }
      leafing: { lasts: 18 d, batch: later }
    plantings:
      mint: { container: trough, stages: [rooting, leafing], keep-air-gap: 5 cm }
      sage: { container: trough, stages: [leafing] }
    batches:
      opening: { water: mains, volume: 18 L }
      later: { water: mains, volume: 20 L }
      #                              ^^^^ batch-too-small: \`later\` makes 20 L, and the fills it serves take 30 L: 10 L short.
  `);
});

test('two ways out of a batch that is too small: as needed, or enough in the reader’s unit', () => {
  const snapshot = recipe`
    recipe: 1
    show: us
    waters: { mains: { pH: 7.8 } }
    containers: { trough: { inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } } } }
    stages: { rooting: { lasts: 18 d, batch: opening } }
    plantings: { mint: { container: trough, count: 2, fill: 10 cm, stages: [rooting] } }
    batches: { opening: { water: mains, volume: 5 gal } }
  `.snapshot();
  const fixes = snapshot.findings.flatMap(({ finding }) => finding.fixes ?? []);
  expect(fixes.map(fix => fix.title)).toEqual(['Mix as needed', 'Mix 6.4 gal']);
  expect(drawApplied(textOf(snapshot.document), fixes[1]?.edits ?? [])).toContain('volume: 6.4 gal }');
});

test('a batch mixed as needed is never too small, but needs something to be mixed for', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    batches: { opening: { water: mains, volume: as needed } }
    #                                   ^^^^^^ not-computed: the volume of \`opening\`
  `);
});

test('the lower three centimetres of a long cup may be wet, or half of a short one', () => {
  checkFindings(recipe`
    recipe: 1
    containers:
      deep:
        inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
        net-cup: { depth: 10 cm, top: 7 cm, bottom: 5 cm }
      short:
        inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
        net-cup: { depth: 4 cm, top: 7 cm, bottom: 5 cm }
    plantings:
      a: { container: deep, fill: 3 cm into net cup }
      b: { container: deep, fill: 3.1 cm into net cup }
      #                           ^^^^^^^^^^^^^^^^^^^ net-cup-drowned: 3.1 cm into a net cup 10 cm deep
      c: { container: short, fill: 2 cm into net cup }
      d: { container: short, fill: 18.5 cm }
      #                            ^^^^^^^ net-cup-drowned: 2.5 cm into a net cup 4 cm deep
      e: { container: short, fill: 15.9 cm }
      f: { container: short, fill: 15.8 cm }
      #                            ^^^^^^^ net-cup-dry: ends 2 mm below the net cup
  `);
});

test('above the rim is one finding, not a drowned cup too', () => {
  checkFindings(recipe`
    recipe: 1
    containers:
      crock:
        inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
        net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }
      bare: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } }
    plantings:
      a: { container: crock, fill: 7 cm into net cup }
      #                            ^^^^^^^^^^^^^^^^^ container-overfilled: stands at 21 cm; the container ends at 20 cm
      b: { container: bare, fill: 20 cm }
      c: { container: bare, fill: 20.1 cm }
      #                           ^^^^^^^ container-overfilled
  `);
});

test('a container without a net cup needs a level', () => {
  checkFindings(recipe`
    recipe: 1
    containers:
      bare: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } }
    # ^^^^ not-computed: the fill of \`a\`. What is missing is a net cup
    plantings: { a: { container: bare } }
  `);
});

test('a container that keeps light out, or does not say, is no finding', () => {
  checkFindings(recipe`
    recipe: 1
    containers:
      a: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } }, opaque: true }
      b: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } }
  `);
});

test('a vessel is stirred at 95 % and below', () => {
  checkFindings(recipe`
    recipe: 1
    tools:
      can: { holds: 12 L, fill: 95 % }
      jar: { holds: 2 L, fill: 96 % }
      #                        ^^^^ vessel-overfilled: filling it to 1.92 L
  `);
});
