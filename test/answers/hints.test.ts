import { expect, test } from 'vitest';
import { hints } from '../../server/answers/hints.ts';
import type { BatchPlan } from '../../server/plan/batch.ts';
import { textOf } from '../../server/syntax/document.ts';
import { checkHints } from '../check-hints.ts';
import { markedRecipe, recipe } from '../recipe.ts';

const shelf = `
containers: { tub: { inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } } } }
stages: { start: { lasts: 20 d, batch: first } }
`.trim();

test('a dose by rate shows its amount, one by the label its rate too, one by amount nothing', () => {
  checkHints(recipe`
    recipe: 1
    feeds: { moss: { label: 2 mL/L }, salt: { formula: KNO3 } }
    batches:
      first:
        volume: 20 L
        feed:
          moss: 50 % of label
          salt: 0.4 g/L
          gone: 20 mL
  `).toMatchInlineSnapshot(`
    "recipe: 1
    feeds: { moss: { label: 2 mL/L }, salt: { formula: KNO3 } }
    batches:
      first:
        volume: 20 L
        feed:
          moss: 50 % of label⟦1 mL/L = 20 mL⟧
          salt: 0.4 g/L⟦= 8 g⟧
          gone: 20 mL
    "
  `);
});

test('doses of several loads are shown for each load, as near as the tools measure', () => {
  checkHints(recipe`
    recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    tools: { can: { holds: 12 L }, syringe: { smallest: 1 mL } }
    batches:
      first:
        volume: 25 L
        mix-in: can
        feed: { moss: label }
  `).toMatchInlineSnapshot(`
    "recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    tools: { can: { holds: 12 L }, syringe: { smallest: 1 mL } }
    batches:
      first:
        volume: 25 L⟦= 3 × 8.33 L⟧
        mix-in: can
        feed: { moss: label⟦2 mL/L ≈ 3 × 17 mL⟧ }
    "
  `);
});

test('fills, and the volume that they need', () => {
  checkHints(recipe`
    recipe: 1
    ${shelf.split('\n')[0] ?? ''}
    ${shelf.split('\n')[1] ?? ''}
    plantings:
      cress: { container: tub, count: 2, fill: 5 cm, stages: [start] }
    batches:
      first: { volume: as needed }
  `).toMatchInlineSnapshot(`
    "recipe: 1
    containers: { tub: { inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } } } }
    stages: { start: { lasts: 20 d, batch: first } }
    plantings:
      cress: { container: tub, count: 2, fill: 5 cm⟦= 2 × 6 L⟧, stages: [start] }
    batches:
      first: { volume: as needed⟦= 12.6 L⟧ }
    "
  `);
});

test('a fill that is not written stands behind the container', () => {
  checkHints(recipe`
    recipe: 1
    show: us
    containers:
      jug:
        inside: { cylinder: { diameter: 10 cm, height: 20 cm } }
        net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
    plantings:
      mint: { container: jug }
  `).toMatchInlineSnapshot(`
    "recipe: 1
    show: us
    containers:
      jug:
        inside: { cylinder: { diameter: 10 cm, height: 20 cm } }
        net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
    plantings:
      mint: { container: jug⟦= 1.24 qt⟧ }
    "
  `);
});

test('only what stands in the range that is asked for', () => {
  checkHints(recipe`
    recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    batches:
      first: { volume: 10 L, feed: { moss: label } }
    $0  second: { volume: 20 L, feed: { moss: label } }
    $0  third: { volume: 30 L, feed: { moss: label } }
  `).toMatchInlineSnapshot(`
    "recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    batches:
      first: { volume: 10 L, feed: { moss: label } }
      second: { volume: 20 L, feed: { moss: label⟦2 mL/L = 40 mL⟧ } }
      third: { volume: 30 L, feed: { moss: label } }
    "
  `);
});

test('what is not known has no hint', () => {
  checkHints(recipe`
    recipe: 1
    feeds: { moss: {} }
    batches:
      first: { volume: as needed, feed: { moss: label } }
  `).toMatchInlineSnapshot(`
    "recipe: 1
    feeds: { moss: {} }
    batches:
      first: { volume: as needed, feed: { moss: label } }
    "
  `);
});

test('the tooltip of a hint says what a hover says', () => {
  const { snapshot, files } = recipe`
    recipe: 1
    feeds: { moss: { label: 2 mL/L } }
    batches:
      first: { volume: 10 L, feed: { moss: label } }
  `;
  const [dose] = hints(snapshot(), { from: 0, to: files[0].text.length });
  expect(dose?.kind).toBe('dose');
  expect(dose?.tooltip()).toContain('dose = 2 mL/L × 10 L = 20 mL');
});

const bench = `
waters: { brook: { pH: 7.6, alkalinity: 110 mg/L CaCO3, temperature: 15 °C } }
adjusters: { down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L } }
tools: { syringe: { smallest: 0.5 mL, largest: 10 mL } }
`.trim();

