import { expect, test } from 'vitest';
import { textOf } from '../../server/syntax/document.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { checkFindings } from '../check-findings.ts';
import { drawApplied } from '../draw.ts';
import { recipe } from '../recipe.ts';

test('an unknown name is found where it is a value, a key and a list item', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    batches:
      opening:
        water: brook
        #      ^^^^^ name-unknown: there is no water named \`brook\`
        volume: 20 L
        feed: { green: 2 mL/L }
        #       ^^^^^ name-unknown: there is no feed named \`green\`
        readings:
          - { add: { down: 4 mL }, pH: 6.6 }
          #          ^^^^ name-unknown: there is no adjuster or feed named \`down\`
    log:
      - { on: 2027-03-01, planting: berry, note: thinned }
      #                             ^^^^^ name-unknown: there is no planting named \`berry\`
  `);
});

test('a misspelt name in a key is renamed', () => {
  const snapshot = recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { green: { label: 2 mL/L, formula: KNO3, density: 1 kg/L } }
    batches: { opening: { water: mains, volume: 20 L, feed: { grene: label } } }
  `.snapshot();
  const [found] = snapshot.findings;
  expect(drawApplied(textOf(snapshot.document), found?.finding.fixes?.[0]?.edits ?? [])).toContain('{ green: label }');
});

test('a misspelt name leaves neither the entry that is meant unused nor what hangs on it unknown', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    containers: { crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } } }
    stages: { rooting: { lasts: 18 d, batch: opening } }
    plantings: { berry: { container: crokc, fill: 12 cm, stages: [rooting] } }
    #                                ^^^^^ name-unknown: did you mean \`crock\`?
    batches: { opening: { water: mains, volume: as needed } }
  `);
});

test('names are borrowed from files that are used, and from those that they use', () => {
  checkFindings(recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    batches: { opening: { water: mains, volume: 20 L, mix-in: can } }
    #-- shelf.grow.yaml
    recipe: 1
    use: [./bench.grow.yaml]
    waters: { mains: { pH: 7.8 } }
    #-- bench.grow.yaml
    recipe: 1
    tools: { can: { holds: 12 L } }
  `);
});

test('batches and plantings are not lent', () => {
  checkFindings(recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    stages: { rooting: { lasts: 18 d, batch: opening } }
    #                                        ^^^^^^^ name-unknown: there is no batch named \`opening\`
    #-- shelf.grow.yaml
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    batches: { opening: { water: mains, volume: 20 L } }
  `);
});

test('while a used file is being read, its names are not missed', () => {
  const workspace = new Workspace();
  const uri = 'file:///main.grow.yaml';
  workspace.open(uri, 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches: { b: { water: mains, volume: 20 L } }\n');
  expect(workspace.snapshot(uri)?.findings).toEqual([]);
  workspace.arrived('file:///shelf.grow.yaml', { kind: 'text', text: 'recipe: 1\n' });
  expect(workspace.snapshot(uri)?.findings.map(({ finding }) => finding.code)).toEqual(['name-unknown']);
});

test('a shelf is not asked who uses it, and neither is a beginning without plantings', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 }, rain: { alkalinity: 0 mg/L CaCO3 } }
    targets: { leafy: { pH: 5.5..6.5 } }
    stages: { rooting: { lasts: 18 d, target: leafy } }
    batches: { opening: { water: mains, volume: 20 L } }
  `);
});

test('a measuring tool is in use without being named, a vessel is not', () => {
  checkFindings(recipe`
    recipe: 1
    tools:
      syringe: { smallest: 0.5 mL }
      can: { holds: 12 L }
    # ^^^ name-unused: nothing uses the tool \`can\`
    containers: { crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } } }
    plantings: { berry: { container: crock, fill: 12 cm } }
  `);
});

test('a hint that nothing uses an entry waits until everything can be read', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    feeds: { green: { label: 2 mL/L, formula: KNO3, density: 1 kg/L } }
    containers: { crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } } }
    stages: { rooting: { lasts: 18 d, batch: opening } }
    plantings: { berry: { container: crock, fill: 12 cm, stages: [rooting] } }
    batches: { opening: { water: mains, volume: 20 L, feed: { green: 2 mL/galon } } }
    #                                                                     ^^^^^ unit-unknown
  `);
});

test('of a name that two used files have, the one that is used is said where it is used', () => {
  checkFindings(recipe`
    recipe: 1
    use: [./cellar.grow.yaml, ./shed.grow.yaml]
    batches:
      opening: { water: mains, volume: 20 L }
      #                 ^^^^^ name-shadowed: \`shed.grow.yaml\` has a water \`mains\` too; the one of \`cellar.grow.yaml\` is used
      later: { water: mains, volume: 10 L }
    #-- cellar.grow.yaml
    recipe: 1
    waters: { mains: { pH: 7.8 }, rain: { pH: 5.6 } }
    #-- shed.grow.yaml
    recipe: 1
    waters: { mains: { pH: 7.2 }, rain: { pH: 5.8 } }
  `);
});
