import { expect, test } from 'vitest';
import { withChanges } from '../../server/syntax/edit.ts';
import { actionsIn, checkAction, titlesIn } from '../check-action.ts';
import { checkFindings } from '../check-findings.ts';
import { type MarkedRecipe, markedRecipe, recipe } from '../recipe.ts';

const moves = (marked: MarkedRecipe): readonly string[] =>
  titlesIn(marked).filter(title => title.startsWith('Move this into'));

test('a map in place of a name is found, and where its words belong is said', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8, alkalinity: 2 meq/L } }
    batches:
      first:
        water: { pH: 7.2 }
        #      ^^^^^^^^^^^ value-invalid: a name, as in \`mains\`, belongs here. What the map says goes into \`waters\`, under a name
        volume: 20 L
      second: { water: mains, volume: 20 L }
  `);
});

test('a map in place of a name moves into its section under a free name', () => {
  const inline = recipe`
    recipe: 1
    waters:
      mains: { pH: 7.8 }
      water-1: { pH: 7 }
    batches:
      first:
        water: { p$0H: 7.2, alkalinity: 1 meq/L } # the well
        volume: 20 L
  `;
  checkAction(
    inline,
    'Move this into `waters` as `water-2`',
    `
      recipe: 1
      waters:
        mains: { pH: 7.8 }
        water-1: { pH: 7 }
        water-2: { pH: 7.2, alkalinity: 1 meq/L }
      batches:
        first:
          water: water-2 # the well
          volume: 20 L
    `,
  );
});

test('what it makes has no finding left at either place', () => {
  const inline = recipe`
    recipe: 1
    batches:
      first:
        water: { $0pH: 7.2, alkalinity: 1 meq/L }
        volume: 20 L
  `;
  const [action] = actionsIn(inline).filter(({ names }) => names === 'water-1');
  expect(action?.mends?.finding.code).toBe('value-invalid');
  checkFindings(markedRecipe(withChanges(inline.files[0].text, action?.edits ?? [])));
});

test('lines stay lines, with their comments, and a section that is not there is made', () => {
  checkAction(
    recipe`
      recipe: 1
      plantings:
        sorrel:
          container:
            inside: # by the ruler
              cylinder: { diameter: 14 cm, height: 20 cm }
            # a lid of felt
            $0opaque: true
          count: 3
    `,
    'Move this into `containers` as `container-1`',
    `
      recipe: 1
      plantings:
        sorrel:
          container: container-1
          count: 3
      containers:
        container-1:
          inside: # by the ruler
            cylinder: { diameter: 14 cm, height: 20 cm }
          # a lid of felt
          opaque: true
    `,
  );
});

test('a remark between the key and its lines stays where it is', () => {
  checkAction(
    recipe`
      recipe: 1
      stages:
        rooting:
          target: # for all of them
            p$0H: 5.5..6.5
          lasts: 3 d
    `,
    'Move this into `targets` as `target-1`',
    `
      recipe: 1
      stages:
        rooting:
          target: # for all of them
            target-1
          lasts: 3 d
      targets:
        target-1:
          pH: 5.5..6.5
    `,
  );
});

test('an item of a list is moved too', () => {
  checkAction(
    recipe`
      recipe: 1
      plantings:
        sorrel:
          stages:
            - lasts: 3 d
              b$0atch: first
            - fruiting
    `,
    'Move this into `stages` as `stage-1`',
    `
      recipe: 1
      plantings:
        sorrel:
          stages:
            - stage-1
            - fruiting
      stages:
        stage-1:
          lasts: 3 d
          batch: first
    `,
  );
});

test('in a section of braces lines become braces, quotes as they were', () => {
  checkAction(
    recipe`
      recipe: 1
      adjusters: { up: { response: 0.5 pH at 1 mL/L } }
      batches:
        first:
          adjust:
            with:
              x-note: "down, by the spoon"
              ac$0id: { citric: 50 % }
    `,
    'Move this into `adjusters` as `adjuster-1`',
    `
      recipe: 1
      adjusters: { up: { response: 0.5 pH at 1 mL/L }, adjuster-1: { x-note: "down, by the spoon", acid: { citric: 50 % } } }
      batches:
        first:
          adjust:
            with: adjuster-1
    `,
  );
});

test('a tool and a batch have their sections', () => {
  const tool = recipe`
    recipe: 1
    batches: { first: { volume: 20 L, mix-in: { h$0olds: 10 L } } }
  `;
  expect(moves(tool)).toEqual(['Move this into `tools` as `tool-1`']);
  const batch = recipe`
    recipe: 1
    stages: { rooting: { lasts: 3 d, batch: { v$0olume: 2 L } } }
  `;
  expect(moves(batch)).toEqual(['Move this into `batches` as `batch-1`']);
});

test('a repeat, and a remark that braces have no room for, are left alone', () => {
  const repeat = recipe`
    recipe: 1
    batches: { first: { water: { pH: &x 7, al$0kalinity: 1 meq/L } } }
  `;
  expect(moves(repeat)).toEqual([]);
  const remark = recipe`
    recipe: 1
    waters: { mains: { pH: 7 } }
    batches:
      first:
        water:
          pH: 7 # by the meter
          al$0kalinity: 1 meq/L
  `;
  expect(moves(remark)).toEqual([]);
});

test('a value that is no map is not moved', () => {
  const list = recipe`
    recipe: 1
    batches: { first: { water: [mai$0ns] } }
  `;
  expect(moves(list)).toEqual([]);
});