test('an adjustment shows its amount and its first step, with the sign of its cautions', () => {
  checkHints(
    markedRecipe(`recipe: 1
${bench}
batches:
  first: { water: brook, volume: 20 L, adjust: { with: down, to: 5.8 } }
  second:
    water: brook
    volume: 10 L
    adjust:
      with: down
      to: 6
  third: { water: brook, volume: 10 L, adjust: { with: down, to: 6 }, readings: [{ pH: 6.0 }] }
  fourth: { volume: 10 L, adjust: { with: down, to: 6 } }
`),
  ).toMatchInlineSnapshot(`
    "recipe: 1
    waters: { brook: { pH: 7.6, alkalinity: 110 mg/L CaCO3, temperature: 15 °C } }
    adjusters: { down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L } }
    tools: { syringe: { smallest: 0.5 mL, largest: 10 mL } }
    batches:
      first: { water: brook, volume: 20 L, adjust: { with: down, to: 5.8 }⟦≈ 25.6 mL, first 12.5 mL ⚠⟧ }
      second:
        water: brook
        volume: 10 L
        adjust:
          with: down⟦≈ 11.1 mL, first 5.5 mL ⚠⟧
          to: 6
      third: { water: brook, volume: 10 L, adjust: { with: down, to: 6 }⟦= nothing to add⟧, readings: [{ pH: 6.0 }] }
      fourth: { volume: 10 L, adjust: { with: down, to: 6 } }
    "
  `);
});

test('its tooltip spells the cautions out', () => {
  const { snapshot } = markedRecipe(`recipe: 1
${bench}
batches:
  first: { water: brook, volume: 20 L, adjust: { with: down, to: 5.8 } }
`);
  const [hint] = hints(snapshot(), { from: 0, to: 10_000 });
  expect(hint?.kind).toBe('adjustment');
  expect(hint?.tooltip()).toContain('⚠');
  expect(hint?.tooltip()).toContain('Wear gloves and eye protection.');
});

test('a planting shows until when it stands, and when its fill runs low', () => {
  checkHints(recipe`
    recipe: 1
    containers: { tub: { inside: { box: { length: 20 cm, width: 20 cm, height: 20 cm } } } }
    stages:
      start: { lasts: 10 d, uses: 60 mL/d }
      grow: { lasts: 25 d, uses: 250 mL/d }
    plantings:
      cress: { container: tub, fill: 12 cm, transplant: 2027-02-01, stages: [start] }
      mint: { container: tub, fill: 12 cm, transplant: 2027-02-01, stages: [start, grow] }
      dill: { container: tub, fill: 12 cm, stages: [start] }
  `).toMatchInlineSnapshot(`
    "recipe: 1
    containers: { tub: { inside: { box: { length: 20 cm, width: 20 cm, height: 20 cm } } } }
    stages:
      start: { lasts: 10 d, uses: 60 mL/d }
      grow: { lasts: 25 d, uses: 250 mL/d }
    plantings:
      cress: { container: tub, fill: 12 cm⟦= 4.8 L⟧, transplant: 2027-02-01, stages: [start]⟦until 2027-02-11⟧ }
      mint: { container: tub, fill: 12 cm⟦= 4.8 L⟧, transplant: 2027-02-01, stages: [start, grow]⟦until 2027-03-08, low on 2027-02-26⟧ }
      dill: { container: tub, fill: 12 cm⟦= 4.8 L⟧, stages: [start] }
    "
  `);
});

test('a kind that is not wanted is left out', () => {
  const { snapshot } = markedRecipe(`recipe: 1
${bench}
batches:
  first: { water: brook, volume: as needed, feed: { gone: 2 mL/L }, adjust: { with: down, to: 5.8 } }
  second: { water: brook, volume: 20 L, feed: { gone: 2 mL/L }, adjust: { with: down, to: 5.8 } }
`);
  const kinds = hints(snapshot(), { from: 0, to: 10_000 }, kind => kind !== 'adjustment').map(({ kind }) => kind);
  expect(kinds).toEqual(['dose']);
});

test('what stands outside the range is not worked out', () => {
  const { snapshot } = markedRecipe(`recipe: 1
${bench}
batches:
  first: { water: brook, volume: 20 L, adjust: { with: down, to: 5.8 } }
  second: { water: brook, volume: 10 L, adjust: { with: down, to: 6 } }
`);
  const taken = snapshot();
  const text = textOf(taken.document);
  const { plan, ...others } = taken;
  const asked: string[] = [];
  const batches = new Map([...plan.batches].map(([name, batch]) => [name, watched(batch, () => asked.push(name))]));
  const at = text.indexOf('second');
  const found = hints({ ...others, plan: { ...plan, batches } }, { from: at, to: text.length });
  expect(found.map(({ kind }) => kind)).toEqual(['adjustment']);
  expect(new Set(asked)).toEqual(new Set(['second']));
});

/** A batch that tells when its volume is looked at, which is where all that is worked out of it begins. */
function watched(batch: BatchPlan, told: () => void): BatchPlan {
  return {
    ...batch,
    get volume() {
      told();
      return batch.volume;
    },
  };
}
